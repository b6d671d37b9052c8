package rules

import (
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

// Pairing is what kind of pair a mesh is.
type Pairing uint8

// The kinds of pair. What is none of them cannot run, or is not computed.
const (
	OddPair     Pairing = iota // parts that no formula here joins; Gearing.Lacks or Fault says why
	OutsidePair                // two spur or helical wheels on parallel axes
	RingPair                   // a pinion in a ring
	ClockPair                  // a cycloidal wheel and its pinion
	BevelPair                  // two bevels, or a bevel on a crown gear
	CrownPair                  // a spur pinion on a crown wheel (contrate)
	WormPair                   // a worm and its wheel
)

// Gearing is one mesh as geometry: what its rules and measurements stand on.
type Gearing struct {
	Mesh    *spec.Mesh
	Pairing Pairing
	// A and B are the mesh's wheels: B is the ring, the pinion of a clock pair,
	// the crown wheel, the worm's wheel; else they stand as in the mesh.
	A, B    *spec.Wheel
	Flipped bool // A is the mesh's second wheel

	Pair  tooth.Pair      // outside and ring pairs, if Known
	Clock tooth.Cycloidal // clock pairs, if Known
	Known bool            // whether the teeth are

	// Distance is how far apart the axes stand in mm, if Placed.
	Distance float64
	Placed   bool
	// Wanted is the centre distance in mm that outside, ring, clock and worm pairs
	// ask for, if Known and no Fault: with the play that the mesh states, or where
	// it states none, with no play at all. It is 0 for a worm whose lead is not
	// given, and for pairs whose axes meet.
	Wanted float64
	// Crossing is the angle in degrees between the upward directions of the
	// axes, if HasCrossing.
	Crossing    float64
	HasCrossing bool

	// Fit is an outside or ring pair at Distance, or where that is not known or
	// more than a module away from Wanted, at Wanted.
	Fit    tooth.Fit
	HasFit bool

	// Lacks says for want of what the teeth are not known, "" where they are.
	Lacks string
	// Fault says why two parts of which all is known cannot run together.
	Fault error
}

// geared is all meshes of a design.
type geared struct {
	list []Gearing
	// short is the tip shortening in modules of the wheels that have one.
	short map[*spec.Wheel]float64
}

type gearedKey struct{}

// Gearings returns every mesh of the design as geometry, in the order of the
// text, meshes whose wheels are not known left out.
func Gearings(f *Facts) []Gearing { return gearingOf(f).list }

func gearingOf(f *Facts) geared { return Shared(f, gearedKey{}, gearings) }

func gearings(f *Facts) geared {
	list := make([]Gearing, 0, len(f.Design.Meshes))
	for _, m := range f.Design.Meshes {
		if m.A == nil || m.B == nil || m.A.Arbor == nil || m.B.Arbor == nil {
			continue
		}
		list = append(list, Gearing{Mesh: m, A: m.A, B: m.B})
		g := &list[len(list)-1]
		axes := f.Train.Standing(m.A.Arbor, m.B.Arbor)
		g.Distance, g.Placed = axes.Distance, axes.Placed
		g.Crossing, g.HasCrossing = axes.Crossing, axes.Still
		g.sort()
		g.describe()
	}
	short := shorten(list)
	for i := range list {
		list[i].fit()
	}
	return geared{list, short}
}

// sort finds what kind of pair the mesh is, and which wheel comes first.
func (g *Gearing) sort() {
	a, b := g.A.Shape.Or("spur"), g.B.Shape.Or("spur")
	switch {
	case a == "ring" && b == "spur", a == "crown" && (b == "spur" || b == "bevel"), a == "spur" && b == "worm":
		g.flip()
		a, b = b, a
	}
	clock := isCycloidal(g.A)
	switch {
	case clock != isCycloidal(g.B):
		g.Fault = errForms
	case a == "spur" && b == "spur" && clock:
		g.Pairing = ClockPair
		if g.A.Teeth.N < g.B.Teeth.N {
			g.flip()
		}
	case a == "spur" && b == "spur":
		g.Pairing = OutsidePair
	case a == "spur" && b == "ring" && clock:
		g.Lacks = "is cycloidal and inside a ring, which is not computed"
	case a == "spur" && b == "ring":
		g.Pairing = RingPair
	case a == "bevel" && (b == "bevel" || b == "crown"):
		g.Pairing = BevelPair
	case a == "spur" && b == "crown":
		g.Pairing = CrownPair
	case a == "worm" && b == "spur":
		g.Pairing = WormPair
	default:
		g.Fault = errShapes
	}
	if g.parallel() && g.HasCrossing && !level(g.Crossing) {
		g.Pairing = OddPair
		g.Fault = errCrossed
		if g.A.Helix.Set() || g.B.Helix.Set() {
			g.Fault, g.Lacks = nil, "has crossed helical wheels, which are not computed"
		}
	}
}

func (g *Gearing) flip() { g.A, g.B, g.Flipped = g.B, g.A, !g.Flipped }

// parallel reports whether pairs of the kind run on parallel axes.
func (g *Gearing) parallel() bool {
	return g.Pairing == OutsidePair || g.Pairing == RingPair || g.Pairing == ClockPair
}

// involute reports whether it is an involute pair on parallel axes, which has a
// tooth.Pair.
func (g *Gearing) involute() bool { return g.Pairing == OutsidePair || g.Pairing == RingPair }

// module is that of the pair in mm, 0 where it is not known.
func (g *Gearing) module() float64 {
	switch {
	case !g.Known:
		return 0
	case g.involute():
		return g.Pair.A.Module
	}
	m, _ := ModuleOf(g.A)
	return m
}

// level reports whether axes that cross at so many degrees are parallel.
func level(crossing float64) bool { return crossing < 1e-6 || crossing > 180-1e-6 }

// describe turns the wheels into gears as far as the spec says.
func (g *Gearing) describe() {
	if g.Fault != nil || g.Lacks != "" {
		return
	}
	a, okA := ModuleOf(g.A)
	_, okB := ModuleOf(g.B)
	switch {
	case !okA || !okB:
		g.Lacks = "has a wheel without a module"
		return
	case g.involute():
		g.Pair = tooth.Pair{A: GearOf(g.A), B: GearOf(g.B)}
	case g.Pairing == ClockPair:
		g.Clock = tooth.Cycloidal{Teeth: int(g.A.Teeth.N), Leaves: int(g.B.Teeth.N), Module: a}
		g.Fault = g.Clock.Check()
		if g.Fault == nil && !SameModule(g.A, g.B) {
			g.Fault = tooth.ErrNoMesh
		}
	}
	g.Known = true
}

// fit finds the centre distance the pair asks for, and the pair at the one it has.
func (g *Gearing) fit() {
	switch {
	case !g.Known || g.Fault != nil:
		return
	case g.Pairing == ClockPair:
		g.Wanted = g.Clock.Module * float64(g.Clock.Teeth+g.Clock.Leaves) / 2
		return
	case g.Pairing == WormPair:
		if s, ok := g.statedWorm(); ok {
			g.Wanted = s.Centre
		}
		return
	case !g.involute():
		return
	}
	stated := g.Mesh.Backlash.Set()
	if g.Placed && !stated && g.fitPlaced(0) {
		g.Wanted = g.Fit.NominalCentre
		return
	}
	if stated {
		if g.Wanted, g.Fault = g.Pair.CentreForBacklash(g.Mesh.Backlash.Exact.Float()); g.Fault == nil {
			g.Fit, g.Fault = g.Pair.At(g.Wanted)
		}
	} else {
		g.Fit, g.Fault = g.Pair.Fit()
		g.Wanted = g.Fit.NominalCentre
	}
	if g.Fault != nil {
		if g.Pair.Check() == nil {
			g.Fault = &noCentre{g.Fault}
		}
		return
	}
	g.HasFit = true
	if g.Placed && stated {
		g.fitPlaced(g.Wanted)
	}
}

// fitPlaced takes the fit at the distance of the axes as placed, if that is
// within a module of what is wanted; 0 stands for no play.
func (g *Gearing) fitPlaced(wanted float64) bool {
	fit, err := g.Pair.At(g.Distance)
	if err != nil {
		return false
	}
	if wanted == 0 {
		wanted = fit.NominalCentre
	}
	if math.Abs(g.Distance-wanted) > g.Pair.A.Module {
		return false
	}
	g.Fit, g.HasFit = fit, true
	return true
}

// noCentre is the fault of a pair of sound wheels that no distance suits.
type noCentre struct{ error }

func (n *noCentre) Unwrap() error { return n.error }

// AtDistance reports whether Fit is at the distance of the axes as placed.
func (g *Gearing) AtDistance() bool { return g.HasFit && g.Placed && g.Fit.Centre == g.Distance }

// jams reports whether the axes as placed are too near for the teeth, by more
// than positions lose in rounding.
func (g *Gearing) jams() bool {
	const rounding = 0.01
	if !g.AtDistance() {
		return false
	}
	if g.Pairing == RingPair {
		return g.Distance > g.Fit.NominalCentre+rounding
	}
	return g.Distance < g.Fit.NominalCentre-rounding
}
