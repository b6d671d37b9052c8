package rules

import (
	"math"

	"wheelwork/rules/chain"
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
}

// isPost reports whether the piece is an arbor or stud itself.
func (p *piece) isPost() bool { return p.wheel == nil && p.sprocket == nil && p.arm == nil }

// solids is the parts of a design that fill room, as far as they are known.
type solids struct {
	list   []space.Solid
	pieces []piece // in step with the list
	lack   lack
	stands []stand // by Arbor.Index
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
	s.posts(f)
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

func (s *solids) wheels(f *Facts) {
	for _, w := range f.Design.Wheels {
		at, ok := s.sweep(w.Arbor)
		if !ok {
			continue
		}
		size, known := SizeOf(f, w)
		module, hasModule := ModuleOf(w)
		switch {
		case !w.Z.Set() || !w.Face.Set():
			s.lack.of("these are left out for want of z or face", w.Title())
			continue
		case !known && w.Is("crown") && hasModule:
			// A crown wheel is cut to a module beyond its pitch circle.
			size.Tip = module * float64(w.Teeth.N+2)
		case !known:
			s.lack.of("these are left out for want of a known diameter", w.Title())
			continue
		}
		solid := space.Solid{Radius: size.Tip / 2}
		if w.Is("ring") {
			solid.Hole, solid.Radius = size.Tip/2, size.Root/2+ringRim*module
		}
		s.add(at, piece{part: &w.Part, arbor: w.Arbor, wheel: w}, solid, w.Z, w.Face.Exact.Float())
	}
}

func (s *solids) sprockets(f *Facts) {
	if len(f.Design.Sprockets) == 0 {
		return
	}
	sizes := make([]chain.Size, len(f.Design.Sprockets))
	for _, c := range f.Design.Chains {
		if size, ok := chain.Lookup(c.Size.Text); ok {
			for _, o := range c.Over {
				sizes[o.Index] = size
			}
		}
	}
	for i, o := range f.Design.Sprockets {
		at, ok := s.sweep(o.Arbor)
		if !ok {
			continue
		}
		size := sizes[i]
		_, tip, err := chain.TipDiameters(size.Pitch, int(o.Teeth.N), size.Roller)
		face, err2 := chain.ToothWidth(size.Pitch, size.InnerWidth)
		switch {
		case !o.Z.Set():
			s.lack.of("these are left out for want of z or face", o.Title())
		case err != nil || err2 != nil:
			s.lack.of("these are left out for want of a chain of a known size", o.Title())
		default:
			s.add(at, piece{part: &o.Part, arbor: o.Arbor, sprocket: o}, space.Solid{Radius: tip / 2}, o.Z, face)
		}
	}
}

func (s *solids) arms(f *Facts) {
	var sweeps []train.Sweep
	for _, a := range f.Design.Arms {
		if _, ok := s.sweep(a.Arbor); !ok {
			continue
		}
		on, x, y, ok := f.Train.Middle(a)
		switch {
		case !ok:
			continue
		case !a.Reach.Set():
			s.lack.of("these are left out for want of a reach", a.Title())
			continue
		case !a.Z.Set() || !a.Face.Set():
			s.lack.of("these are left out for want of z or face", a.Title())
			continue
		}
		length := max(0, a.Reach.Exact.Float()-armWidth/2)
		least, most := math.Hypot(max(0, x, -x-length), y), max(math.Hypot(x, y), math.Hypot(x+length, y))
		var err error
		sweeps, err = f.Train.Outward(on, least, most, append(sweeps[:0], train.Sweep{On: on, X: x, Y: y}))
		if err != nil {
			continue
		}
		s.add(sweeps, piece{part: &a.Part, arbor: a.Arbor, arm: a}, space.Solid{Length: length, Radius: armWidth / 2}, a.Z, a.Face.Exact.Float())
	}
}

// posts adds the arbors and studs themselves. One of which nothing is given is
// an axis and no post, as of a ring that runs on rollers; but what bears a wheel
// in its middle must be one.
func (s *solids) posts(f *Facts) {
	d := f.Design
	bears := make([]bool, len(d.Arbors))
	for _, w := range d.Wheels {
		if w.Arbor != nil && !w.Is("ring") {
			bears[w.Arbor.Index] = true
		}
	}
	for _, o := range d.Sprockets {
		if o.Arbor != nil {
			bears[o.Arbor.Index] = true
		}
	}
	for _, a := range d.Arms {
		if a.Arbor != nil {
			bears[a.Arbor.Index] = true
		}
	}
	for i, a := range d.Arbors {
		if !bears[i] && !a.Diameter.Set() && !a.From.Set() && !a.To.Set() {
			continue
		}
		at, ok := s.sweep(a)
		if !ok {
			continue
		}
		if !a.Diameter.Set() || !a.From.Set() || !a.To.Set() {
			s.lack.of("these are left out for want of diameter, from or to", a.Title())
			continue
		}
		s.add(at, piece{part: &a.Part, arbor: a}, space.Solid{Radius: a.Diameter.Exact.Float() / 2}, a.From, a.To.Exact.Float()-a.From.Exact.Float())
	}
}
