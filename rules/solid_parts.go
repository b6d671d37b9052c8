package rules

import (
	"math"

	"wheelwork/rules/chain"
	"wheelwork/rules/space"
	"wheelwork/spec"
	"wheelwork/spec/train"
)

func (s *solids) wheels(f *Facts) {
	for _, w := range f.Design.Wheels {
		at, ok := s.axis(w.Arbor)
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
		at, ok := s.axis(o.Arbor)
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
	for _, a := range f.Design.Arms {
		if _, ok := s.axis(a.Arbor); !ok {
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
		s.sweeps, err = f.Train.Outward(on, least, most, append(s.sweeps[:0], train.Sweep{On: on, X: x, Y: y}))
		if err != nil {
			continue
		}
		from := len(s.loci)
		s.follow()
		s.add(s.loci[from:len(s.loci):len(s.loci)], piece{part: &a.Part, arbor: a.Arbor, arm: a}, space.Solid{Length: length, Radius: armWidth / 2}, a.Z, a.Face.Exact.Float())
	}
}

// bear marks the arbors that something stands on by its middle.
func (s *solids) bear(d *spec.Design) {
	s.bears = make([]bool, len(d.Arbors))
	mark := func(a *spec.Arbor) {
		if a != nil {
			s.bears[a.Index] = true
		}
	}
	for _, w := range d.Wheels {
		if !w.Is("ring") {
			mark(w.Arbor)
		}
	}
	for _, o := range d.Sprockets {
		mark(o.Arbor)
	}
	for _, a := range d.Arms {
		mark(a.Arbor)
	}
}

// bare reports whether of an arbor nothing is given but its axis, and nothing
// stands on it by its middle: it is no post, as of a ring that runs on rollers.
func (s *solids) bare(a *spec.Arbor) bool {
	return !s.bears[a.Index] && !a.Diameter.Set() && !a.From.Set() && !a.To.Set()
}

// posts adds the arbors and studs themselves.
func (s *solids) posts(d *spec.Design) {
	for _, a := range d.Arbors {
		if s.bare(a) {
			continue
		}
		at, ok := s.axis(a)
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
