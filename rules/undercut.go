package rules

import (
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "undercut",
		Group:    Teeth,
		Severity: Warning,
		Checks:   "involute teeth outside are many enough, or shifted outward enough, to be cut without undercut",
		Why:      "the cutter's tip hollows the foot of a small pinion's teeth: they are weaker, and lose the part of the flank that the mate should run on",
		Formula:  "x >= haP - z sin2(a)/2; in practice x >= (14 - z)/17 at 20 deg; of a bevel, z/cos(cone angle) stands for z; below the practical limit a warning, between the two a note",
		Source:   "SDP/SI D785 eq 4-1; practical limit of DIN 3960 (from memory), which lets 14 teeth pass",
		Thresholds: []Threshold{
			{Name: "trace", Dimension: quantity.Plain, Default: "0.01", Doc: "shift in modules that may be wanting: 17 teeth at 20 deg want 0.006"},
		},
		Breaks: func() string {
			return pairExample{pinion: "teeth = 10; module = 1", wheel: "teeth = 40; module = 1"}.text()
		},
		Keeps: func() string {
			return pairExample{pinion: "teeth = 10; module = 1; shift = 0.42", wheel: "teeth = 40; module = 1"}.text()
		},
		Run: undercut,
	})
}

func undercut(p *Pass) {
	trace := p.Limit("trace")
	var want lack
	for _, w := range p.Design.Wheels {
		if !w.Is("spur") || isCycloidal(w) {
			continue
		}
		if !w.Module.Set() && !w.Pitch.Set() {
			// Counts alone do not say that the teeth are involutes.
			want.of("a wheel gives no module", w.Name.Text)
			continue
		}
		if !plainWheel(w) {
			p.undercutWheel(w, GearOf(w), 0, trace)
		}
	}
	want.tell(p)
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		if c, ok := g.Cones(); ok {
			p.undercutWheel(g.A, GearOf(g.A), c.PinionAngle, trace)
			p.undercutWheel(g.B, GearOf(g.B), c.WheelAngle, trace)
		}
	}
}

// plainLimit is a tooth count from which no unshifted tooth of 20 degrees and
// usual depth, helical or not, is undercut.
const plainLimit = 18

// plainWheel reports whether a wheel is so usual that its teeth are neither
// undercut nor pointed: of unshifted teeth of 20 degrees and usual depth, as
// many as plainLimit.
func plainWheel(w *spec.Wheel) bool {
	return w.Teeth.N >= plainLimit && !w.Shift.Set() && !w.Addendum.Set() && !w.Dedendum.Set() && !w.PressureAngle.Set() && !w.Helix.Set()
}

// undercutWheel judges a gear, on a cone of so many degrees if it is a bevel.
func (p *Pass) undercutWheel(w *spec.Wheel, gear tooth.Gear, cone, trace float64) {
	if gear.Helix < -60 || gear.Helix > 60 || gear.PressureAngle < 5 || gear.PressureAngle > 45 {
		return // unequal-form and unequal-pressure-angle speak
	}
	exact, practical := undercutLimits(gear, cone)
	if gear.Shift >= exact-trace {
		return
	}
	at := w.Teeth.Place()
	if gear.Shift < 0 && exact <= 0 {
		at = w.Shift.Place() // the count is sound, the shift is not
	}
	f := p.Found(&w.Part, at, "%s is undercut: %s want a shift of at least %s, it has %s", w.Title(), teethOn(gear, cone), figures(exact, 3), fig(gear.Shift))
	if gear.Shift >= practical-1e-9 {
		f.Weigh(Note)
		f.Message = w.Title() + " is slightly undercut: " + teethOn(gear, cone) + " want a shift of " + figures(exact, 3) + ", it has " + fig(gear.Shift) + "; practice lets it pass"
	}
	if cone == 0 {
		p.mendUndercut(f, w, math.Ceil(exact*100-1e-6)/100)
	}
	p.Report(f)
}

// undercutLimits is the least shifts of [tooth.Gear.UndercutShift], with the
// virtual teeth of a bevel, which need not be whole.
func undercutLimits(gear tooth.Gear, cone float64) (exact, practical float64) {
	sin := math.Sin(gear.PressureAngle * math.Pi / 180)
	if cone == 0 {
		if x, y, err := gear.UndercutShift(); err == nil {
			return x, y
		}
	}
	lean := math.Cos(cone * math.Pi / 180)
	if lean < 1e-9 {
		return math.Inf(-1), math.Inf(-1) // a crown gear's teeth are a rack's
	}
	z := float64(gear.Teeth) / lean
	sin20 := math.Sin(20 * math.Pi / 180)
	return gear.Addendum - z*sin*sin/2, (14*gear.Addendum - z*sin*sin/(sin20*sin20)) / 17
}

func teethOn(gear tooth.Gear, cone float64) string {
	s := teeth(int64(gear.Teeth)) + " at " + fig(gear.PressureAngle) + " deg"
	if cone > 0 {
		s += " on a cone of " + fig(math.Round(cone*100)/100) + " deg"
	}
	return s
}

// mendUndercut offers the shift that cures it. Where the wheel and its mate mesh
// nothing else, the mate can give way by as much and the centres stay.
func (p *Pass) mendUndercut(f *Finding, w *spec.Wheel, shift float64) {
	value := fig(shift)
	own, ok := Assign(w.Shift.At, w.Teeth.At, "shift", value)
	if !ok {
		return
	}
	if mate := p.onlyMate(w); mate != nil && !mate.Shift.Set() && mate.Is("spur") {
		gear := GearOf(mate)
		least, _ := undercutLimits(gear, 0)
		gear.Shift = -(shift - w.Shift.Or(0))
		if gear.Shift >= least {
			if other, ok := Assign(mate.Shift.At, mate.Teeth.At, "shift", fig(gear.Shift)); ok {
				f.Mend("shift "+w.Title()+" to "+value+" and "+mate.Title()+" to "+fig(gear.Shift)+", so that the centres stay", own, other)
			}
		}
	}
	f.Mend("shift "+w.Title()+" to "+value, own)
}

// onlyMate is the wheel's mate where both mesh nothing else, else nil.
func (p *Pass) onlyMate(w *spec.Wheel) *spec.Wheel {
	meshes := used(p.Facts).meshes
	if meshes[w.Index] != 1 {
		return nil
	}
	mate := mates(p.Facts)[w.Index]
	if mate == nil || meshes[mate.Index] != 1 {
		return nil
	}
	return mate
}

type matesKey struct{}

// mates is the last mate of each wheel, by Wheel.Index.
func mates(f *Facts) []*spec.Wheel {
	return Shared(f, matesKey{}, func(f *Facts) []*spec.Wheel {
		list := make([]*spec.Wheel, len(f.Design.Wheels))
		for _, m := range f.Design.Meshes {
			if m.A != nil && m.B != nil {
				list[m.A.Index], list[m.B.Index] = m.B, m.A
			}
		}
		return list
	})
}
