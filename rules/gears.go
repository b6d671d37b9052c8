package rules

import (
	"errors"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/text"
)

var (
	errForms   = errors.New("one has involute teeth and the other cycloidal ones")
	errShapes  = errors.New("their shapes do not run together")
	errCrossed = errors.New("spur wheels run on parallel axes")
)

// exactModule is the wheel's module in mm, from its diametral pitch where that
// is what it gives: 25.4/P.
func exactModule(w *spec.Wheel) (exact.Rat, bool) {
	switch {
	case w.Module.Set():
		return w.Module.Exact, true
	case w.Pitch.Set():
		return exact.Frac(127, 5).Quo(w.Pitch.Exact), true
	}
	return exact.Rat{}, false
}

// ModuleOf is the wheel's module in mm, also where it gives its diametral
// pitch; ok is false where it gives neither.
func ModuleOf(w *spec.Wheel) (mm float64, ok bool) {
	x, ok := exactModule(w)
	return x.Float(), ok
}

// SameModule reports whether both wheels give a module and it is the same, but
// for a pitch rounded to a module.
func SameModule(a, b *spec.Wheel) bool {
	x, okA := ModuleOf(a)
	y, okB := ModuleOf(b)
	return okA && okB && x-y <= 1e-6*y && y-x <= 1e-6*x
}

func isCycloidal(w *spec.Wheel) bool { return w.Form.Text == "cycloidal" }

// GearOf is the wheel as an involute gear, its tips not shortened; the module
// is 0 where the wheel gives none.
func GearOf(w *spec.Wheel) tooth.Gear {
	module, _ := ModuleOf(w)
	g := tooth.Standard(int(w.Teeth.N), module)
	g.PressureAngle = w.PressureAngle.Or(g.PressureAngle)
	g.Addendum = w.Addendum.Or(g.Addendum)
	g.Dedendum = w.Dedendum.Or(g.Dedendum)
	g.Shift = w.Shift.Or(0)
	g.Helix = w.Helix.Or(0)
	if w.HandOf.Text == "left" {
		g.Helix = -g.Helix
	}
	g.Ring = w.Is("ring")
	return g
}

// shorten takes from the tips of shifted wheels what would touch the mate's
// root (ISO 21771's tip shortening), the most that any of their meshes asks
// for. A wheel that states its addendum keeps it.
func shorten(list []Gearing) map[*spec.Wheel]float64 {
	var by map[*spec.Wheel]float64
	for i := range list {
		g := &list[i]
		if g.Pairing != OutsidePair || !g.Known || g.Pair.A.Shift == 0 && g.Pair.B.Shift == 0 {
			continue
		}
		short, err := g.Pair.Shortened()
		if err != nil {
			continue // told by fit
		}
		if by == nil {
			by = map[*spec.Wheel]float64{}
		}
		for _, w := range [...]*spec.Wheel{g.A, g.B} {
			if !w.Addendum.Set() {
				by[w] = max(by[w], short.A.Shortening)
			}
		}
	}
	if by == nil {
		return nil
	}
	for i := range list {
		list[i].Pair.A.Shortening = by[list[i].A]
		list[i].Pair.B.Shortening = by[list[i].B]
	}
	return by
}

// placeOf is where an arbor says its position, or the arbor itself.
func placeOf(a *spec.Arbor) text.Place {
	switch {
	case a.Position.Set():
		return a.Position.Place()
	case a.Radius.Set():
		return a.Radius.Place()
	}
	return a.Head
}

// teeth is "1 tooth", "2 teeth".
func teeth(n int64) string { return plural(int(n), "tooth", "teeth") }

// foundMesh is a finding about a mesh.
func (p *Pass) foundMesh(m *spec.Mesh, at text.Place, message string, args ...any) *Finding {
	f := p.Found(&m.Part, at, message, args...)
	f.Part = "mesh " + m.Label()
	return f
}

// exactRatio is the teeth of a for one of b.
func exactRatio(a, b *spec.Wheel) exact.Rat { return exact.Frac(a.Teeth.N, b.Teeth.N) }
