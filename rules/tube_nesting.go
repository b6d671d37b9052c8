package rules

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "tube-nesting",
		Group:    Fit,
		Severity: Error,
		Checks:   "of arbors on one axis the outer is a tube whose bore lets the inner run, with a wall that holds; wheels are bored to their arbors and sit on them",
		Why:      "a tube that binds on the arbor in it makes two trains one, a loose one lets its wheels out of depth, and a wheel bored to another size cannot be put on",
		Formula: "clearance = bore - diameter of the widest arbor inside at the same heights; wall = (diameter - bore)/2; " +
			"looseness of a wheel = its bore - the diameter of its arbor. Arbors that a coupling joins turn as one and may fit tightly",
		Source: "common practice: hundredths of a mm let a shaft run and turned or drawn brass tube has walls of a third of a mm at least; a press fit of small shafts takes two hundredths",
		Thresholds: []Threshold{
			{Name: "tight", Dimension: quantity.Length, Default: "0.03 mm", Doc: "less clearance than this is a warning, none an error"},
			{Name: "slack", Dimension: quantity.Length, Default: "0.5 mm", Doc: "more clearance than this is a note"},
			{Name: "wall", Dimension: quantity.Length, Default: "0.3 mm", Doc: "a thinner wall is a warning"},
			{Name: "press", Dimension: quantity.Length, Default: "0.02 mm", Doc: "a wheel bored narrower than its arbor by more than this does not go on"},
			{Name: "loose", Dimension: quantity.Length, Default: "0.1 mm", Doc: "a wheel bored wider than its arbor by more than this is a warning"},
		},
		Breaks: func() string { return tubeExample("4.9") },
		Keeps:  func() string { return tubeExample("5.1") },
		Run:    tubeNesting,
	})
}

func tubeExample(bore string) string {
	return `
design { title = "Tube over a post" }
stud "post" {
  at       = [0, 0]
  diameter = 5
  from     = 0
  to       = 40
}
arbor "year_tube" {
  at       = [0, 0]
  diameter = 8
  bore     = ` + bore + `
  from     = 10
  to       = 30
}
`
}

func tubeNesting(p *Pass) {
	for _, a := range p.Design.Arbors {
		ownSizes(p, a)
	}
	for _, w := range p.Design.Wheels {
		if w.Arbor != nil {
			wheelBore(p, w)
			seat(p, &w.Part, w.Arbor, w.Z, w.Face)
		}
	}
	for _, s := range p.Design.Sprockets {
		if s.Arbor != nil {
			seat(p, &s.Part, s.Arbor, s.Z, spec.Number{})
		}
	}
	for _, a := range p.Design.Arms {
		if a.Arbor != nil {
			seat(p, &a.Part, a.Arbor, a.Z, a.Face)
		}
	}
	nested(p)
}

// ownSizes judges one arbor by itself.
func ownSizes(p *Pass, a *spec.Arbor) {
	if a.From.Set() && a.To.Set() && a.From.Exact.Cmp(a.To.Exact) >= 0 {
		p.Report(p.Found(&a.Part, a.To.Place(), "%s ends at %s and begins at %s", a.Title(), measure(a.To), measure(a.From)).
			See(a.From.Place(), "its lower end"))
	}
	if !a.Bore.Set() || !a.Diameter.Set() {
		return
	}
	wall := a.Diameter.Exact.Sub(a.Bore.Exact).Quo(exact.Int(2))
	switch {
	case wall.Sign() <= 0:
		p.Report(p.Found(&a.Part, a.Bore.Place(), "%s has a bore of %s and no wall: its diameter is %s", a.Title(), measure(a.Bore), measure(a.Diameter)).
			See(a.Diameter.Place(), "the diameter"))
	case wall.Cmp(p.Bound("wall")) < 0:
		p.Report(p.Found(&a.Part, a.Bore.Place(), "%s has a wall of %s, %s is wanted", a.Title(), mm(wall.Float()), mm(p.Limit("wall"))).
			See(a.Diameter.Place(), "the diameter").Weigh(Warning))
	}
}

// measure is a length of the spec for people.
func measure(n spec.Number) string { return mm(n.Exact.Float()) }

// wheelBore holds a wheel's bore against its arbor.
func wheelBore(p *Pass, w *spec.Wheel) {
	if !w.Bore.Set() || !w.Arbor.Diameter.Set() || w.Is("ring") {
		return
	}
	if w.Bore.Exact.Equal(w.Arbor.Diameter.Exact) {
		return
	}
	loose := w.Bore.Exact.Sub(w.Arbor.Diameter.Exact)
	var f *Finding
	switch {
	case loose.Neg().Cmp(p.Bound("press")) > 0:
		f = p.Found(&w.Part, w.Bore.Place(), "%s is bored %s and does not go on %s of %s", w.Title(), measure(w.Bore), w.Arbor.Title(), measure(w.Arbor.Diameter))
	case loose.Cmp(p.Bound("loose")) > 0:
		f = p.Found(&w.Part, w.Bore.Place(), "%s is bored %s and sits loose on %s of %s", w.Title(), measure(w.Bore), w.Arbor.Title(), measure(w.Arbor.Diameter)).
			Weigh(Warning)
	default:
		return
	}
	f.See(w.Arbor.Diameter.Place(), "the arbor's diameter")
	if edit, ok := Figure(w.Bore.At, w.Arbor.Diameter.Exact, "mm"); ok {
		f.Mend("bore it "+measure(w.Arbor.Diameter), edit)
	}
	p.Report(f)
}

// seat holds the level of what is fixed to an arbor against the arbor's ends.
func seat(p *Pass, part *spec.Part, a *spec.Arbor, z, face spec.Number) {
	if !z.Set() || !a.From.Set() || !a.To.Set() || a.Tilt.Or(0) != 0 {
		return
	}
	low, height := z.Exact.Float(), face.Or(0)
	from, to := a.From.Exact.Float(), a.To.Exact.Float()
	// A part may stand over the end by less than half its height.
	middle := low + height/2
	if middle >= from-1e-9 && middle <= to+1e-9 {
		return
	}
	levels := mm(low)
	if height > 0 {
		levels = number(low) + " to " + mm(low+height)
	}
	f := p.Found(part, z.Place(), "%s at %s does not sit on %s, which goes from %s to %s", part.Title(), levels, a.Title(), number(from), mm(to))
	end := a.To
	if middle < from {
		end = a.From
	}
	if low < to && low+height > from {
		f.Weigh(Warning)
	}
	p.Report(f.See(end.Place(), "the arbor's end"))
}
