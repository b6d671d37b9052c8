package rules

import (
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "bevel-cone",
		Group:    Teeth,
		Severity: Error,
		Checks:   "the axes of bevels and crown wheels meet, at an angle that their pitch cones fill, the shifts of two bevels cancel, and a bevel's face is no broader than its cone lets it be",
		Why:      "bevels are cut for one shaft angle and one apex: axes that pass each other leave the teeth bearing on a corner; a face too broad runs out into teeth too thin to cut",
		Formula:  "tan(d1) = sin(S)/(z2/z1 + cos(S)), d2 = S - d1; Re = m z2/(2 sin(d2)); face <= Re/3 and 10 m; x1 + x2 = 0; a flat crown gear asks for S = 90 + asin(z1/z2), a crown wheel with a spur pinion for 90 degrees",
		Source:   "SDP/SI D785 section 8 and Shigley section 13-9, ISO 23509 for the shifts (from memory); crown gear computed from the pitch cones; 0.1 m for axes that miss is common practice",
		Thresholds: []Threshold{
			{Name: "miss", Dimension: quantity.Plain, Default: "0.1", Doc: "how far in modules the axes may pass each other"},
			{Name: "angle", Dimension: quantity.Angle, Default: "0.25 deg", Doc: "how far the shaft angle of a crown wheel may be off"},
		},
		Breaks: func() string { return bevelExample(8) },
		Keeps:  func() string { return bevelExample(7) },
		Run:    bevelCone,
	})
}

func bevelExample(face int) string {
	return pairExample{pinion: `kind = "bevel"; teeth = 20; module = 1; face = ` + fig(float64(face)),
		wheel: `kind = "bevel"; teeth = 40; module = 1; face = ` + fig(float64(face)), mesh: `sense = "opposite"`, wheelArbor: "tilt = 90"}.text()
}

func bevelCone(p *Pass) {
	miss, off := p.Limit("miss"), p.Limit("angle")
	var want lack
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		if g.Pairing != BevelPair && g.Pairing != CrownPair {
			continue
		}
		label := "mesh " + g.Mesh.Label()
		if !g.crossingStated() {
			want.of("no tilt says how the axes cross", label)
			continue
		}
		module, ok := ModuleOf(g.A)
		switch {
		case level(g.Crossing):
			p.parallelBevels(g)
			continue
		case !ok:
			want.of("a wheel gives no module", label)
		case !g.Placed:
			want.of("positions do not say whether the axes meet", label)
		case g.Distance > miss*module+1e-9:
			p.passingAxes(g, miss*module)
		}
		if g.Pairing == CrownPair || g.B.Is("crown") {
			p.crownAngle(g, off)
		} else if ok {
			p.bevelFaces(g, module)
		}
	}
	want.tell(p)
}

// crossingStated reports whether the spec says how the axes cross: a tilt that
// is not given means upright only where positions are.
func (g *Gearing) crossingStated() bool {
	return g.HasCrossing && (g.Placed || g.A.Arbor.Tilt.Set() || g.B.Arbor.Tilt.Set())
}

func (p *Pass) parallelBevels(g *Gearing) {
	m := g.Mesh
	f := p.foundMesh(m, m.Wheels.Place(), "the axes of mesh %s are parallel: a %s and a %s run on axes that cross", m.Label(), shape(m.A), shape(m.B))
	f.See(tiltAt(m.A.Arbor), "%s", m.A.Arbor.Title())
	f.See(tiltAt(m.B.Arbor), "%s", m.B.Arbor.Title())
	p.Report(f)
}

func (p *Pass) passingAxes(g *Gearing, most float64) {
	m := g.Mesh
	f := p.foundMesh(m, placeOf(m.B.Arbor), "the axes of mesh %s pass each other at %s: they must meet, within %s", m.Label(), mm(g.Distance), mm(most))
	f.See(placeOf(m.A.Arbor), "where %s stands", m.A.Arbor.Title())
	f.See(tiltAt(leaning(g)), "which way it leans")
	f.See(m.Wheels.Place(), "they mesh here")
	p.Report(f)
}

func leaning(g *Gearing) *spec.Arbor {
	if g.A.Arbor.Tilt.Set() {
		return g.A.Arbor
	}
	return g.B.Arbor
}

