package rules

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "unequal-pressure-angle",
		Group:    Teeth,
		Severity: Error,
		Checks:   "both wheels of a mesh are cut to the same pressure angle, one that teeth can have",
		Why:      "teeth of 14.5 and 20 degrees have different base pitches: they ride on their edges, jam at one tooth and rattle at the next",
		Formula:  "equal base pitch: pi m1 cos(a1) = pi m2 cos(a2) with m1 = m2",
		Source:   "law of gearing; the range of 5 to 45 degrees is that of the formulas of this program",
		Breaks: func() string {
			return pairExample{pinion: "teeth = 20; module = 1; pressure_angle = 14.5", wheel: "teeth = 60; module = 1"}.text()
		},
		Keeps: func() string {
			return pairExample{pinion: "teeth = 20; module = 1; pressure_angle = 14.5", wheel: "teeth = 60; module = 1; pressure_angle = 14.5"}.text()
		},
		Run: unequalPressureAngle,
	})
}

// usualAngle is the pressure angle of a wheel that states none.
var usualAngle = exact.Int(20)

func pressureAngleOf(w *spec.Wheel) exact.Rat {
	if w.PressureAngle.Set() {
		return w.PressureAngle.Exact
	}
	return usualAngle
}

func unequalPressureAngle(p *Pass) {
	least, most := exact.Int(5), exact.Int(45)
	for _, w := range p.Design.Wheels {
		if a := w.PressureAngle; a.Set() && !isCycloidal(w) && (a.Exact.Cmp(least) < 0 || a.Exact.Cmp(most) > 0) {
			p.Report(p.Found(&w.Part, a.Place(), "%s has a pressure angle of %s deg: teeth have 5 to 45 deg, 20 deg as a rule", w.Title(), fig(a.Exact.Float())))
		}
	}
	for _, m := range p.Design.Meshes {
		if m.A == nil || m.B == nil || isCycloidal(m.A) || isCycloidal(m.B) {
			continue
		}
		a, b := pressureAngleOf(m.A), pressureAngleOf(m.B)
		if a.Equal(b) {
			continue
		}
		// The one that states its angle departs from the usual one.
		odd, mate := m.A, m.B
		if !odd.PressureAngle.Set() || a.Equal(usualAngle) && m.B.PressureAngle.Set() {
			odd, mate = m.B, m.A
		}
		f := p.Found(&odd.Part, odd.PressureAngle.Place(), "%s has a pressure angle of %s deg, its mate %s one of %s deg", odd.Title(),
			fig(pressureAngleOf(odd).Float()), mate.Title(), fig(pressureAngleOf(mate).Float()))
		f.See(angleAt(mate), "the mate")
		f.See(m.Head, "mesh %s", m.Label())
		mendAngle(f, odd, mate)
		mendAngle(f, mate, odd)
		p.Report(f)
	}
}

// angleAt is where the wheel says its pressure angle, or what stands for it.
func angleAt(w *spec.Wheel) text.Place {
	if w.PressureAngle.Set() {
		return w.PressureAngle.Place()
	}
	return w.Head
}

// mendAngle offers to cut the wheel to the angle of its mate.
func mendAngle(f *Finding, w, mate *spec.Wheel) {
	angle, ok := Decimal(pressureAngleOf(mate))
	if !ok {
		return
	}
	var edit Edit
	if w.PressureAngle.Set() {
		edit, ok = Figure(w.PressureAngle.At, pressureAngleOf(mate), "deg")
	} else {
		edit, ok = Insert(w.Teeth.At, "pressure_angle", angle)
	}
	if ok {
		f.Mend("cut "+w.Title()+" to "+angle+" deg", edit)
	}
}
