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
	joint map[int]int // and back
	held  map[int]bool
}

// NewShifts prepares for the joints given by their places in Train.Joints.
// Drives, joints whose axes wander, and those that join one body to itself
// cannot be moved on.
func (t *Train) NewShifts(joints []int) *Shifts {
	s := &Shifts{t: t, param: map[int]int{}, joint: map[int]int{}, held: map[int]bool{}}
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
			s.param[j], s.joint[f[0].param] = f[0].param, j
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

// Shift is what moving one joint on does to an arbor.
type Shift struct {
	Joint int // its place in Train.Joints
	// Turns is by how many turns the arbor moves against its base when the joint's
	// B is moved on by one turn against its A, counter-clockwise positive.
	Turns exact.Rat
}

// Of lists the free joints that move the arbor against a body, in the order in
// which they were found in the design's equations.
func (s *Shifts) Of(a *spec.Arbor, base spec.Body) []Shift {
	f := s.sys.of(s.t.bodyOf[a.Index]).plus(exact.Int(-1), s.sys.of(s.t.body(base)))
	var list []Shift
	for _, m := range f {
		if j, ok := s.joint[m.param]; ok && !s.held[m.param] {
			list = append(list, Shift{j, m.k})
		}
	}
	return list
}
