package train

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// Shifts finds where bodies come to when joints are moved on and the drives
// held: teeth lifted out and let in again further on, a coupling turned by hand.
//
// Each joint asked about gets a parameter of its own in its equation, so that
// every rate is also a sum of multiples of these: exact, with their signs, and
// with what closed loops ask of them.
type Shifts struct {
	t     *Train
	sys   *system
	param map[int]int // joint -> its parameter
	held  map[int]bool
}

// NewShifts prepares for the joints given by their places in Train.Joints.
// Drives, joints whose axes wander, and those that join one body to itself
// cannot be moved on.
func (t *Train) NewShifts(joints []int) *Shifts {
	s := &Shifts{t: t, param: map[int]int{}, held: map[int]bool{}}
	asked := map[int]bool{}
	for _, j := range joints {
		asked[j] = j < t.drives
	}
	bodies := len(t.arborOf)
	var moved []int // joints, in the order of their pseudo-bodies
	equations := make([]equation, len(t.equations))
	for i, e := range t.equations {
		if asked[e.joint] {
			terms := append(make([]term, 0, len(e.terms)+1), e.terms...)
			// Its terms add up to ratio (wa - wc) - (wb - wc).
			e.terms = append(terms, term{bodies + len(moved), exact.Int(1)})
			moved = append(moved, e.joint)
		}
		equations[i] = e
	}
	s.sys = newSystem(bodies+len(moved), equations)
	for i := range moved {
		s.sys.free(bodies + i)
	}
	t.parametrize(s.sys)
	hold := func(f form) {
		for _, m := range f {
			s.held[m.param] = true
		}
	}
	for i, j := range moved {
		// What is no parameter any more follows from others: none of them is free.
		if f := s.sys.of(bodies + i); len(f) == 1 && s.sys.params[f[0].param].body == bodies+i {
			s.param[j] = f[0].param
		} else {
			hold(f)
		}
	}
	if t.unit >= 0 {
		hold(s.sys.of(t.unit))
	}
	return s
}

// Free reports whether the joint can be moved on by itself: not where others
// hold it in a closed loop, nor where it was not asked about.
func (s *Shifts) Free(joint int) bool {
	p, ok := s.param[joint]
	return ok && !s.held[p]
}

// Of is by how many turns the arbor moves against a body when the joint's B is
// moved on by one turn against its A, counter-clockwise positive.
func (s *Shifts) Of(a *spec.Arbor, base spec.Body, joint int) exact.Rat {
	if !s.Free(joint) {
		return exact.Rat{}
	}
	p := s.param[joint]
	return s.multiple(s.t.bodyOf[a.Index], p).Sub(s.multiple(s.t.body(base), p))
}

func (s *Shifts) multiple(body, param int) exact.Rat {
	for _, m := range s.sys.of(body) {
		if m.param == param {
			return m.k
		}
	}
	return exact.Rat{}
}
