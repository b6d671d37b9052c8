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
	sweeps []train.Sweep
	loci   []space.Locus
}

// stand is where an arbor's sweeps are found.
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
		sweeps: make([]train.Sweep, 0, n), loci: make([]space.Locus, 0, 2*n)}
	for i, a := range d.Arbors {
		from := len(s.sweeps)
		s.sweeps, s.stands[i].err = f.Train.Sweeps(a, s.sweeps)
		s.stands[i].from, s.stands[i].to = int32(from), int32(len(s.sweeps))
		switch s.stands[i].err {
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

// sweep is where the arbor stands in its own plan, and in those further out; ok
// is false where that is not known. What leans has no place along its axis in the
// spec, so there is nothing to want.
func (s *solids) sweep(a *spec.Arbor) (list []train.Sweep, ok bool) {
	if a == nil {
		return nil, false
	}
	st := s.stands[a.Index]
	return s.sweeps[st.from:st.to], st.err == nil
}

// coaxial reports whether two arbors are known to stand on one axis.
func (s *solids) coaxial(a, b *spec.Arbor) bool {
	p, ok1 := s.sweep(a)
	q, ok2 := s.sweep(b)
	return ok1 && ok2 && p[0].On == q[0].On && math.Hypot(p[0].X-q[0].X, p[0].Y-q[0].Y) < 1e-6
}

// add adds a piece that fills the levels from z up.
func (s *solids) add(sweeps []train.Sweep, p piece, solid space.Solid, z spec.Number, face float64) {
	from := len(s.loci)
	for _, w := range sweeps {
		s.loci = append(s.loci, space.Locus{Plan: planOf(w.On), X: w.X, Y: w.Y, Least: w.Least, Most: w.Most})
	}
	solid.Loci = s.loci[from:len(s.loci):len(s.loci)]
	solid.From = z.Exact.Float()
	solid.To = solid.From + face
	p.radius = solid.Length + solid.Radius
	s.list = append(s.list, solid)
	s.pieces = append(s.pieces, p)
}

// planOf numbers a body: 0 the frame.
func planOf(b spec.Body) int {
	if b.Arbor == nil {
		return 0
	}
	return b.Arbor.Index + 1
}
