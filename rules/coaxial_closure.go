package rules

import (
	"cmp"
	"math"
	"slices"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
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
		Breaks: func() string { return closureExample(12, 36, 10, 40) },
		Keeps:  func() string { return closureExample(10, 30, 8, 32) },
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

// between is a mesh under a number of the axes between which it runs.
type between struct {
	hash uint64
	mesh int32 // its place in Gearings
	done bool
}

func coaxialClosure(p *Pass) {
	closer, wider := p.Limit("closer"), p.Limit("wider")
	list := Gearings(p.Facts)
	pairs := make([]between, 0, len(list))
	for i := range list {
		g := &list[i]
		if !g.Known || g.Fault != nil || !g.parallel() {
			continue
		}
		if a, b, ok := p.Train.Lines(g.A.Arbor, g.B.Arbor); ok {
			pairs = append(pairs, between{hash: a.Hash() ^ b.Hash(), mesh: int32(i)})
		}
	}
	slices.SortFunc(pairs, func(a, b between) int {
		return cmp.Or(cmp.Compare(a.hash, b.hash), cmp.Compare(a.mesh, b.mesh))
	})
	for i := range pairs {
		if pairs[i].done {
			continue
		}
		first := &list[pairs[i].mesh]
		low, high := first.reaches(closer, wider)
		for j := i + 1; j < len(pairs) && pairs[j].hash == pairs[i].hash; j++ {
			second := &list[pairs[j].mesh]
			if pairs[j].done || !p.sameAxes(first, second) {
				continue
			}
			pairs[j].done = true // it is compared with the first alone
			l, h := second.reaches(closer, wider)
			if math.Max(l, low) > math.Min(h, high)+1e-9 {
				p.Report(p.notClosed(first, second))
			}
		}
	}
	gearingsAside(p, list)
}

// sameAxes reports whether two meshes run between the same two axes.
func (p *Pass) sameAxes(g, h *Gearing) bool {
	a, b, _ := p.Train.Lines(g.A.Arbor, g.B.Arbor)
	c, d, _ := p.Train.Lines(h.A.Arbor, h.B.Arbor)
	return a == c && b == d || a == d && b == c
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
