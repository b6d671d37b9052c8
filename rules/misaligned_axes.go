package rules

import (
	"math"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "misaligned-axes",
		Group:    Fit,
		Severity: Error,
		Checks:   "a clutch or dog joins arbors on one axis, a universal joint axes that meet, and chains, slots and counters run between parallel axes",
		Why:      "a clutch whose halves stand beside each other does not close, a joint whose axes pass each other rocks its shafts until a pin shears, and a chain over sprockets that lean climbs off",
		Formula:  "distance of the axes along their common perpendicular, at its greatest as what carries them turns; the angle between them",
		Source:   "computed from the geometry; a single universal joint bends by up to 45 degrees, and the allowances are common practice",
		Thresholds: []Threshold{
			{Name: "aside", Dimension: quantity.Length, Default: "0.05 mm", Doc: "how far the axes of a coupling may pass each other"},
			{Name: "angle", Dimension: quantity.Angle, Default: "0.5 deg", Doc: "how far axes that should be parallel may lean against each other"},
			{Name: "bend", Dimension: quantity.Angle, Default: "45 deg", Doc: "by how much a universal joint may bend"},
		},
		Breaks: func() string { return clutchExample("1") },
		Keeps:  func() string { return clutchExample("0") },
		Run:    misalignedAxes,
	})
}

func clutchExample(x string) string {
	return `
design { title = "Clutch of the year" }
arbor "hub" { at = [0, 0] }
arbor "tube" { at = [` + x + `, 0] }
coupling "year" {
  arbors = ["hub", "tube"]
  slips  = true
}
`
}

func misalignedAxes(p *Pass) {
	d := p.Design
	for _, c := range d.Chains {
		for i := 1; i < len(c.Over); i++ {
			p.leanApart(&c.Part, "chain "+c.Label(), c.Sprockets.Place(), c.Over[i-1].Arbor, c.Over[i].Arbor)
		}
	}
	for _, s := range d.Slots {
		p.leanApart(&s.Part, s.Title(), s.Head, s.Pin, s.Slotted)
	}
	for _, c := range d.Counters {
		p.leanApart(&c.Part, c.Title(), c.Head, c.Driver, c.Driven)
	}
	var want lack
	for _, c := range d.Couples {
		if c.A != nil && c.B != nil {
			p.coupled(c, &want)
		}
	}
	want.tell(p)
}

// leanApart reports axes that should be parallel.
func (p *Pass) leanApart(part *spec.Part, name string, at text.Place, a, b *spec.Arbor) {
	if a == nil || b == nil {
		return
	}
	crossing, ok := p.Train.Crossing(a, b)
	angle := math.Min(crossing, 180-crossing)
	if !ok || angle <= p.Limit("angle") {
		return
	}
	f := p.Found(part, at, "the axes of %s and %s lean %s deg against each other: %s runs between parallel axes", a.Title(), b.Title(), figures(angle, 4), name)
	f.Part = name
	p.Report(f.See(tiltAt(a), "%s", a.Title()).See(tiltAt(b), "%s", b.Title()))
}

// coupled judges the two arbors of a coupling.
func (p *Pass) coupled(c *spec.Coupling, want *lack) {
	if c.Sort.Or("clutch") == "universal" {
		if angle := bend(p, c.A, c.B); angle > p.Limit("bend")+1e-9 {
			f := p.Found(&c.Part, c.Arbors.Place(), "%s bends by %s deg, more than %s deg", c.Title(), figures(angle, 4), fig(p.Limit("bend")))
			p.Report(f.See(tiltAt(c.A), "%s", c.A.Title()).See(tiltAt(c.B), "%s", c.B.Title()))
		}
	} else {
		p.leanApart(&c.Part, c.Title(), c.Arbors.Place(), c.A, c.B)
	}
	aside, ok := passes(p, c.A, c.B)
	if !ok {
		want.of("positions do not say how the axes of a coupling stand", c.Title())
		return
	}
	if aside <= p.Limit("aside") {
		return
	}
	f := p.Found(&c.Part, c.Arbors.Place(), "the axes of %s and %s, which %s joins, pass each other at %s: within %s is wanted", c.A.Title(), c.B.Title(), c.Title(), mm(aside), mm(p.Limit("aside")))
	p.Report(f.See(placeOf(c.A), "where %s stands", c.A.Title()).See(placeOf(c.B), "where %s stands", c.B.Title()))
}

// bend is the angle in degrees between two axes, of which one may lean on what
// turns against the other: the lean stays the same as it goes round.
func bend(p *Pass, a, b *spec.Arbor) float64 {
	if crossing, ok := p.Train.Crossing(a, b); ok {
		return math.Min(crossing, 180-crossing)
	}
	return math.Abs(a.Tilt.Or(0) - b.Tilt.Or(0))
}

// passes is how far two axes pass each other in mm, at the most as what carries
// them turns.
func passes(p *Pass, a, b *spec.Arbor) (mm float64, ok bool) {
	if distance, ok := p.Train.Distance(a, b); ok {
		return distance, true
	}
	if _, most, ok := p.Train.Apart(a, b); ok {
		return most, true
	}
	if a.Tilt.Or(0) != 0 {
		a, b = b, a
	}
	// One leans: the other is sought in the plan of what carries it.
	on := p.Train.Carrier(b)
	x, y, ok := p.Train.Stands(b, on)
	sweeps, err := p.Train.Sweeps(a, nil)
	if !ok || err != nil {
		return 0, false
	}
	if u, v, ok := p.Train.Stands(a, on); ok {
		sin, cos := math.Sincos(b.Toward.Or(0) * math.Pi / 180)
		return math.Abs((x-u)*sin - (y-v)*cos), true
	}
	for _, s := range sweeps {
		if s.On == on {
			return math.Hypot(s.X-x, s.Y-y) + s.Most, true
		}
	}
	return 0, false
}
