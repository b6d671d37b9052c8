package rules

import (
	"math"

	"wheelwork/rules/space"
	"wheelwork/spec"
)

// mostOnAxis is how many parts on one axis are held against each other.
const mostOnAxis = 400

// A threaded part is one that is about an axis, or bars the way along it.
type threaded struct {
	part     *spec.Part
	from, to float64 // heights
	radius   float64 // how far it reaches from the axis
	hole     float64 // radius of its bore, 0 if it has none
	ring     float64 // radius within the teeth of a ring, through which things go
	over     *spec.Arbor
	tube     bool
}

// barred reports what cannot be slid to its place along its axis any more.
func (s steps) barred(p *Pass) {
	all := solidsOf(p.Facts)
	index := make(map[*spec.Part]int, len(all.pieces))
	on := make([][]int, len(p.Design.Arbors))
	for i := range all.pieces {
		piece := &all.pieces[i]
		index[piece.part] = i
		if !piece.isPost() {
			on[piece.arbor.Index] = append(on[piece.arbor.Index], i)
		}
	}
	for _, axis := range axesOf(p.Design, all) {
		var list []threaded
		for _, a := range axis {
			if i, ok := index[&a.Part]; ok {
				list = append(list, s.post(all, i)...)
			}
			for _, i := range on[a.Index] {
				list = append(list, fixed(&all.pieces[i], &all.list[i]))
			}
		}
		if len(list) > mostOnAxis {
			p.StandAside("more than %d parts stand on the axis of %s", mostOnAxis, axis[0].Title())
			continue
		}
		for i := range list {
			if !s.slide(p, &list[i], list) {
				s.passThrough(p, &list[i], list)
			}
		}
	}
}

// post is an arbor on its axis, and the arm in which it stands.
func (s steps) post(all *solids, i int) []threaded {
	a, solid := all.pieces[i].arbor, &all.list[i]
	list := []threaded{{part: &a.Part, from: solid.From, to: solid.To, radius: solid.Radius, hole: a.Bore.Or(0) / 2, over: a, tube: true}}
	if c := a.Carrier; c != nil && c.Z.Set() && c.Face.Set() {
		z := c.Z.Exact.Float()
		list = append(list, threaded{part: &c.Part, from: z, to: z + c.Face.Exact.Float(), radius: math.Inf(1)})
	}
	if a.Stud && a.Carrier == nil {
		// It stands on the frame.
		list = append(list, threaded{part: &a.Part, from: math.Inf(-1), to: solid.From, radius: math.Inf(1)})
	}
	return list
}

// fixed is what is fixed to an arbor.
func fixed(piece *piece, solid *space.Solid) threaded {
	t := threaded{part: piece.part, from: solid.From, to: solid.To, radius: piece.radius, ring: solid.Hole, over: piece.arbor}
	t.hole = piece.arbor.Diameter.Or(0) / 2
	if piece.wheel != nil && piece.wheel.Bore.Set() {
		t.hole = piece.wheel.Bore.Exact.Float() / 2
	}
	return t
}

// slide reports a part that is put over what stands there already, where the way
// is barred from above and from below, and whether it is.
func (s steps) slide(p *Pass, t *threaded, axis []threaded) bool {
	own, ok := s[t.part]
	if !ok || t.hole == 0 || !s.over(t, axis, own) {
		return false
	}
	var above, below *threaded
	for i := range axis {
		o := &axis[i]
		if o.part == t.part || o.radius <= t.hole+1e-6 || t.radius < o.ring || !s.before(o.part, own) {
			continue
		}
		if o.from >= t.to-1e-6 && (above == nil || o.from < above.from) {
			above = o
		}
		if o.to <= t.from+1e-6 && (below == nil || o.to > below.to) {
			below = o
		}
	}
	if above == nil || below == nil {
		return false
	}
	p.Report(p.Found(t.part, own.name.Place(), "%s comes in %s, when %s above and %s below it bar the way: its bore is %s", t.part.Title(), own.stage.Title(),
		above.part.Title(), below.part.Title(), mm(2*t.hole)).
		See(s[above.part].name.Place(), "%s comes earlier", above.part.Title()).
		See(s[below.part].name.Place(), "%s comes earlier", below.part.Title()))
	return true
}

// passThrough reports what comes fixed to an arbor that stands in a tube, where
// the tube is there before and too narrow for it to pass, and the way from the
// other side is barred to the arbor.
func (s steps) passThrough(p *Pass, t *threaded, axis []threaded) {
	own, ok := s[t.part]
	if !ok || t.tube || t.over == nil || s[&t.over.Part].stage != own.stage {
		return
	}
	arbor := arborOn(t.over, axis)
	if arbor == nil {
		return
	}
	for _, up := range [...]bool{true, false} {
		var tube, bar *threaded
		for i := range axis {
			o := &axis[i]
			beyond, short := o.from >= t.to-1e-6, o.to <= t.from+1e-6
			if !up {
				beyond, short = short, beyond
			}
			switch {
			case o.part == &t.over.Part || !s.before(o.part, own):
			case beyond && o.tube && o.hole > 0 && o.hole >= arbor.radius-1e-6 && o.hole < t.radius-1e-6 && o.from < arbor.to && o.to > arbor.from:
				tube = nearer(tube, o, up)
			case short && o.radius > arbor.hole+1e-6:
				bar = nearer(bar, o, !up)
			}
		}
		if tube == nil || bar == nil {
			continue
		}
		p.Report(p.Found(t.part, own.name.Place(), "%s comes in %s on %s, when %s about it is too narrow for it to pass, with a bore of %s, and %s bars the way from the other side", t.part.Title(),
			own.stage.Title(), t.over.Title(), tube.part.Title(), mm(2*tube.hole), bar.part.Title()).
			See(s[tube.part].name.Place(), "%s comes earlier", tube.part.Title()).
			See(s[bar.part].name.Place(), "%s comes earlier", bar.part.Title()))
		return
	}
}

// arborOn is an arbor among what is on its axis.
func arborOn(a *spec.Arbor, axis []threaded) *threaded {
	for i := range axis {
		if axis[i].tube && axis[i].over == a {
			return &axis[i]
		}
	}
	return nil
}

// nearer is which of two comes first on the way up, or down.
func nearer(a, b *threaded, up bool) *threaded {
	if a == nil || up && b.from < a.from || !up && b.to > a.to {
		return b
	}
	return a
}

// over reports whether what the part goes over stands by then: its arbor, or of
// a tube an arbor in it.
func (s steps) over(t *threaded, axis []threaded, own step) bool {
	if !t.tube {
		return s.before(&t.over.Part, own)
	}
	for i := range axis {
		o := &axis[i]
		if o.tube && o.part != t.part && o.radius < t.hole && o.from < t.to && o.to > t.from && s.before(o.part, own) {
			return true
		}
	}
	return false
}
