package rules

import (
	"math"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "arm-reach",
		Group:    Fit,
		Severity: Error,
		Checks:   "an arm is long enough for every arbor and stud that it carries, and they come up or down to its level",
		Why:      "an arbor that stands beyond the end of its arm has nothing to stand in, one at the very end breaks out of it, and one that ends short of it hangs in the air",
		Formula: "reach >= distance of the axis from the arm's middle + half the arbor's diameter; less is a warning, below the distance itself an error. " +
			"The heights of the arbor and of the arm touch, save of what runs on another arbor on its axis, or goes on in a stepped stud within 1 mm",
		Source: "computed from the geometry",
		Breaks: func() string { return reachExample("100") },
		Keeps:  func() string { return reachExample("125") },
		Run:    armReach,
	})
}

func reachExample(reach string) string {
	return `
design { title = "Moon's pipe on the year arm" }
arbor "year_tube" { at = [0, 0] }
arm "year" {
  on    = "year_tube"
  reach = ` + reach + `
}
arbor "moon_pipe" {
  carried_by = "year"
  at         = [118.5, 0]
  diameter   = 3
}
`
}

func armReach(p *Pass) {
	var wants lack
	told := map[*spec.Arm]bool{}
	for _, a := range p.Design.Arbors {
		arm := a.Carrier
		if arm == nil {
			continue
		}
		x, y, ok := train.Position(a)
		switch {
		case !arm.Reach.Set():
			if !told[arm] {
				wants.of("these arms have no reach", arm.Title())
			}
			told[arm] = true
			continue
		case !ok:
			wants.of("where these stand on their arms is not known", a.Title())
			continue
		}
		away, reach := math.Hypot(x, y), arm.Reach.Exact.Float()
		edge := away + a.Diameter.Or(0)/2
		if edge <= reach+1e-9 {
			continue
		}
		var f *Finding
		place, at := a.Position.At, &a.Part
		if !place.Set() {
			place = a.Radius.At
		}
		seen, as := arm.Reach.At, "the reach"
		if laterOf(p.Design, &a.Part, &arm.Part) == &arm.Part {
			place, seen, as, at = seen, place, "its place on the arm", &arm.Part
		}
		if away > reach+1e-9 {
			f = p.Found(at, place.Place(), "%s stands %s from the middle of %s, which reaches %s", a.Title(), mm(away), arm.Title(), mm(reach))
		} else {
			f = p.Found(at, place.Place(), "%s reaches %s from the middle of %s, out of its end at %s", a.Title(), mm(edge), arm.Title(), mm(reach)).Weigh(Warning)
		}
		f.See(seen.Place(), "%s", as)
		lengthen(f, arm, away, a)
		p.Report(f)
	}
	wants.tell(p)
	hanging(p)
}

// lengthen adds the remedy of a longer arm, to a whole mm, with half a diameter
// of metal about the arbor.
func lengthen(f *Finding, arm *spec.Arm, away float64, a *spec.Arbor) {
	whole := math.Ceil(away + a.Diameter.Or(2) - 1e-6)
	if whole > 1e6 {
		return
	}
	if edit, ok := Figure(arm.Reach.At, exact.Int(int64(whole)), "mm"); ok {
		f.Mend("give "+arm.Title()+" a reach of "+mm(whole), edit)
	}
}
