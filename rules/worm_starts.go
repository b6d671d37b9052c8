package rules

import (
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "worm-starts",
		Group:    Teeth,
		Severity: Warning,
		Checks:   "a worm has few starts",
		Why:      "a worm's teeth are its starts: thirty of them make a steep screw that no lathe of a workshop cuts, and a spur wheel taken for a worm by a slip turns its train across the corner",
		Source:   "common practice: one to four starts as a rule, ten at most",
		Thresholds: []Threshold{
			{Name: "most", Dimension: quantity.Plain, Default: "10", Doc: "starts above which a worm is reported"},
		},
		Breaks: func() string { return startsExample("30") },
		Keeps:  func() string { return startsExample("2") },
		Run:    wormStarts,
	})
}

func startsExample(starts string) string {
	return `
design { title = "Year counter" }
arbor "upright" {}
arbor "front" { tilt = 90 }
wheel "worm" {
  on    = "upright"
  teeth = ` + starts + `
  kind  = "worm"
}
wheel "wheel" {
  on    = "front"
  teeth = 40
}
mesh {
  wheels = ["worm", "wheel"]
  sense  = "same"
}
`
}

func wormStarts(p *Pass) {
	most := p.Bound("most")
	for _, w := range p.Design.Wheels {
		if !w.Is("worm") || exact.Int(w.Teeth.N).Cmp(most) <= 0 {
			continue
		}
		f := p.Found(&w.Part, w.Teeth.Place(), "%s is a worm of %d starts, more than %s", w.Title(), w.Teeth.N, fig(most.Float()))
		p.Report(f.See(w.Shape.Place(), "what makes it a worm"))
	}
}
