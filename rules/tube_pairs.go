package rules

import (
	"math"
	"math/bits"
	"slices"

	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// running is the clearance in mm that a remedy gives a tube.
var running = exact.Frac(1, 10)

// nested holds arbors on one axis against each other.
func nested(p *Pass) {
	s := solidsOf(p.Facts)
	joined := couplings(p.Design)
	var wants lack
	for _, axis := range axesOf(p.Design, s) {
		if len(axis) == 1 {
			continue
		}
		var known []*spec.Arbor
		for _, a := range axis {
			if a.Diameter.Set() && a.From.Set() && a.To.Set() {
				known = append(known, a)
			} else if !s.bare(a) {
				wants.of("these share an axis with others and lack diameter, from or to", a.Title())
			}
		}
		for _, pair := range innermost(known) {
			nest(p, pair[0], pair[1], joined[[2]int{pair[0].Index, pair[1].Index}] || p.Train.SameBody(pair[0], pair[1]))
		}
	}
	wants.tell(p)
}

// axesOf lists the axes, each with its arbors in the order of the text.
func axesOf(d *spec.Design, s *solids) [][]*spec.Arbor {
	// Arbors of one axis have one hash, and are found side by side.
	place := bits.Len(uint(len(d.Arbors)))
	keys := make([]uint64, 0, len(d.Arbors))
	for i, a := range d.Arbors {
		if at, ok := s.axis(a); ok {
			hash := uint64(at[0].Plan)
			for _, x := range [...]float64{at[0].X, at[0].Y} {
				hash = (hash ^ uint64(int64(math.Round(x*1e4)))) * 0x9e3779b97f4a7c15
				hash ^= hash >> 32
			}
			keys = append(keys, hash<<place|uint64(i))
		}
	}
	slices.Sort(keys)
	all := make([][]*spec.Arbor, 0, len(keys))
	list := make([]*spec.Arbor, len(keys))
	for i, key := range keys {
		list[i] = d.Arbors[key&(1<<place-1)]
	}
	for len(list) > 0 {
		n := 1
		for n < len(list) && s.coaxial(list[0], list[n]) {
			n++
		}
		all = append(all, list[:n:n])
		list = list[n:]
	}
	slices.SortFunc(all, func(a, b []*spec.Arbor) int { return a[0].Index - b[0].Index })
	return all
}

// couplings is which arbors turn as one by a coupling.
func couplings(d *spec.Design) map[[2]int]bool {
	joined := make(map[[2]int]bool, 2*len(d.Couples))
	for _, c := range d.Couples {
		if c.A != nil && c.B != nil {
			joined[[2]int{c.A.Index, c.B.Index}] = true
			joined[[2]int{c.B.Index, c.A.Index}] = true
		}
	}
	return joined
}

// innermost lists for each arbor of an axis the widest other that passes through
// it: one of less diameter, or of the same and earlier in the text, at some of
// its heights. Of those that share a height, kept in the order of their
// diameters, each needs to be held against its neighbours alone.
func innermost(axis []*spec.Arbor) [][2]*spec.Arbor {
	wider := func(a, b *spec.Arbor) int {
		if c := a.Diameter.Exact.Cmp(b.Diameter.Exact); c != 0 {
			return c
		}
		return a.Index - b.Index
	}
	order := slices.Clone(axis)
	slices.SortStableFunc(order, func(a, b *spec.Arbor) int { return a.From.Exact.Cmp(b.From.Exact) })
	inner := make(map[*spec.Arbor]*spec.Arbor)
	hold := func(outer, in *spec.Arbor) {
		if have := inner[outer]; have == nil || wider(have, in) < 0 {
			inner[outer] = in
		}
	}
	var active []*spec.Arbor
	for _, a := range order {
		over := func(b *spec.Arbor) bool { return b.To.Exact.Cmp(a.From.Exact) <= 0 }
		i, _ := slices.BinarySearchFunc(active, a, wider)
		for i > 0 && over(active[i-1]) {
			active = slices.Delete(active, i-1, i)
			i--
		}
		for i < len(active) && over(active[i]) {
			active = slices.Delete(active, i, i+1)
		}
		if a.To.Exact.Cmp(a.From.Exact) <= 0 {
			continue
		}
		if i > 0 {
			hold(a, active[i-1])
		}
		if i < len(active) {
			hold(active[i], a)
		}
		active = slices.Insert(active, i, a)
	}
	var pairs [][2]*spec.Arbor
	for _, a := range axis {
		if in := inner[a]; in != nil {
			pairs = append(pairs, [2]*spec.Arbor{a, in})
		}
	}
	return pairs
}

// nest judges a tube about the widest arbor in it.
func nest(p *Pass, outer, inner *spec.Arbor, joined bool) {
	at := number(max(inner.From.Exact.Float(), outer.From.Exact.Float())) + " to " +
		mm(min(inner.To.Exact.Float(), outer.To.Exact.Float()))
	if !outer.Bore.Set() {
		f := p.Found(&outer.Part, outer.Diameter.Place(), "%s has no bore, and %s of %s stands in it from %s", outer.Title(), inner.Title(), measure(inner.Diameter), at)
		f.See(inner.Diameter.Place(), "the diameter of %s", inner.Title())
		if bore := inner.Diameter.Exact.Add(running); p.wallHolds(outer, bore) {
			if digits, ok := Decimal(bore); ok {
				if edit, ok := Insert(outer.Diameter.At, "bore", digits); ok {
					f.Mend("bore it "+measured(bore), edit)
				}
			}
		}
		p.Report(f)
		return
	}
	gap := outer.Bore.Exact.Sub(inner.Diameter.Exact)
	var f *Finding
	switch {
	case gap.Sign() < 0 || gap.IsZero() && !joined:
		f = p.Found(&outer.Part, outer.Bore.Place(), "%s is bored %s, and %s of %s stands in it from %s", outer.Title(), measure(outer.Bore), inner.Title(), measure(inner.Diameter), at)
	case gap.Cmp(p.Bound("tight")) < 0 && !joined:
		f = p.Found(&outer.Part, outer.Bore.Place(), "%s runs on %s with a clearance of %s, less than %s", outer.Title(), inner.Title(), mm(gap.Float()), mm(p.Limit("tight"))).Weigh(Warning)
	case gap.Cmp(p.Bound("slack")) > 0:
		p.Report(p.Found(&outer.Part, outer.Bore.Place(), "%s has %s of room about %s, more than %s: it needs bushes to run true", outer.Title(), mm(gap.Float()), inner.Title(), mm(p.Limit("slack"))).
			See(inner.Diameter.Place(), "the diameter of %s", inner.Title()).Weigh(Note))
		return
	default:
		return
	}
	f.See(inner.Diameter.Place(), "the diameter of %s", inner.Title())
	if bore := inner.Diameter.Exact.Add(running); p.wallHolds(outer, bore) {
		if edit, ok := Figure(outer.Bore.At, bore, "mm"); ok {
			f.Mend("bore it "+measured(bore), edit)
		}
	}
	p.Report(f)
}

// measured is a length for people.
func measured(x exact.Rat) string { return mm(x.Float()) }

// wallHolds reports whether an arbor keeps its wall with another bore.
func (p *Pass) wallHolds(a *spec.Arbor, bore exact.Rat) bool {
	return a.Diameter.Exact.Sub(bore).Quo(exact.Int(2)).Cmp(p.Bound("wall")) >= 0
}
