package rules

import (
	"fmt"

	"wheelwork/rules/tooth"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "hunting-tooth",
		Group:    Teeth,
		Severity: Note,
		Checks:   "the tooth counts of a mesh have no common factor",
		Why:      "teeth that meet the same few mates again and again wear themselves into them, and a nick or a soft tooth is hammered home; with a hunting tooth every tooth meets every other",
		Formula:  "with g the greatest common divisor of z1 and z2, the same two teeth meet again after z2/g turns of the first wheel and each tooth meets every g-th of the other's",
		Source:   "hunting tooth of the millwrights; common practice",
		Thresholds: []Threshold{
			{Name: "common_factor", Dimension: quantity.Plain, Default: "1", Doc: "the largest common factor that is let pass"},
		},
		Breaks: func() string { return huntingExample(60) },
		Keeps:  func() string { return huntingExample(61) },
		Run:    huntingTooth,
	})
}

func huntingExample(teeth int) string {
	return fmt.Sprintf(`
design { title = "Hour hand" }
arbor "minutes" {}
arbor "lay" {}
wheel "first" {
  on    = "minutes"
  teeth = 24
}
wheel "second" {
  on    = "lay"
  teeth = %d
}
mesh { wheels = ["first", "second"] }
`, teeth)
}

// A count is not mended here: every other pair without a common factor has
// another ratio, and the hands behind it would go wrong.
func huntingTooth(p *Pass) {
	largest := int(p.Limit("common_factor"))
	for _, m := range p.Design.Meshes {
		if m.A == nil || m.B == nil || !m.A.Teeth.Set() || !m.B.Teeth.Set() {
			continue
		}
		a, b := m.A.Teeth.N, m.B.Teeth.N
		hunt, err := tooth.NewHunt(int(a), int(b))
		if err != nil || hunt.GCD <= largest {
			continue
		}
		f := p.Found(&m.Part, m.Wheels.Place(), "%d and %d teeth share the factor %d: the same two meet again after %s of %s instead of %d",
			a, b, hunt.GCD, plural(hunt.TurnsA, "turn", "turns"), m.A.Title(), b)
		f.Part = "mesh " + m.Label()
		f.See(m.A.Teeth.Place(), "teeth of %s", m.A.Title())
		f.See(m.B.Teeth.Place(), "teeth of %s", m.B.Title())
		p.Report(f)
	}
}
