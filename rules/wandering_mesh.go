package rules

import (
	"fmt"

	"wheelwork/spec"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "wandering-mesh",
		Group:    Structure,
		Severity: Error,
		Checks:   "the two axes of every mesh, chain, slot and counter keep their distance",
		Why:      "wheels stay in mesh only while one body holds both axes; where an arm carries one of them away the teeth part, and when it comes round again they run into each other",
		Formula:  "both axes must stand still on one body: the carrier they share, or an arm in whose middle the other axis lies; otherwise the distance runs from 2 x the longest leg - the sum of all legs (not below 0) to the sum of all legs",
		Source:   "geometry of a linkage, computed from the positions",
		Breaks:   func() string { return wanderingExample(`"far"`) },
		Keeps:    func() string { return wanderingExample(`"middle"`) },
		Run:      wanderingMesh,
	})
}

func wanderingExample(mate string) string {
	return fmt.Sprintf(`
design { title = "Year arm" }
arbor "year" { at = [0, 0] }
arm   "year" { on = "year" }
arbor "earth" {
  carried_by = "year"
  at         = [30, 0]
}
stud "post" { at = [0, 0] }
stud "side" { at = [60, 0] }
wheel "middle" {
  on    = "post"
  teeth = 30
}
wheel "far" {
  on    = "side"
  teeth = 30
}
wheel "earth" {
  on    = "earth"
  teeth = 30
}
mesh { wheels = [%s, "earth"] }
clock {
  on     = "year"
  period = "tropical year"
}
`, mate)
}

func wanderingMesh(p *Pass) {
	for i := range p.Train.Joints {
		j := &p.Train.Joints[i]
		if !j.Wanders {
			continue
		}
		message := fmt.Sprintf("the axes of %s do not keep their distance: %s is carried by %s, %s by %s", j.Name(), j.A.Title(), carrierName(j.A), j.B.Title(), carrierName(j.B))
		if least, most, ok := p.Train.Apart(j.A, j.B); ok {
			message += fmt.Sprintf("; as they turn it runs from %s to %s", mm(least), mm(most))
		}
		f := p.Found(j.Part, jointAt(j), "%s", message)
		f.Part = j.Name()
		f.See(carriedAt(j.A), "%s carries %s", carrierName(j.A), j.A.Title())
		f.See(carriedAt(j.B), "%s carries %s", carrierName(j.B), j.B.Title())
		p.Report(f)
	}
}

// carrierName is what carries an arbor, as messages say it.
func carrierName(a *spec.Arbor) string {
	if a.Carrier == nil {
		return "the frame"
	}
	return a.Carrier.Title()
}

// carriedAt is where the arbor says what carries it.
func carriedAt(a *spec.Arbor) text.Place {
	if a.CarriedBy.Set() {
		return a.CarriedBy.Place()
	}
	return a.Head
}
