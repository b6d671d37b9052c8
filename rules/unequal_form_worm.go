package rules

import (
	"math"

	"wheelwork/spec/exact"
)

// wormDiffers reports a worm and a wheel that are not cut for each other.
func (p *Pass) wormDiffers(g *Gearing) {
	worm, wheel := g.A, g.B
	if !worm.Helix.Set() || !wheel.Helix.Set() {
		return
	}
	const rounding = 0.05
	sum := worm.Helix.Or(0) + wheel.Helix.Or(0)
	if sum < 90-rounding || sum > 90+rounding {
		f := p.Found(&wheel.Part, wheel.Helix.Place(), "%s has a helix of %s deg, its worm a lead angle of %s deg: they must be equal", wheel.Title(), fig(wheel.Helix.Or(0)), fig(90-worm.Helix.Or(0)))
		f.See(worm.Helix.Place(), "the worm's helix, 90 deg less its lead angle")
		if value, ok := Decimal(exact.Int(90).Sub(worm.Helix.Exact)); ok {
			if edit, ok := Replace(wheel.Helix.At, value); ok {
				f.Mend("cut "+wheel.Title()+" to "+value+" deg", edit)
			}
		}
		p.Report(f)
	}
	if worm.HandOf.Or("right") == wheel.HandOf.Or("right") {
		return
	}
	odd := worm
	if wheel.HandOf.Set() {
		odd = wheel
	}
	f := p.Found(&odd.Part, odd.HandOf.Place(), "%s is %s-hand, %s %s-hand: a worm and its wheel are of the same hand", wheel.Title(), wheel.HandOf.Or("right"), worm.Title(), worm.HandOf.Or("right"))
	f.See(g.Mesh.Head, "mesh %s", g.Mesh.Label())
	p.Report(f)
}

// wormAxes reports a worm whose axis and its wheel's do not cross at right
// angles.
func (p *Pass) wormAxes(g *Gearing) {
	const rounding = 0.05
	if !g.crossingStated() || math.Abs(g.Crossing-90) <= rounding {
		return
	}
	m := g.Mesh
	how := "cross at " + figures(g.Crossing, 4) + " deg"
	if level(g.Crossing) {
		how = "are parallel"
	}
	f := p.foundMesh(m, tiltAt(leaning(g)), "the axes of mesh %s %s: a worm and its wheel are cut for 90 deg", m.Label(), how)
	f.See(tiltAt(g.A.Arbor), "the axis of %s", g.A.Title())
	f.See(tiltAt(g.B.Arbor), "the axis of %s", g.B.Title())
	f.See(m.Wheels.Place(), "they mesh here")
	p.Report(f)
}
