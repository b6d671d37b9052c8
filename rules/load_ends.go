package rules

import "wheelwork/spec"

// ends lists what may be held fast: hands, arms, arbors at the end of a train,
// and what stands on either side of what passes on an unknown torque.
func ends(f *Facts) []Held {
	d := f.Design
	e := endList{f: f, at: map[endPair]int{}}
	handed := make([]bool, len(d.Arbors))
	for _, a := range d.Arms {
		if a.Arbor != nil {
			e.add(a.Arbor, f.Train.Carrier(a.Arbor), &a.Part, spec.Number{})
			e.add(a.Arbor, spec.Body{}, &a.Part, spec.Number{})
			handed[a.Arbor.Index] = true
		}
	}
	for _, h := range d.Hands {
		if h.Arbor != nil {
			e.add(h.Arbor, h.Base, &h.Part, h.SlipTorque)
			e.add(h.Arbor, spec.Body{}, &h.Part, h.SlipTorque)
			handed[h.Arbor.Index] = true
		}
	}
	joints := make([]int, len(d.Arbors))
	for i := range f.Train.Joints {
		if j := &f.Train.Joints[i]; !j.Wanders {
			joints[j.B.Index]++
			if j.A != nil {
				joints[j.A.Index]++
			}
		}
	}
	for _, a := range d.Arbors {
		if joints[a.Index] == 1 && !a.Stud && !handed[a.Index] {
			e.alone(a)
		}
	}
	for _, c := range d.Couples {
		if c.Gives() && !c.SlipTorque.Set() {
			e.alone(c.A)
			e.alone(c.B)
		}
	}
	for _, c := range d.Counters {
		e.alone(c.Driver)
		e.alone(c.Driven)
	}
	return e.list
}

type endPair struct{ arbor, base *spec.Arbor }

type endList struct {
	f    *Facts
	list []Held
	at   map[endPair]int
}

// add notes what can be held on an arbor against a base, if it turns against it.
// Of several parts on one arbor that which holds fastest counts: what does not
// slip, else what slips last.
func (e *endList) add(a *spec.Arbor, base spec.Body, part *spec.Part, slip spec.Number) {
	key := endPair{a, base.Arbor}
	if i, have := e.at[key]; have {
		if h := &e.list[i]; h.slip.Set() && (!slip.Set() || slip.Exact.Cmp(h.slip.Exact) > 0) {
			h.Part, h.slip = part, slip
		}
		return
	}
	if rate, ok := e.f.Train.Against(a, base); ok && !rate.IsZero() {
		e.at[key] = len(e.list)
		e.list = append(e.list, Held{Arbor: a, Base: base, Part: part, slip: slip})
	}
}

// alone notes an arbor that is held by itself.
func (e *endList) alone(a *spec.Arbor) {
	if a != nil {
		e.add(a, e.f.Train.Carrier(a), &a.Part, spec.Number{})
	}
}
