// Package space finds which of the solids of a model run into each other, some
// of them carried round by arms, on arms, on the frame.
//
// Axes are upright. A solid is a disc or post, a ring, or a bar, and fills what
// lies between two heights. It stands still in its own plan; in the plan of each
// body further out, which carries its own round a pivot, it sweeps a ring about
// that pivot. Two solids are compared in the first plan that has both, by how
// near and how far their middles come.
//
// Lengths are mm. Figures are taken as they are: they must be finite.
package space

import "math"

// fine is the length in mm below which nothing overlaps, for rounding.
const fine = 1e-6

// A Locus is where the middle of a solid lies in one plan: from Least to Most
// away from (X, Y), which in its own plan is the middle itself.
type Locus struct {
	Plan        int // the number of the body in whose plan it lies, from 0
	X, Y        float64
	Least, Most float64
}

// A Solid is a disc, a post, a ring or a bar.
type Solid struct {
	// Loci are its own plan and the plans further out, in each of which the
	// body before it turns about (X, Y).
	Loci []Locus
	// Length is that of a bar, which in its own plan stretches along x from its
	// middle; the loci further out are those of its whole length.
	Length   float64
	Radius   float64 // about the middle, or to either side of the bar
	Hole     float64 // radius of the hole of a ring, 0 without
	From, To float64 // heights
}

// outer is the radius about (X, Y) within which the solid stays in the plan of
// its locus k, save a bar in its own plan.
func (s *Solid) outer(k int) float64 { return s.Loci[k].Most + s.Radius }

// isBar reports whether in the plan of its locus k it is a bar lying still.
func (s *Solid) isBar(k int) bool { return k == 0 && s.Length > 0 }

// away is how near and how far the solid's middle, in the plan of its locus k,
// comes to a point: of a bar the nearest and the farthest point of it.
func (s *Solid) away(k int, x, y float64) (least, most float64) {
	l := &s.Loci[k]
	if s.isBar(k) {
		along, aside := x-l.X, y-l.Y
		least = math.Hypot(along-min(max(along, 0), s.Length), aside)
		return least, math.Hypot(max(along, s.Length-along), aside)
	}
	return around(math.Hypot(x-l.X, y-l.Y), l.Least, l.Most)
}

// around is how near and how far what lies from least to most away from a point
// comes to another point that is so far from it.
func around(distance, least, most float64) (nearest, farthest float64) {
	return max(0, distance-most, least-distance), distance + most
}

// hub is as the locus k, for the middle of a bar and not its whole length.
func (s *Solid) hub(k int) Locus {
	if k == 0 || s.Length == 0 {
		return s.Loci[k]
	}
	l := s.Loci[1]
	l.Least = math.Hypot(s.Loci[0].X, s.Loci[0].Y)
	l.Most = l.Least
	for i := 2; i <= k; i++ {
		least, most := around(math.Hypot(l.X, l.Y), l.Least, l.Most)
		l = s.Loci[i]
		l.Least, l.Most = least, most
	}
	return l
}
