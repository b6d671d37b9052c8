package train

import (
	"math"

	"wheelwork/spec"
)

// A Line is an axis on the body on which it stands still: two arbors of one
// Line are coaxial. An axis whose position is not known is a line of its own.
type Line struct {
	body, arbor  int32 // arbor is -1 where the position is known
	x, y         int64 // in ten thousandths of a mm
	tilt, toward int64
}

// Middle reports whether the line is the middle of an arm.
func (l Line) Middle() bool { return l.body != frame && l.arbor < 0 && l.x == 0 && l.y == 0 }

// Hash is a number that lines which are one have in common.
func (l Line) Hash() uint64 {
	const prime = 1_099_511_628_211
	h := uint64(14_695_981_039_346_656_037)
	for _, v := range [...]uint64{uint64(l.body), uint64(l.arbor), uint64(l.x), uint64(l.y), uint64(l.tilt), uint64(l.toward)} {
		h = (h ^ v) * prime
	}
	return h
}

// Lines returns the axes of two arbors on the body on which both stand still;
// ok is false if they wander apart. Where positions are missing, an axis that
// is carried by another body than that lies in its middle: nowhere else would it
// stand still.
func (t *Train) Lines(a, b *spec.Arbor) (la, lb Line, ok bool) {
	body, ok := t.between(a, b)
	if !ok {
		return Line{}, Line{}, false
	}
	return t.line(a, body), t.line(b, body), true
}

func (t *Train) line(a *spec.Arbor, body int) Line {
	const fine = 1e4
	if ax, ok := t.within(a, body); ok {
		l := Line{body: int32(body), arbor: -1, x: int64(math.Round(ax.x * fine)), y: int64(math.Round(ax.y * fine))}
		if ax.tilt > near {
			l.tilt, l.toward = int64(math.Round(ax.tilt*fine)), int64(math.Round(ax.toward*fine))
		}
		return l
	}
	if t.carrier(a) != body {
		return Line{body: int32(body), arbor: -1}
	}
	return Line{body: int32(body), arbor: int32(a.Index)}
}

// Offset is how far the axis of b lies from that of a, in mm, in the plan of the
// body on which both stand still; ok is false where positions do not say it.
func (t *Train) Offset(a, b *spec.Arbor) (dx, dy float64, ok bool) {
	body, ok := t.between(a, b)
	if !ok {
		return 0, 0, false
	}
	p, okA := t.within(a, body)
	q, okB := t.within(b, body)
	return q.x - p.x, q.y - p.y, okA && okB
}
