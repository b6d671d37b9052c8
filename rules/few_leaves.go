package rules

import (
	"wheelwork/rules/tooth"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "few-leaves",
		Group:    Teeth,
		Severity: Warning,
		Checks:   "a cycloidal pinion has leaves enough to be driven smoothly, and is driven by its wheel",
		Why:      "with few leaves the wheel pushes the leaf before the line of centres, where the teeth rub towards each other: the train needs more weight and wears; the form is shaped for a wheel that drives",
		Formula:  "recess action t n/(4 pi), the leaves driven at once after the line of centres; from 1 on a leaf need not be pushed before it",
		Source:   "Goodrich: 10 leaves are the fewest that can avoid friction before the centres; 6 as the least of clocks is common practice",
		Thresholds: []Threshold{
			{Name: "least", Dimension: quantity.Plain, Default: "6", Doc: "fewest leaves; below it is a warning"},
			{Name: "smooth", Dimension: quantity.Plain, Default: "10", Doc: "fewest leaves that run smoothly; below it is a note"},
		},
		Breaks: func() string {
			return pairExample{pinion: `teeth = 5; form = "cycloidal"`, wheel: `teeth = 40; form = "cycloidal"`}.text()
		},
		Keeps: func() string {
			return `
design { title = "One mesh" }
arbor "great" {}
arbor "centre" {}
wheel "great" {
  on    = "great"
  teeth = 84
  form  = "cycloidal"
}
wheel "pinion" {
  on    = "centre"
  teeth = 12
  form  = "cycloidal"
}
mesh { wheels = ["great", "pinion"] }
`
		},
		Run: fewLeaves,
	})
}

func fewLeaves(p *Pass) {
	least, smooth := p.Limit("least"), p.Limit("smooth")
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		if g.Pairing != ClockPair {
			continue
		}
		wheel, pinion := g.A, g.B
		leaves := pinion.Teeth.N
		clock := tooth.Cycloidal{Teeth: int(wheel.Teeth.N), Leaves: int(leaves), Module: 1}
		var f *Finding
		switch {
		case float64(leaves) < least:
			f = p.Found(&pinion.Part, pinion.Teeth.Place(), "%s has %d leaves, fewer than %s, and is pushed before the line of centres", pinion.Title(), leaves, fig(least))
		case float64(leaves) < smooth:
			f = p.Found(&pinion.Part, pinion.Teeth.Place(), "%s has %d leaves, fewer than the %s that need no push before the line of centres", pinion.Title(), leaves, fig(smooth)).Weigh(Note)
		case pinion == g.Mesh.A && wheel.Teeth.N > leaves:
			f = p.Found(&pinion.Part, pinion.Form.Place(), "%s drives %s, and cycloidal teeth are shaped for a wheel that drives its pinion", pinion.Title(), wheel.Title()).Weigh(Note)
		default:
			continue
		}
		if _, cut, err := clock.RecessAction(); err == nil && cut < 1 && float64(leaves) < smooth {
			f.Message += "; " + figures(cut, 2) + " of a pitch is driven after it"
		}
		f.See(wheel.Teeth.Place(), "its wheel")
		f.See(g.Mesh.Head, "mesh %s", g.Mesh.Label())
		p.Report(f)
	}
}
