package rules

import (
	"fmt"
	"math"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "centre-distance",
		Group:    Teeth,
		Severity: Error,
		Checks:   "the axes of a mesh stand as far apart as its wheels ask for",
		Why:      "too near, the teeth wedge into one another and the train jams; too far, they hold on by their tips, run with play and at last slip past",
		Formula:  "wanted: m (z1 + z2) / 2, in a ring m (z2 - z1) / 2; with shift and helix the distance at which the teeth touch without play, and further for the play that the mesh states; of a worm (d1 + m z2) / 2, where a helix gives its lead, else what the wheel leaves of the distance, 7 to 17 modules as a rule; axes of bevels and crown wheels meet, which bevel-cone judges",
		Source:   "ISO 21771; worms: SDP/SI D785 Table 9-3 and Tandwiel (from memory); play of 0.04 to 0.10 modules is usual in instruments and needs the axes 0.05 to 0.14 modules further apart; the allowance is common practice",
		Thresholds: []Threshold{
			{Name: "closer", Dimension: quantity.Length, Default: "0.01 mm", Doc: "how much too near the axes may stand: what positions lose in rounding"},
			{Name: "wider", Dimension: quantity.Plain, Default: "0.2", Doc: "how much too far they may stand, in modules"},
		},
		Breaks: func() string { return depthExample("30.1") },
		Keeps:  func() string { return depthExample("30.3") },
		Run:    centreDistance,
	})
}

func depthExample(x string) string {
	return fmt.Sprintf(`
design { title = "Tide hand" }
arbor "day" { at = [0, 0] }
arbor "tide" { at = [%s, 0] }
wheel "first" {
  on     = "day"
  teeth  = 30
  module = 0.5
}
wheel "second" {
  on     = "tide"
  teeth  = 91
  module = 0.5
}
mesh { wheels = ["first", "second"] }
`, x)
}

// A depth is how the axes of a mesh stand against what its wheels ask for, in
// mm. Other kinds of pair than those of depthOf join here.
type depth struct {
	touch  float64 // the distance at which the teeth touch without play
	wanted float64 // the same with the play that the mesh states
	module float64
	reach  float64 // from touch to where the tips pass one another
	inside bool    // whether play grows as the axes come together, as in a ring
}

// depthOf is what a mesh asks for; ok is false for pairs that are not computed.
func depthOf(g *Gearing) (d depth, ok bool) {
	if !g.Known || g.Fault != nil || g.Wanted == 0 {
		return depth{}, false
	}
	d = depth{touch: g.Wanted, wanted: g.Wanted, module: g.module(), inside: g.Pairing == RingPair}
	if !g.involute() {
		d.reach = 2 * d.module
	} else {
		d.reach = d.module * (g.Pair.A.Addendum + g.Pair.B.Addendum)
		if g.Mesh.Backlash.Set() {
			touch, err := g.Pair.NominalCentre()
			if err != nil {
				return depth{}, false
			}
			d.touch = touch
		}
	}
	return d, true
}

// formula says how the distance follows from the counts.
func (d depth) formula(g *Gearing) string {
	a, b := g.Mesh.A.Teeth.N, g.Mesh.B.Teeth.N
	switch {
	case g.Pairing == WormPair:
		return "with the lead of its worm"
	case g.Pair.A.Shift != 0 || g.Pair.B.Shift != 0:
		return "with their shift"
	case g.Pair.A.Helix != 0:
		return "with their helix"
	case d.inside:
		return fmt.Sprintf("%s x (%d - %d) / 2", mm(d.module), max(a, b), min(a, b))
	}
	return fmt.Sprintf("%s x (%d + %d) / 2", mm(d.module), a, b)
}

func centreDistance(p *Pass) {
	closer, wider := p.Limit("closer"), p.Limit("wider")
	var missing lack
	var bound coaxial
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		d, ok := depthOf(g)
		switch {
		case g.Lacks != "":
			missing.of("a mesh "+g.Lacks, g.Mesh.Label())
			continue
		case g.Pairing == WormPair && g.Placed && !ok:
			p.roomForWorm(g)
			continue
		case !ok:
			p.noDistance(g)
			continue
		case !g.Placed && g.HasCrossing:
			missing.of("positions do not say how far the axes stand apart", g.Mesh.Label())
			continue
		case !g.Placed:
			continue // they wander, which is wandering-mesh's
		}
		open := g.Distance - d.touch
		if d.inside {
			open = -open
		}
		play := math.Abs(d.wanted - d.touch)
		weight, what := Error, ""
		switch {
		case open < -closer:
			what = "the teeth jam"
		case open >= d.reach:
			what = "the teeth do not reach one another"
		case open > play+wider*d.module:
			weight, what = Warning, fmt.Sprintf("more than the %s allowed", mm(wider*d.module))
		default:
			continue
		}
		if bound == nil {
			bound = coaxialArbors(p.Design)
		}
		p.Report(misplacedAxes(p, g, d, open-play, what, bound).Weigh(weight))
	}
	missing.tell(p)
}

// misplacedAxes is the finding of a mesh that stands so many mm too far apart,
// at the arbor that is freest to move.
func misplacedAxes(p *Pass, g *Gearing, d depth, far float64, what string, bound coaxial) *Finding {
	m := g.Mesh
	free, other := m.B.Arbor, m.A.Arbor
	if bound.with(other) < bound.with(free) {
		free, other = other, free
	}
	way := "far"
	if far < 0 != d.inside {
		way = "near"
	}
	play := ""
	if d.wanted != d.touch {
		play = fmt.Sprintf(" and the %s of play stated", mm(m.Backlash.Or(0)))
	}
	f := p.Found(&m.Part, placeOf(free), "the axes of %s stand %s apart, wanted %s (%s%s): %s too %s, %s", "mesh "+m.Label(), mm(g.Distance), mm(d.wanted), d.formula(g), play, mm(math.Abs(far)), way, what)
	f.Part = "mesh " + m.Label()
	f.See(placeOf(other), "where %s stands", other.Title())
	f.See(m.A.Teeth.Place(), "teeth of %s", m.A.Title())
	f.See(m.B.Teeth.Place(), "teeth of %s", m.B.Title())
	f.See(m.Wheels.Place(), "they mesh here")
	target := runningCentre(g, d)
	if !move(p, f, free, other, target) && bound.with(other) == 1 {
		move(p, f, other, free, target)
	}
	if math.Abs(far) > 0.1*d.module { // else a position is in error, not a shift
		p.fill(f, g, g.Distance-(target-d.touch))
	}
	return f
}

// runningCentre is the distance to set: with the play stated, or 0.06 modules of
// it, the middle of what is usual in instruments. Cycloidal teeth are set to
// their pitch circles.
func runningCentre(g *Gearing, d depth) float64 {
	if g.Mesh.Backlash.Set() || !g.involute() {
		return d.wanted
	}
	centre, err := g.Pair.CentreForBacklash(0.06 * d.module)
	if err != nil {
		return d.wanted
	}
	return centre
}

// coaxial counts arbors by where they stand.
type coaxial map[standing]int

type standing struct {
	carrier *spec.Arm
	x, y    int64 // micrometres
}

func (c coaxial) with(a *spec.Arbor) int {
	s, ok := standingOf(a)
	if !ok || s.x == 0 && s.y == 0 {
		return math.MaxInt // the middle of the plan stays where it is
	}
	return c[s]
}
