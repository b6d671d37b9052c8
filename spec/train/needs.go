package train

import "wheelwork/spec/exact"

// Needs is the ratio that a joint of the lock's loop would need, as Joint.Ratio
// counts it, for the loop to turn with its other joints as they are; of a drive
// it is the speed in rpm. ok is false where no ratio would do.
func (t *Train) Needs(l *Lock, joint *Joint) (ratio exact.Rat, ok bool) {
	rest := make([]int, 0, len(l.equations))
	for i, e := range l.equations {
		if l.Loop[i] != joint {
			rest = append(rest, e)
		}
	}
	s, of := t.alone(rest)
	a, c := t.unit, frame
	if joint.A != nil {
		a = t.bodyOf[joint.A.Index]
		c = t.body(joint.Carrier)
	}
	against := t.body(joint.Carrier)
	rate := func(body, base int) (form, bool) {
		n, ok1 := of(body)
		m, ok2 := of(base)
		if !ok1 || !ok2 {
			return nil, false
		}
		return s.of(n).plus(exact.Int(-1), s.of(m)), true
	}
	f, ok1 := rate(t.bodyOf[joint.B.Index], against)
	g, ok2 := rate(a, c)
	if !ok1 || !ok2 || len(f) == 0 {
		return exact.Rat{}, false
	}
	return proportion(f, g)
}
