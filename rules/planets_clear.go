package rules

import (
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "planets-clear",
		Group:    Teeth,
		Severity: Error,
		Checks:   "neighbouring planets in one plane stay off each other",
		Why:      "planets that overlap cannot be put in, and such as nearly touch are caught by the first grain between them",
		Formula:  "gap = 2 a sin(t) - da, t half the angle between two planets; evenly, zp + 2 < (zs + zp) sin(180/n)",
		Source:   "SDP/SI D785 eq 13-9 and 13-10; half a module of gap is asked for by a maker, a whole module is common practice",
		Thresholds: []Threshold{
			{Name: "least", Dimension: quantity.Plain, Default: "0.5", Doc: "gap in modules below which it is a warning"},
			{Name: "usual", Dimension: quantity.Plain, Default: "1", Doc: "gap in modules below which it is a note"},
		},
		Breaks: func() string { return planetsExample(6) },
		Keeps:  func() string { return planetsExample(4) },
		Run:    planetsClear,
	})
}

func planetsClear(p *Pass) {
	least, usual := p.Limit("least"), p.Limit("usual")
	sets := planetSets(p.Facts)
	for i := range sets {
		s := &sets[i]
		n := len(s.planets)
		for j := range s.planets {
			if n == 2 && j == 1 {
				break // one gap, seen from either side
			}
			a, b := &s.planets[j], &s.planets[(j+1)%n]
			p.planetGap(s, a.first, b.first, a.toFirst, least, usual)
			if a.second != a.first {
				p.planetGap(s, a.second, b.second, a.toNext, least, usual)
			}
			if s.evenly {
				break // one gap is like the other
			}
		}
	}
}

func (p *Pass) planetGap(s *planetSet, a, b *spec.Wheel, g *Gearing, least, usual float64) {
	if apart(a, b) {
		return
	}
	size, ok := SizeOf(p.Facts, a)
	mate, okB := SizeOf(p.Facts, b)
	module, known := ModuleOf(a)
	if !ok || !okB || !known || g.Fault != nil {
		return
	}
	var gap float64
	evenly := float64(len(s.planets))
	if s.evenly {
		var err error
		if gap, err = tooth.PlanetGap(g.Wanted, 360/evenly, size.Tip); err != nil {
			return
		}
	} else {
		distance, ok := p.Train.Distance(a.Arbor, b.Arbor)
		if !ok {
			return
		}
		gap = distance - (size.Tip+mate.Tip)/2
	}
	weight, bound := Error, 0.0
	switch {
	case gap < 0:
	case gap < least*module-1e-9:
		weight, bound = Warning, least
	case gap < usual*module-1e-9:
		weight, bound = Note, usual
	default:
		return
	}
	f := p.Found(&b.Part, placeOf(b.Arbor), "the tips of %s and %s are %s apart, less than %s", a.Title(), b.Title(), mm(gap), mm(bound*module)).Weigh(weight)
	if gap < 0 {
		f.Message = a.Title() + " and " + b.Title() + " overlap by " + mm(math.Abs(gap)) + " at their tips"
	}
	if s.evenly {
		f.Message += ", if " + fig(evenly) + " planets stand evenly"
	}
	f.See(placeOf(a.Arbor), "%s", a.Arbor.Title())
	f.See(a.Teeth.Place(), "teeth of %s", a.Title())
	p.Report(f)
}

// apart reports whether two wheels are known to lie on levels that do not
// overlap.
func apart(a, b *spec.Wheel) bool {
	if !a.Z.Set() || !b.Z.Set() || !a.Face.Set() || !b.Face.Set() {
		return false
	}
	aTop, bTop := a.Z.Exact.Add(a.Face.Exact), b.Z.Exact.Add(b.Face.Exact)
	return aTop.Cmp(b.Z.Exact) <= 0 || bTop.Cmp(a.Z.Exact) <= 0
}
