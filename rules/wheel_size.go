package rules

import (
	"wheelwork/spec"
)

// WheelSize is what a wheel measures across, in mm: of a ring, Tip is the bore of its
// teeth. A cycloidal wheel's, a bevel's and a worm's follow from its mesh.
type WheelSize struct {
	Reference, Tip, Root float64
}

type wheelSizesKey struct{}

// SizeOf returns the diameters of a wheel; ok is false where the spec does not
// say enough.
func SizeOf(f *Facts, w *spec.Wheel) (WheelSize, bool) {
	sizes := Shared(f, wheelSizesKey{}, wheelSizes)
	if s, ok := sizes[w]; ok {
		return s, true
	}
	if !w.Is("spur") && !w.Is("ring") || isCycloidal(w) {
		return WheelSize{}, false
	}
	// It meshes nothing that says more.
	b, err := GearOf(w).Blank()
	return WheelSize{b.Reference, b.Tip, b.Root}, err == nil
}

func wheelSizes(f *Facts) map[*spec.Wheel]WheelSize {
	list := Gearings(f)
	sizes := make(map[*spec.Wheel]WheelSize, 2*len(list))
	for i := range list {
		g := &list[i]
		if !g.Known || g.Fault != nil {
			continue
		}
		m := g.Measure()
		for j, w := range [...]*spec.Wheel{g.Mesh.A, g.Mesh.B} {
			if _, have := sizes[w]; !have && m.Tip[j] == m.Tip[j] {
				sizes[w] = WheelSize{m.Diameter[j], m.Tip[j], m.Root[j]}
			}
		}
	}
	return sizes
}
