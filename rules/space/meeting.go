package space

import "math"

// A Meeting is two solids that run into each other or pass too near.
type Meeting struct {
	A, B int // the solids
	// Plan is the number of the body in whose plan they meet.
	Plan int
	// Least and Most are how near and how far their middles come, Turning if
	// arms carry one round the other. Of a bar it is its nearest and farthest
	// point.
	Least, Most float64
	Turning     bool
	// Gap is what is left between them, below 0 where they overlap.
	Gap float64
	// Inside is the ring, A or B, in whose hole the other nearly has its place;
	// -1 where they would rather stand beside each other.
	Inside int
}

// meet compares solid a, in the plan of its locus i, with solid b in that of its
// locus j, the same; ok is false where they stay clear of each other.
func (r *Room) meet(a *Solid, i int, b *Solid, j int, turning func(plans []int) bool) (m Meeting, ok bool) {
	if min(a.To, b.To)-max(a.From, b.From) <= fine {
		return m, false
	}
	la, lb := &a.Loci[i], &b.Loci[j]
	m.Inside = -1
	switch {
	case a.isBar(i) && b.isBar(j):
		m.Least = barToBar(la, a.Length, lb, b.Length)
		m.Most = math.Inf(1)
	case a.isBar(i):
		near, far := a.away(i, lb.X, lb.Y)
		m.Least, m.Most = max(0, near-lb.Most, lb.Least-far), far+lb.Most
	default:
		near, far := b.away(j, la.X, la.Y)
		m.Least, m.Most = max(0, near-la.Most, la.Least-far), far+la.Most
	}
	m.judge(a, b, false)
	if m.Gap >= r.clearance {
		return m, false
	}
	if i > 0 || j > 0 {
		m.Turning = true
		if legs := r.legs(a, i, b, j); len(legs) > 1 && !turning(legs) {
			// How they stand to each other is not known, but keeps: they meet for
			// certain only if they would in any way.
			p, q := a.hub(i), b.hub(j)
			near, far := around(math.Hypot(p.X-q.X, p.Y-q.Y), q.Least, q.Most)
			m.Least, m.Most = max(0, near-p.Most, p.Least-far), far+p.Most
			m.judge(a, b, true)
			if m.Gap >= -fine {
				return m, false
			}
		}
	}
	m.Plan = la.Plan
	return m, true
}

// judge finds the gap: the least one, of middles that come from Least to Most
// near; or with best the greatest they may have.
func (m *Meeting) judge(a, b *Solid, best bool) {
	least, most := m.Least, m.Most
	if best {
		least, most = most, least
	}
	m.Gap = least - a.Radius - b.Radius
	if gap := a.Hole - most - b.Radius; a.Hole > 0 && gap > m.Gap {
		m.Gap, m.Inside = gap, 0
	}
	if gap := b.Hole - most - a.Radius; b.Hole > 0 && gap > m.Gap {
		m.Gap, m.Inside = gap, 1
	}
}

// legs lists the bodies that bear a stretch of the way from the one solid's
// middle to the other's, in the plan of their loci i and j. Where it is one
// alone, their distance keeps.
func (r *Room) legs(a *Solid, i int, b *Solid, j int) []int {
	legs := r.way[:0]
	la, lb := &a.Loci[i], &b.Loci[j]
	if math.Hypot(la.X-lb.X, la.Y-lb.Y) > fine || a.isBar(i) || b.isBar(j) {
		legs = append(legs, la.Plan)
	}
	for _, way := range [...][]Locus{a.Loci[:i], b.Loci[:j]} {
		for k := range way {
			if math.Hypot(way[k].X, way[k].Y) > fine {
				legs = append(legs, way[k].Plan)
			}
		}
	}
	if i > 0 && a.Length > 0 && math.Hypot(a.Loci[0].X, a.Loci[0].Y) <= fine {
		legs = append(legs, a.Loci[0].Plan)
	}
	if j > 0 && b.Length > 0 && math.Hypot(b.Loci[0].X, b.Loci[0].Y) <= fine {
		legs = append(legs, b.Loci[0].Plan)
	}
	r.way = legs
	return legs
}

// barToBar is how near two bars along x come to each other.
func barToBar(p *Locus, pLength float64, q *Locus, qLength float64) float64 {
	return math.Hypot(max(0, q.X-p.X-pLength, p.X-q.X-qLength), p.Y-q.Y)
}
