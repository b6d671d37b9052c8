package space

import (
	"math/bits"
	"slices"
)

// A box bounds what stands in a plan; in the tree of what a body carries round,
// x is the distance from its middle and y is nothing.
type box struct{ x0, x1, y0, y1, z0, z1 float64 }

func (b *box) join(c *box) {
	b.x0, b.x1 = min(b.x0, c.x0), max(b.x1, c.x1)
	b.y0, b.y1 = min(b.y0, c.y0), max(b.y1, c.y1)
	b.z0, b.z1 = min(b.z0, c.z0), max(b.z1, c.z1)
}

func (b *box) meets(c *box) bool {
	return b.x0 < c.x1 && c.x0 < b.x1 && b.z0 < c.z1 && c.z0 < b.z1 && b.y0 <= c.y1 && c.y0 <= b.y1
}

// A ref is a solid and one of its loci; or where the locus is -1, a plan: all
// that its body carries round.
type ref struct{ solid, locus int32 }

// width is how many boxes one above them bounds.
const width = 8

// A tree is boxes within boxes. It is built at once, when it is first asked:
// boxes are laid out along a curve that keeps neighbours together (Morton's), and
// each eight in turn are bounded by one.
type tree struct {
	refs   []ref
	boxes  []box // of the refs, then of eight each, and so on up to one
	levels []int // where in boxes each level begins
}

// build builds the tree over its boxes, unless it has been.
func (t *tree) build() {
	n := len(t.refs)
	if n == 0 || len(t.levels) > 0 {
		return
	}
	if n > width {
		t.sort()
	}
	t.levels = append(t.levels, 0)
	for from, to := 0, n; to-from > 1; from, to = to, len(t.boxes) {
		for i := from; i < to; i += width {
			all := t.boxes[i]
			for j := i + 1; j < min(i+width, to); j++ {
				all.join(&t.boxes[j])
			}
			t.boxes = append(t.boxes, all)
		}
		t.levels = append(t.levels, to)
	}
}

// sort lays the boxes out along the curve, by their middles. Each way is counted
// in the mean extent of a box that way, so that eight neighbours make a box of
// the shape of one.
func (t *tree) sort() {
	n := len(t.boxes)
	all := t.boxes[0]
	var mean box // in x1, y1 and z1
	for i := range t.boxes {
		b := &t.boxes[i]
		all.join(b)
		mean.x1, mean.y1, mean.z1 = mean.x1+b.x1-b.x0, mean.y1+b.y1-b.y0, mean.z1+b.z1-b.z0
	}
	place := bits.Len(uint(n))
	each := (64 - place) / 3
	scale := func(from, to, mean float64) float64 {
		if mean > 0 && to > from {
			return float64(n) / mean
		}
		return 0
	}
	sx, sy, sz := scale(all.x0, all.x1, mean.x1), scale(all.y0, all.y1, mean.y1), scale(all.z0, all.z1, mean.z1)
	if most := max((all.x1-all.x0)*sx, (all.y1-all.y0)*sy, (all.z1-all.z0)*sz); most > 0 {
		fit := float64(uint64(1)<<each-1) / most
		sx, sy, sz = sx*fit, sy*fit, sz*fit
	}
	keys := make([]uint64, n)
	for i := range t.boxes {
		b := &t.boxes[i]
		x := spread(uint64(((b.x0+b.x1)/2 - all.x0) * sx))
		y := spread(uint64(((b.y0+b.y1)/2 - all.y0) * sy))
		z := spread(uint64(((b.z0+b.z1)/2 - all.z0) * sz))
		keys[i] = (x|y<<1|z<<2)<<place | uint64(i)
	}
	slices.Sort(keys)
	boxes, refs := make([]box, n, n+n/(width-2)+8), make([]ref, n)
	for i, key := range keys {
		from := key & (1<<place - 1)
		boxes[i], refs[i] = t.boxes[from], t.refs[from]
	}
	t.boxes, t.refs = boxes, refs
}

// spread puts two empty bits between each two bits of a number below 1<<21.
func spread(x uint64) uint64 {
	x &= 1<<21 - 1
	x = (x | x<<32) & 0x1f00000000ffff
	x = (x | x<<16) & 0x1f0000ff0000ff
	x = (x | x<<8) & 0x100f00f00f00f00f
	x = (x | x<<4) & 0x10c30c30c30c30c3
	x = (x | x<<2) & 0x1249249249249249
	return x
}

// visit calls each for every ref whose box meets a box, until it returns false.
func (t *tree) visit(b *box, each func(ref) bool) {
	if t.build(); len(t.refs) > 0 {
		t.descend(len(t.levels)-1, 0, b, each)
	}
}

func (t *tree) descend(level, i int, b *box, each func(ref) bool) bool {
	if !b.meets(&t.boxes[t.levels[level]+i]) {
		return true
	}
	if level == 0 {
		return each(t.refs[i])
	}
	for c := i * width; c < min(i*width+width, t.count(level-1)); c++ {
		if !t.descend(level-1, c, b, each) {
			return false
		}
	}
	return true
}

func (t *tree) count(level int) int {
	if level+1 < len(t.levels) {
		return t.levels[level+1] - t.levels[level]
	}
	return len(t.boxes) - t.levels[level]
}

// pairs calls each for every two refs whose boxes meet. Eight are held against
// the tree together.
func (t *tree) pairs(each func(a, b ref)) {
	t.build()
	n := len(t.refs)
	for from := 0; from < n; from += width {
		to := min(from+width, n)
		for i := from; i < to; i++ {
			for j := from; j < i; j++ {
				if t.boxes[i].meets(&t.boxes[j]) {
					each(t.refs[i], t.refs[j])
				}
			}
		}
		if len(t.levels) > 2 {
			t.beside(len(t.levels)-1, 0, from/width, each)
		}
	}
}

// beside holds an eight against what lies behind it below box i of a level.
func (t *tree) beside(level, i, eight int, each func(a, b ref)) {
	all := &t.boxes[t.levels[1]+eight]
	if !all.meets(&t.boxes[t.levels[level]+i]) {
		return
	}
	if level > 1 {
		for c := i * width; c < min(i*width+width, t.count(level-1)); c++ {
			if t.last(level-1, c) > eight {
				t.beside(level-1, c, eight, each)
			}
		}
		return
	}
	mine := t.boxes[eight*width : eight*width+width]
	for j := i * width; j < min(i*width+width, len(t.refs)); j++ {
		b := &t.boxes[j]
		if !all.meets(b) {
			continue
		}
		for k := range mine {
			if mine[k].meets(b) {
				each(t.refs[eight*width+k], t.refs[j])
			}
		}
	}
}

// last is the last eight below box i of a level.
func (t *tree) last(level, i int) int {
	for ; level > 1; level-- {
		i = i*width + width - 1
	}
	return i
}