// crownAngle judges the shaft angle of a crown wheel, which its teeth settle.
func (p *Pass) crownAngle(g *Gearing, off float64) {
	wanted, got := 90.0, g.Crossing
	if g.Pairing == BevelPair {
		var err error
		wanted, err = tooth.CrownGearShaftAngle(int(g.A.Teeth.N), int(g.B.Teeth.N))
		if err != nil {
			f := p.Found(&g.B.Part, g.B.Teeth.Place(), "%s has %d teeth, its bevel %s %d: a crown gear has more", g.B.Title(), g.B.Teeth.N, g.A.Title(), g.A.Teeth.N)
			p.Report(f.See(g.A.Teeth.Place(), "the bevel's teeth"))
			return
		}
		got = g.bevel(1).ShaftAngle
	}
	if math.Abs(got-wanted) <= off {
		return
	}
	m := g.Mesh
	f := p.foundMesh(m, tiltAt(leaning(g)), "the axes of mesh %s cross at %s deg: a %s on a crown of %d teeth asks for %s deg", m.Label(), fig(got), shape(g.A), g.B.Teeth.N, figures(wanted, 5))
	f.See(g.B.Teeth.Place(), "the crown's teeth")
	f.See(m.Wheels.Place(), "they mesh here")
	p.Report(f)
}

// bevelFaces judges the cones of two bevels and their faces.
func (p *Pass) bevelFaces(g *Gearing, module float64) {
	m := g.Mesh
	bevel := g.bevel(module)
	cones, err := bevel.Cones()
	if err != nil {
		f := p.foundMesh(m, tiltAt(leaning(g)), "at a shaft angle of %s deg %d and %d teeth leave no cones: one would be hollow", fig(bevel.ShaftAngle), bevel.Pinion, bevel.Wheel)
		if m.Sense.Set() {
			f.See(m.Sense.Place(), "the sense says on which side of the apex the wheels stand")
		}
		p.Report(f)
		return
	}
	if x := g.A.Shift.Or(0) + g.B.Shift.Or(0); math.Abs(x) > 5e-3 {
		p.bevelShifts(g, x)
	}
	for i, w := range [...]*spec.Wheel{g.A, g.B} {
		if w.Face.Or(0) <= cones.MostFace+1e-9 {
			continue
		}
		cone := [...]float64{cones.PinionAngle, cones.WheelAngle}[i]
		most := math.Floor(cones.MostFace*10+1e-6) / 10
		f := p.Found(&w.Part, w.Face.Place(), "the face of %s is %s broad on a cone of %s deg and %s from its apex: %s at most, a third of that or 10 modules", w.Title(),
			mm(w.Face.Or(0)), figures(cone, 4), mm(cones.Distance), mm(cones.MostFace)).Weigh(Warning)
		f.See(m.Wheels.Place(), "mesh %s", m.Label())
		if most > 0 {
			if edit, ok := Replace(w.Face.At, fig(most)); ok {
				f.Mend("make the face "+mm(most), edit)
			}
		}
		p.Report(f)
	}
}

// bevelShifts reports shifts that do not cancel: the cones of two bevels are
// fixed by their axes and cannot be drawn apart.
func (p *Pass) bevelShifts(g *Gearing, sum float64) {
	odd, mate := g.A, g.B
	if !odd.Shift.Set() {
		odd, mate = mate, odd
	}
	f := p.Found(&odd.Part, odd.Shift.Place(), "%s is shifted by %s and its mate %s by %s, %s together: what one bevel gains the other gives, since their axes fix the cones",
		odd.Title(), fig(odd.Shift.Or(0)), mate.Title(), fig(mate.Shift.Or(0)), fig(sum))
	at := mate.Head
	if mate.Shift.Set() {
		at = mate.Shift.Place()
	}
	f.See(at, "the mate")
	f.See(g.Mesh.Head, "mesh %s", g.Mesh.Label())
	if digits, ok := Decimal(odd.Shift.Exact.Neg()); ok {
		if edit, ok := Assign(mate.Shift.At, mate.Teeth.At, "shift", digits); ok {
			f.Mend("shift "+mate.Title()+" by "+digits, edit)
		}
	}
	p.Report(f)
}
