package rules

import (
	"math"
	"slices"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "coaxial-closure",
		Group:    Teeth,
		Severity: Error,
		Checks:   "all meshes between the same two axes, as in a reverted train or a planetary set, have one centre distance",
		Why:      "a lay arbor stands in one place: when one of its pairs is at depth, the other jams or does not reach",
		Formula:  "m1 (z1 + z2) = m2 (z3 + z4); zr = zs + 2 zp for standard planets; in general a1 = a2 with the shifts, each pair opened at most by what centre-distance lets pass",
		Source:   "SDP/SI D785 eq 13-5; the allowance is common practice",
		Thresholds: []Threshold{
			{Name: "closer", Dimension: quantity.Length, Default: "0.01 mm", Doc: "how much too near a pair may come"},
			{Name: "wider", Dimension: quantity.Plain, Default: "0.2", Doc: "how much too far apart it may stand, in its modules"},
		},
		Breaks: closureExample(12, 36, 10, 40),
		Keeps:  closureExample(10, 30, 8, 32),
		Run:    coaxialClosure,
	})
}

// closureExample is the motion work of a clock.
func closureExample(a, b, c, d int64) string {
	wheel := func(name, on string, teeth int64) string {
		return "wheel \"" + name + "\" {\n  on     = \"" + on + "\"\n  teeth  = " + fig(float64(teeth)) + "\n  module = 0.5\n}\n"
	}
	return `
design { title = "Motion work" }
arbor "minutes" { at = [0, 0] }
arbor "hours" { at = [0, 0] }
arbor "lay" {}
` + wheel("cannon", "minutes", a) + wheel("minute_wheel", "lay", b) + wheel("lay_pinion", "lay", c) + wheel("hour_wheel", "hours", d) + `mesh { wheels = ["cannon", "minute_wheel"] }
mesh { wheels = ["lay_pinion", "hour_wheel"] }
`
}

// between is the mesh of two lines, the lesser line first.
type betweenLines struct {
	p, q    train.Line
	gearing *Gearing
}

func (b betweenLines) compare(c betweenLines) int {
	switch {
	case b.p != c.p && b.p.Less(c.p), b.p == c.p && b.q != c.q && b.q.Less(c.q):
		return -1
	case b.p == c.p && b.q == c.q:
		return 0
	}
	return 1
}

func coaxialClosure(p *Pass) {
	closer, wider := p.Limit("closer"), p.Limit("wider")
	list := Gearings(p.Facts)
	pairs := make([]betweenLines, 0, len(list))
	for i := range list {
		g := &list[i]
		if !g.Known || g.Fault != nil || !g.parallel() {
			continue
		}
		if a, b, ok := p.Train.Lines(g.A.Arbor, g.B.Arbor); ok {
			if b.Less(a) {
				a, b = b, a
			}
			pairs = append(pairs, betweenLines{a, b, g})
		}
	}
	slices.SortStableFunc(pairs, betweenLines.compare)
	for i := 0; i < len(pairs); {
		first := pairs[i]
		low, high := first.gearing.reaches(closer, wider)
		for i++; i < len(pairs) && pairs[i].compare(first) == 0; i++ {
			l, h := pairs[i].gearing.reaches(closer, wider)
			if math.Max(l, low) > math.Min(h, high)+1e-9 {
				p.Report(p.notClosed(first.gearing, pairs[i].gearing))
			}
		}
	}
	gearingsAside(p, list)
}

// touching is the centre distance in mm at which the pair, as cut, runs without
// play.
func (g *Gearing) touching() float64 {
	if g.HasFit {
		return g.Fit.NominalCentre
	}
	return g.Wanted
}

// reaches is the least and the greatest centre distance in mm at which the
// pair still runs.
func (g *Gearing) reaches(closer, wider float64) (low, high float64) {
	centre, open := g.touching(), wider*g.module()
	if g.Pairing == RingPair {
		return centre - open, centre + closer
	}
	return centre - closer, centre + open
}

// notClosed is the finding of two meshes, at the later one in the text.
func (p *Pass) notClosed(g, h *Gearing) *Finding {
	m, n := h.Mesh, g.Mesh
	f := p.foundMesh(m, m.Wheels.Place(), "mesh %s asks for axes %s apart, mesh %s between the same axes for %s: no distance suits both", m.Label(), mm(h.touching()), n.Label(), mm(g.touching()))
	f.See(n.Wheels.Place(), "mesh %s", n.Label())
	wheels := [...]*spec.Wheel{m.A, m.B, n.A, n.B}
	for i, w := range wheels {
		if !slices.Contains(wheels[:i], w) { // a planet is in both
			f.See(w.Teeth.Place(), "teeth of %s", w.Title())
		}
	}
	near, far := g, h
	if near.touching() > far.touching() {
		near, far = far, near
	}
	if near.Pairing == OutsidePair {
		p.fill(f, near, far.touching())
	}
	return f
}
