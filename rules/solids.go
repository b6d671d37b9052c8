package rules

import (
	"math"

	"wheelwork/rules/space"
	"wheelwork/spec"
	"wheelwork/spec/train"
)

// What the spec does not give is taken as little as it can be.
const (
	armWidth = 1.0 // mm, of an arm
	ringRim  = 2.0 // modules between the roots of a ring's teeth and its edge
)

// A piece is a part that fills room.
type piece struct {
	part     *spec.Part
	arbor    *spec.Arbor // that it is, or is fixed to
	wheel    *spec.Wheel
	sprocket *spec.Sprocket
	arm      *spec.Arm
	radius   float64 // mm, how far it reaches from its axis
}

// isPost reports whether the piece is an arbor or stud itself.
func (p *piece) isPost() bool { return p.wheel == nil && p.sprocket == nil && p.arm == nil }

// solids is the parts of a design that fill room, as far as they are known.
type solids struct {
	list   []space.Solid
	pieces []piece // in step with the list
	lack   lack
	stands []stand // by Arbor.Index
	bears  []bool  // likewise
	bodies []spec.Body
	plans  []int32 // by Arbor.Index and one: the number of the body in bodies, and one
	loci   []space.Locus
	sweeps []train.Sweep // to be filled anew
}

// stand is where the loci of an arbor's axis are found.
type stand struct {
	from, to int32
	err      error
}

type solidsKey struct{}

// solidsOf returns what room the parts fill.
func solidsOf(f *Facts) *solids { return Shared(f, solidsKey{}, newSolids) }

func newSolids(f *Facts) *solids {
	d := f.Design
	n := len(d.Arbors) + len(d.Wheels) + len(d.Sprockets) + len(d.Arms)
	s := &solids{list: make([]space.Solid, 0, n), pieces: make([]piece, 0, n), stands: make([]stand, len(d.Arbors)),
		plans: make([]int32, len(d.Arbors)+1), loci: make([]space.Locus, 0, 2*len(d.Arbors)+3*len(d.Arms))}
	s.plan(spec.Body{})
	for i, a := range d.Arbors {
		var err error
		s.sweeps, err = f.Train.Sweeps(a, s.sweeps[:0])
		from := len(s.loci)
		s.follow()
		s.stands[i] = stand{int32(from), int32(len(s.loci)), err}
		switch err {
		case train.ErrUnplaced:
			s.lack.of("these are left out for want of a position", a.Title())
		case train.ErrDeep:
			s.lack.of("these are left out, more arms carrying them than are followed", a.Title())
		}
	}
	s.wheels(f)
	s.sprockets(f)
	s.arms(f)
	s.bear(d)
	s.posts(d)
	return s
}

// follow adds the loci of the sweeps.
func (s *solids) follow() {
	for _, w := range s.sweeps {
		s.loci = append(s.loci, space.Locus{Plan: s.plan(w.On), X: w.X, Y: w.Y, Least: w.Least, Most: w.Most})
	}
}

// plan numbers the bodies that have something on them: 0 the frame.
func (s *solids) plan(b spec.Body) int {
	i := 0
	if b.Arbor != nil {
		i = b.Arbor.Index + 1
	}
	if s.plans[i] == 0 {
		s.bodies = append(s.bodies, b)
		s.plans[i] = int32(len(s.bodies))
	}
	return int(s.plans[i] - 1)
}

// axis is where the arbor's axis stands in its own plan, and in those further
// out; ok is false where that is not known. What leans has no place along its
// axis in the spec, so there is nothing to want.
func (s *solids) axis(a *spec.Arbor) (loci []space.Locus, ok bool) {
	if a == nil {
		return nil, false
	}
	st := s.stands[a.Index]
	return s.loci[st.from:st.to:st.to], st.err == nil
}

// coaxial reports whether two arbors are known to stand on one axis.
func (s *solids) coaxial(a, b *spec.Arbor) bool {
	p, ok1 := s.axis(a)
	q, ok2 := s.axis(b)
	return ok1 && ok2 && p[0].Plan == q[0].Plan && math.Abs(p[0].X-q[0].X) < 1e-6 && math.Abs(p[0].Y-q[0].Y) < 1e-6
}

// add adds a piece that fills the levels from z up.
func (s *solids) add(loci []space.Locus, p piece, solid space.Solid, z spec.Number, face float64) {
	solid.Loci = loci
	solid.From = z.Exact.Float()
	solid.To = solid.From + face
	p.radius = solid.Length + solid.Radius
	s.list = append(s.list, solid)
	s.pieces = append(s.pieces, p)
}
