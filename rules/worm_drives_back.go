package rules

import (
	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "worm-drives-back",
		Group:    Teeth,
		Severity: Error,
		Checks:   "a worm's wheel does not have to drive a worm that locks, and does not drive one that should hold",
		Why:      "a worm of little lead holds its wheel: a train that comes from the wheel stands still; one of much lead lets the wheel run back when its load is heavy or the hand is pushed",
		Formula:  "tan(lead angle) = m z1/d1; from the helix of the worm (90 degrees less the lead angle) or of the wheel, else from the distance of the axes, d1 = 2a - m z2",
		Source:   "SDP/SI D785 Table 9-3 and common practice (from memory): usually self-locking below 5 degrees, at rest; grease and shaking undo it, so that it is no brake",
		Thresholds: []Threshold{
			{Name: "self_locking", Dimension: quantity.Angle, Default: "5 deg", Doc: "lead angle below which the worm usually holds its wheel"},
		},
		Breaks: func() string { return wormExample("wheel", "worm") },
		Keeps:  func() string { return wormExample("worm", "wheel") },
		Run:    wormDrivesBack,
	})
}

func wormExample(first, second string) string {
	return `
design { title = "Year counter" }
arbor "upright" { at = [0, 0] }
arbor "front" {
  at     = [15.4, 0]
  tilt   = 90
  toward = 90
}
wheel "worm" {
  on     = "upright"
  teeth  = 1
  kind   = "worm"
  module = 0.8
}
wheel "wheel" {
  on     = "front"
  teeth  = 26
  module = 0.8
}
mesh {
  wheels = ["` + first + `", "` + second + `"]
  sense  = "same"
}
`
}

func wormDrivesBack(p *Pass) {
	bound := p.Limit("self_locking")
	var want lack
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		if g.Pairing != WormPair {
			continue
		}
		m := g.Mesh
		lead, ok := g.statedLead()
		if s, known := g.Worm(); known && !ok {
			lead, ok = s.LeadAngle, true
		}
		if !ok {
			want.of("neither a helix nor the module and positions give the lead of a worm", "mesh "+m.Label())
			continue
		}
		worm, wheel := g.A, g.B
		wheelDrives := m.A == wheel
		switch {
		case wheelDrives && lead < bound:
			f := p.Found(&worm.Part, leadPlace(g), "%s is to drive %s, whose lead angle of %s deg holds it: below %s deg a worm usually locks", wheel.Title(), worm.Title(), figures(lead, 4), fig(bound))
			p.Report(f.See(m.Wheels.Place(), "the wheel comes first, so it drives"))
		case !wheelDrives && lead >= bound:
			f := p.Found(&worm.Part, leadPlace(g), "%s can be turned back by %s: its lead angle is %s deg, and below %s deg a worm usually holds", worm.Title(), wheel.Title(), figures(lead, 4), fig(bound)).Weigh(Note)
			if _, back, err := tooth.WormEfficiency(lead, g.A.PressureAngle.Or(20), 0.1); err == nil && back == 0 {
				f.Message += "; with a friction of 0.1 it still does"
			}
			p.Report(f.See(m.Wheels.Place(), "mesh %s", m.Label()))
		}
	}
	want.tell(p)
}

// leadPlace is where the spec says what the lead angle follows from.
func leadPlace(g *Gearing) text.Place {
	for _, w := range [...]*spec.Wheel{g.A, g.B} {
		if w.Helix.Set() {
			return w.Helix.Place()
		}
	}
	return g.A.Teeth.Place()
}
