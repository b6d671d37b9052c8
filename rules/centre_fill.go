package rules

import (
	"errors"
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec/text"
)

// mostShift is the greatest profile shift offered, in modules: beyond it teeth
// run to a point (DIN 3992, from memory, ends its chart there).
const mostShift = 0.8

// fill offers the profile shift with which an involute pair touches without
// play at a centre distance in mm. It goes to the wheel of fewer teeth, which
// must mesh nothing else, and is offered only where it can be cut.
func (p *Pass) fill(f *Finding, g *Gearing, touch float64) {
	if !g.involute() {
		return
	}
	pinion, mate, mateShift := g.A, g.B, g.Pair.B.Shift
	if g.Pairing == OutsidePair && pinion.Teeth.N > mate.Teeth.N {
		pinion, mate, mateShift = mate, pinion, g.Pair.A.Shift
	}
	sum, err := g.Pair.ShiftSum(touch)
	if err != nil || used(p.Facts).meshes[pinion.Index] != 1 {
		return
	}
	shift := sum - mateShift
	if g.Pairing == RingPair {
		shift = mateShift - sum // of a ring, the sum is the difference x2 - x1
	}
	shift = math.Round(shift*1000) / 1000
	gear := GearOf(pinion)
	gear.Shift = shift
	_, least, err := gear.UndercutShift()
	if err != nil || math.Abs(shift) > mostShift || shift < least {
		return
	}
	if edit, ok := Assign(pinion.Shift.At, pinion.Teeth.At, "shift", fig(shift)); ok {
		f.Mend("shift "+pinion.Title()+" to "+fig(shift)+", so that mesh "+g.Mesh.Label()+" touches at "+mm(touch), edit)
	}
}

// noDistance reports a pair of sound wheels that no centre distance suits.
func (p *Pass) noDistance(g *Gearing) {
	var fault *noCentre
	if !errors.As(g.Fault, &fault) {
		return
	}
	m := g.Mesh
	at := m.Wheels.Place()
	for _, v := range [...]text.Place{m.A.Shift.Place(), m.B.Shift.Place(), m.Backlash.Place()} {
		if v.Known() {
			at = v
		}
	}
	why := fault.Error()
	if errors.Is(fault, tooth.ErrNoMesh) {
		why = why[len(tooth.ErrNoMesh.Error())+2:]
	}
	p.Report(p.foundMesh(m, at, "no centre distance suits mesh %s: %s", m.Label(), why))
}

// roomForWorm judges a worm of which neither helix nor wheel gives the lead: it
// must fill what its wheel leaves of the distance.
func (p *Pass) roomForWorm(g *Gearing) {
	module, ok := ModuleOf(g.B)
	if !ok {
		return
	}
	m := g.Mesh
	wheel := module * (float64(g.B.Teeth.N) + 2*g.B.Shift.Or(0))
	worm := 2*g.Distance - wheel
	const least, most = 7.0, 17.0 // diameters in modules that worms usually have (from memory)
	root := worm - 2*g.A.Dedendum.Or(1.25)*module
	var f *Finding
	switch {
	case root <= 0:
		f = p.foundMesh(m, placeOf(m.B.Arbor), "the axes of mesh %s stand %s apart and the wheel takes %s of it: no worm has room", m.Label(), mm(g.Distance), mm(wheel/2))
	case worm < least*module-1e-9 || worm > most*module+1e-9:
		f = p.foundMesh(m, placeOf(m.B.Arbor), "the axes of mesh %s stand %s apart, which asks for a worm of %s: worms have %s to %s as a rule, %s to %s modules",
			m.Label(), mm(g.Distance), mm(worm), mm(least*module), mm(most*module), fig(least), fig(most)).Weigh(Note)
	default:
		return
	}
	f.See(placeOf(m.A.Arbor), "where %s stands", m.A.Arbor.Title())
	f.See(g.B.Teeth.Place(), "teeth of %s", g.B.Title())
	f.See(m.Wheels.Place(), "they mesh here")
	p.Report(f)
}
