package rules

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// swings follows what a slot adds to the motion through the meshes behind it.
type swings struct {
	p *Pass
	// joints of each arbor, those of arbor i in list[from[i]:from[i+1]].
	from []int32
	list []*train.Joint
}

// index lists the joints of each arbor.
func (s *swings) index() {
	if s.from != nil {
		return
	}
	joints := s.p.Train.Joints
	s.from = make([]int32, len(s.p.Design.Arbors)+1)
	each := func(do func(j *train.Joint, a *spec.Arbor)) {
		for i := range joints {
			if j := &joints[i]; j.A != nil && !j.Wanders {
				do(j, j.A)
				do(j, j.B)
			}
		}
	}
	each(func(_ *train.Joint, a *spec.Arbor) { s.from[a.Index+1]++ })
	for i := range s.p.Design.Arbors {
		s.from[i+1] += s.from[i]
	}
	s.list = make([]*train.Joint, s.from[len(s.from)-1])
	next := append([]int32(nil), s.from...)
	each(func(j *train.Joint, a *spec.Arbor) {
		s.list[next[a.Index]] = j
		next[a.Index]++
	})
}

// served is the first hand of a month or a year that swings with the slot, and
// by how many times the swing of the slotted arbor; nil if there is none.
func (s *swings) served(slot *spec.Slot) (*spec.Hand, exact.Rat, swinger) {
	s.index()
	gain := s.spread(slot, slot.Slotted)
	if s.driven(gain) {
		// The drive is behind the slot: then it is the pin that swings.
		gain = s.spread(slot, slot.Pin)
	}
	for _, h := range s.p.Design.Hands {
		if h.Arbor == nil || gain[h.Arbor.Index].IsZero() || h.Base.Arbor != nil && !gain[h.Base.Arbor.Index].IsZero() {
			continue
		}
		r := s.p.Train.Read(h)
		if !r.HasWanted {
			continue
		}
		for _, body := range swingers {
			if days := r.Wanted.Float(); body.from < days && days < body.to {
				return h, gain[h.Arbor.Index], body
			}
		}
	}
	return nil, exact.Rat{}, swinger{}
}

// spread is, for each arbor, its swing for a swing of 1 of the given one, 0
// where it has none. A swing goes through a mesh by its ratio, the carrier
// taken to turn evenly, and does not come through a counter's steps.
func (s *swings) spread(slot *spec.Slot, from *spec.Arbor) []exact.Rat {
	gain := make([]exact.Rat, len(s.p.Design.Arbors))
	gain[from.Index] = exact.Int(1)
	work := []*spec.Arbor{from}
	for len(work) > 0 {
		a := work[len(work)-1]
		work = work[:len(work)-1]
		for _, j := range s.list[s.from[a.Index]:s.from[a.Index+1]] {
			if j.Part == &slot.Part || j.Part.Kind == "counter" || j.Carrier.Arbor != nil && !gain[j.Carrier.Arbor.Index].IsZero() {
				continue
			}
			to, k := j.B, gain[a.Index].Mul(j.Ratio.Abs())
			if a == j.B {
				to, k = j.A, gain[a.Index].Quo(j.Ratio.Abs())
			}
			if !to.Stud && gain[to.Index].IsZero() {
				gain[to.Index] = k
				work = append(work, to)
			}
		}
	}
	return gain
}

// driven reports whether a drive, or without one the clock, turns an arbor that
// swings: it turns evenly, so the swing goes the other way.
func (s *swings) driven(gain []exact.Rat) bool {
	for _, v := range s.p.Design.Drives {
		if v.Arbor != nil && !gain[v.Arbor.Index].IsZero() {
			return true
		}
	}
	c := s.p.Design.Clock
	return len(s.p.Design.Drives) == 0 && c != nil && c.Arbor != nil && !gain[c.Arbor.Index].IsZero()
}
