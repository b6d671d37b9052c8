package rules

import "fmt"

func init() {
	register(&Rule{
		Name:     "undriven",
		Group:    Structure,
		Severity: Error,
		Checks:   "every arbor is turned by a drive, or by the clock where there is none",
		Why:      "an arbor that no wheel, chain or coupling ties to the drive stays where friction leaves it, and every hand on it tells nothing",
		Formula:  "the rank of the equations of all joints: a rate that depends on more than the drives is free",
		Source:   "mobility of a linkage of rate equations; the linear system of the joints solved exactly",
		Breaks: func() string {
			return `
design { title = "Tide hand" }
arbor "crank" {}
wheel "first" {
  on    = "crank"
  teeth = 30
}
arbor "tide" {}
wheel "second" {
  on    = "tide"
  teeth = 31
}
clock {
  on     = "crank"
  period = "solar day"
}
`
		},
		Keeps: func() string {
			return `
design { title = "Tide hand" }
arbor "crank" {}
wheel "first" {
  on    = "crank"
  teeth = 30
}
arbor "tide" {}
wheel "second" {
  on    = "tide"
  teeth = 31
}
mesh { wheels = ["first", "second"] }
clock {
  on     = "crank"
  period = "solar day"
}
`
		},
		Run: undriven,
	})
}

func undriven(p *Pass) {
	if p.Design.Clock == nil && len(p.Design.Drives) == 0 {
		p.StandAside("no drive and no clock says what turns the model")
		return
	}
	for _, g := range p.Train.Undriven() {
		first := g.Arbors[0]
		message := fmt.Sprintf("nothing turns %s: no mesh, chain or coupling ties it to the drive", first.Title())
		if n := len(g.Arbors) - 1; n > 0 {
			message = fmt.Sprintf("nothing turns %s and %s tied to it", first.Title(), counted(n, "arbor"))
		}
		f := p.Found(&first.Part, first.Head, "%s", message)
		for _, a := range g.Arbors[1:] {
			f.See(a.Head, "%s turns with it", a.Title())
		}
		p.Report(f)
	}
}
