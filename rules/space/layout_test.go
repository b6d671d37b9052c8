package space_test

import (
	"math"
	"math/rand/v2"

	"wheelwork/rules/space"
)

// A layout is a random model: bodies that turn on one another and solids on
// them.
type layout struct {
	parent []int // of the body, -1 for the frame
	x, y   []float64
	solids []space.Solid
}

func random(rng *rand.Rand, bodies, solids int, span float64) *layout {
	l := &layout{parent: []int{-1}, x: []float64{0}, y: []float64{0}}
	for b := 1; b <= bodies; b++ {
		l.parent = append(l.parent, rng.IntN(b))
		x, y := spot(rng, span), spot(rng, span)
		if b > 1 && rng.IntN(3) == 0 {
			// On the axis of another body.
			l.parent[b], x, y = l.parent[b-1], l.x[b-1], l.y[b-1]
		}
		l.x, l.y = append(l.x, x), append(l.y, y)
	}
	for range solids {
		plan := rng.IntN(bodies + 1)
		s := space.Solid{Radius: 0.5 + rng.Float64()*span/8, From: rng.Float64() * 20}
		s.To = s.From + 0.5 + rng.Float64()*4
		x, y := spot(rng, span), spot(rng, span)
		switch rng.IntN(8) {
		case 0:
			s.Hole = 0.5 + rng.Float64()*span/2
			s.Radius = s.Hole + 1 + rng.Float64()*2
		case 1:
			s.Length, s.Radius = 1+rng.Float64()*span, 0.5
			if plan > 0 && rng.IntN(4) > 0 {
				x, y = 0, 0
			}
		}
		l.add(plan, x, y, s)
	}
	return l
}

func spot(rng *rand.Rand, span float64) float64 { return math.Round((rng.Float64()*2 - 1) * span) }

// add puts a solid on a body, with the rings it sweeps.
func (l *layout) add(plan int, x, y float64, s space.Solid) {
	s.Loci = append(s.Loci, space.Locus{Plan: plan, X: x, Y: y})
	least, most := math.Hypot(x, y), math.Hypot(x, y)
	if s.Length > 0 {
		least = math.Hypot(max(0, x, -x-s.Length), y)
		most = max(math.Hypot(x, y), math.Hypot(x+s.Length, y))
	}
	for b := plan; b > 0; b = l.parent[b] {
		s.Loci = append(s.Loci, space.Locus{Plan: l.parent[b], X: l.x[b], Y: l.y[b], Least: least, Most: most})
		away := math.Hypot(l.x[b], l.y[b])
		least, most = max(0, away-most, least-away), away+most
	}
	l.solids = append(l.solids, s)
}

// A placed solid is one of a layout with its bodies turned: a line along which
// its middle lies, of no length but for bars.
type placed struct{ x0, y0, x1, y1 float64 }

// turn places the solids with each body turned by so many radians against the
// one that carries it.
func (l *layout) turn(angles []float64) []placed {
	list := make([]placed, len(l.solids))
	for i := range l.solids {
		s := &l.solids[i]
		at := s.Loci[0]
		p := placed{at.X, at.Y, at.X + s.Length, at.Y}
		for b := at.Plan; b > 0; b = l.parent[b] {
			sin, cos := math.Sincos(angles[b])
			p.x0, p.y0 = l.x[b]+p.x0*cos-p.y0*sin, l.y[b]+p.x0*sin+p.y0*cos
			p.x1, p.y1 = l.x[b]+p.x1*cos-p.y1*sin, l.y[b]+p.x1*sin+p.y1*cos
		}
		list[i] = p
	}
	return list
}

// deep is by how much two placed solids overlap in plan; what is apart is below
// 0.
func (l *layout) deep(list []placed, i, j int) float64 {
	a, b := &l.solids[i], &l.solids[j]
	p, q := list[i], list[j]
	least := min(p.away(q.x0, q.y0), p.away(q.x1, q.y1), q.away(p.x0, p.y0), q.away(p.x1, p.y1))
	if p.splits(q) && q.splits(p) {
		least = 0
	}
	most := max(math.Hypot(p.x0-q.x0, p.y0-q.y0), math.Hypot(p.x0-q.x1, p.y0-q.y1),
		math.Hypot(p.x1-q.x0, p.y1-q.y0), math.Hypot(p.x1-q.x1, p.y1-q.y1))
	deep := a.Radius + b.Radius - least
	if a.Hole > 0 {
		deep = min(deep, most+b.Radius-a.Hole)
	}
	if b.Hole > 0 {
		deep = min(deep, most+a.Radius-b.Hole)
	}
	return deep
}

// away is how far the line is from a point.
func (p placed) away(x, y float64) float64 {
	dx, dy := p.x1-p.x0, p.y1-p.y0
	along := 0.0
	if n := dx*dx + dy*dy; n > 0 {
		along = min(1, max(0, ((x-p.x0)*dx+(y-p.y0)*dy)/n))
	}
	return math.Hypot(x-p.x0-along*dx, y-p.y0-along*dy)
}

// splits reports whether the ends of q lie on either side of the line.
func (p placed) splits(q placed) bool {
	side := func(x, y float64) float64 { return (p.x1-p.x0)*(y-p.y0) - (p.y1-p.y0)*(x-p.x0) }
	return side(q.x0, q.y0)*side(q.x1, q.y1) < 0
}
