package rules

import (
	"cmp"
	"math"
	"slices"

	"wheelwork/spec"
)

// A planetSet is arbors that stand round a common axis, each between the same
// two wheels on it: the planets of an arm between sun and ring or two suns, or
// several lay arbors that share a load.
type planetSet struct {
	first, second *spec.Wheel // the wheels in the middle; second is nil where there is but one
	planets       []planet
	evenly        bool // positions are missing, so that they are taken to stand evenly
}

type planet struct {
	arbor           *spec.Arbor
	first, second   *spec.Wheel // its wheel in mesh with either; the same where it has but one
	toFirst, toNext *Gearing
	x, y            float64 // offset of its axis from the common one, if placed
	placed          bool
	bearing         float64 // degrees, in the plan
}

type planetsKey struct{}

// planetSets finds the sets of two planets and more that are alike, each set in
// the order of the text or, where they are placed, of their bearings.
func planetSets(f *Facts) []planetSet {
	return Shared(f, planetsKey{}, findPlanets)
}

// mostMeshes is how many meshes an arbor may have and still be looked at as a
// planet.
const mostMeshes = 4

// site is a mesh seen from one of its arbors.
type site struct {
	own, other *spec.Wheel
	g          *Gearing
}

type sitesByArbor [][]site

// see notes a mesh at the arbor of one of its wheels, if the other meshes more.
func (s sitesByArbor) see(own, other *spec.Wheel, g *Gearing, meshes []int32) {
	if meshes[other.Index] > 1 {
		i := own.Arbor.Index
		s[i] = append(s[i], site{own, other, g})
	}
}

func findPlanets(f *Facts) []planetSet {
	list := Gearings(f)
	meshes := used(f).meshes
	// Only what hangs on a wheel of several meshes can be a set.
	busy := false
	for _, n := range meshes {
		busy = busy || n > 1
	}
	if !busy {
		return nil
	}
	sites := make(sitesByArbor, len(f.Design.Arbors))
	for i := range list {
		g := &list[i]
		if g.Pairing == OutsidePair || g.Pairing == RingPair || g.Pairing == ClockPair {
			sites.see(g.A, g.B, g, meshes)
			sites.see(g.B, g.A, g, meshes)
		}
	}
	at := map[[2]int]int{}
	var sets []planetSet
	for _, a := range f.Design.Arbors {
		s := sites[a.Index]
		if len(s) == 0 || len(s) > mostMeshes {
			continue
		}
		between := false
		for i := range s {
			for j := i + 1; j < len(s); j++ {
				if s[i].other == s[j].other || !sameMiddle(f, a, s[i], s[j]) {
					continue
				}
				between = true
				x, y := s[i], s[j]
				if x.other.Index > y.other.Index {
					x, y = y, x
				}
				join(at, &sets, x.other, y.other, planet{arbor: a, first: x.own, second: y.own, toFirst: x.g, toNext: y.g})
			}
		}
		if between || a.Carrier == nil {
			continue
		}
		for _, x := range s {
			if _, middle, ok := f.Train.Lines(a, x.other.Arbor); ok && middle.Middle() {
				join(at, &sets, x.other, nil, planet{arbor: a, first: x.own, second: x.own, toFirst: x.g, toNext: x.g})
			}
		}
	}
	kept := sets[:0]
	for _, s := range sets {
		if s.alike(); len(s.planets) > 1 {
			s.place(f)
			kept = append(kept, s)
		}
	}
	return kept
}

// sameMiddle reports whether both mates of an arbor stand on one axis.
func sameMiddle(f *Facts, a *spec.Arbor, x, y site) bool {
	own, p, ok := f.Train.Lines(a, x.other.Arbor)
	if !ok {
		return false
	}
	own2, q, ok := f.Train.Lines(a, y.other.Arbor)
	return ok && own == own2 && p == q
}

func join(at map[[2]int]int, sets *[]planetSet, first, second *spec.Wheel, p planet) {
	key := [2]int{first.Index, -1}
	if second != nil {
		key[1] = second.Index
	}
	i, ok := at[key]
	if !ok {
		i = len(*sets)
		at[key] = i
		*sets = append(*sets, planetSet{first: first, second: second})
	}
	(*sets)[i].planets = append((*sets)[i].planets, p)
}

// alike keeps the planets that have the teeth of the first.
func (s *planetSet) alike() {
	p := s.planets[0]
	s.planets = slices.DeleteFunc(s.planets, func(q planet) bool {
		return q.first.Teeth.N != p.first.Teeth.N || q.second.Teeth.N != p.second.Teeth.N
	})
}

// place finds where the planets stand.
func (s *planetSet) place(f *Facts) {
	for i := range s.planets {
		p := &s.planets[i]
		p.x, p.y, p.placed = f.Train.Offset(s.first.Arbor, p.arbor)
		if !p.placed {
			s.evenly = true
		}
		p.bearing = math.Mod(math.Atan2(p.y, p.x)*180/math.Pi+360, 360)
	}
	if !s.evenly {
		slices.SortStableFunc(s.planets, func(p, q planet) int { return cmp.Compare(p.bearing, q.bearing) })
	}
}
