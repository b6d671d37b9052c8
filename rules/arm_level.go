package rules

import (
	"cmp"
	"math"
	"slices"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

const (
	stepGap   = 1.0  // mm in height between the parts of a stepped stud
	mostHolds = 1000 // arbors beside another that are looked at
)

// carried is an arbor on its arm.
type carried struct {
	arbor        *spec.Arbor
	x, y, radius float64
}

// hanging reports what an arm carries and that does not come to its level.
func hanging(p *Pass) {
	s := solidsOf(p.Facts)
	on := make(map[*spec.Arm][]carried, len(p.Design.Arms))
	for _, a := range p.Design.Arbors {
		if a.Carrier == nil || a.Carrier.Arbor == nil {
			continue
		}
		if _, ok := s.axis(a); ok && a.From.Set() && a.To.Set() {
			x, y, _ := train.Position(a)
			if s.coaxial(a, a.Carrier.Arbor) {
				continue // it runs on the arm's own arbor
			}
			on[a.Carrier] = append(on[a.Carrier], carried{a, x, y, a.Diameter.Or(0) / 2})
		}
	}
	for _, arm := range p.Design.Arms {
		if arm.Z.Set() && arm.Face.Set() {
			hangingOn(p, arm, on[arm])
		}
	}
}

func hangingOn(p *Pass, arm *spec.Arm, list []carried) {
	slices.SortFunc(list, func(a, b carried) int { return cmp.Or(cmp.Compare(a.x, b.x), a.arbor.Index-b.arbor.Index) })
	widest := 0.0
	for _, c := range list {
		widest = max(widest, c.radius)
	}
	low := arm.Z.Exact.Float()
	high := low + arm.Face.Exact.Float()
	for i := range list {
		c := &list[i]
		if short := shortOf(c.arbor, low, high); short > 1e-9 && !c.held(list, i, widest) {
			hangs(p, c.arbor, arm, short)
		}
	}
}

// shortOf is how far the arbor ends short of heights, 0 where it comes to them.
func shortOf(a *spec.Arbor, low, high float64) float64 {
	return max(0, low-a.To.Exact.Float(), a.From.Exact.Float()-high)
}

// held reports whether another arbor on the arm holds this one, the i-th of those
// on the arm from the left: one on its axis that runs in it or that it runs in, or
// the next step of a stepped stud.
func (c *carried) held(list []carried, i int, widest float64) bool {
	looks := 0
	for _, step := range [...]int{-1, 1} {
		for k := i + step; k >= 0 && k < len(list); k += step {
			b := &list[k]
			if math.Abs(b.x-c.x) > c.radius+widest {
				break
			}
			if looks++; looks > mostHolds {
				return true // in such a crowd it may well be
			}
			apart := math.Hypot(b.x-c.x, b.y-c.y)
			gap := shortOf(c.arbor, b.arbor.From.Exact.Float(), b.arbor.To.Exact.Float())
			if apart < 1e-6 && gap == 0 || apart < c.radius+b.radius && gap <= stepGap {
				return true
			}
		}
	}
	return false
}

func hangs(p *Pass, a *spec.Arbor, arm *spec.Arm, short float64) {
	end, at := a.To, "ends at"
	if a.From.Exact.Cmp(arm.Z.Exact) > 0 {
		end, at = a.From, "begins at"
	}
	z := arm.Z.Exact.Float()
	p.Report(p.Found(&a.Part, end.Place(), "%s %s %s, %s short of %s, which carries it at %s to %s", a.Title(), at, measure(end), mm(short), arm.Title(),
		number(z), mm(z+arm.Face.Exact.Float())).
		See(arm.Z.Place(), "the arm's level").Weigh(Warning))
}
