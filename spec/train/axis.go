package train

import (
	"math"

	"wheelwork/spec"
)

// near is how far apart two axes may lie, in mm, and still be one.
const near = 1e-6

// An axis is where an arbor's axis stands: in the plan of a body, found by
// following arms as long as the axis lies in their middle.
type axis struct {
	carrier      int // the body in whose plan it stands
	x, y         float64
	tilt, toward float64
	known        bool // whether the position is
}

// same reports whether two known axes are one line.
func (a axis) same(b axis) bool {
	return a.known && b.known && a.carrier == b.carrier && math.Hypot(a.x-b.x, a.y-b.y) <= near &&
		math.Abs(a.tilt-b.tilt) <= near && (a.tilt <= near || math.Abs(math.Remainder(a.toward-b.toward, 360)) <= near)
}

// Position is where the arbor's axis stands in its carrier's plan, in mm; ok
// is false if the spec does not say.
func Position(a *spec.Arbor) (x, y float64, ok bool) {
	switch {
	case a.Position.Set():
		return a.Position.X.Exact.Float(), a.Position.Y.Exact.Float(), true
	case a.Radius.Set() && (a.Bear.Set() || a.Radius.Exact.IsZero()):
		sin, cos := math.Sincos(a.Bear.Or(0) * math.Pi / 180)
		return a.Radius.Exact.Float() * cos, a.Radius.Exact.Float() * sin, true
	}
	return 0, 0, false
}

// axes finds every arbor's axis, carriers first.
func (t *Train) findAxes() {
	d := t.Design
	t.axes = make([]axis, len(d.Arbors))
	done := make([]bool, len(d.Arbors))
	var stack []*spec.Arbor
	for _, a := range d.Arbors {
		for b := a; b != nil && !done[b.Index]; {
			stack = append(stack, b)
			if b.Carrier == nil {
				break
			}
			b = b.Carrier.Arbor
		}
		for len(stack) > 0 {
			b := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			t.axes[b.Index], done[b.Index] = t.axisOf(b), true
		}
	}
}

func (t *Train) axisOf(a *spec.Arbor) axis {
	x, y, ok := Position(a)
	own := axis{carrier: t.carrier(a), x: x, y: y, known: ok, tilt: a.Tilt.Or(0), toward: a.Toward.Or(0)}
	if a.Carrier == nil || a.Carrier.Arbor == nil || !ok {
		return own
	}
	pivot := a.Carrier.Arbor
	middle := t.axes[pivot.Index]
	if math.Hypot(x, y) <= near && own.tilt == 0 {
		return middle
	}
	if pivot.Stud {
		// An arm on a stud stands still on what carries the stud: one plan. A
		// stud in the middle of that has been followed further out.
		if middle.carrier != own.carrier {
			middle.x, middle.y = 0, 0
		}
		own.x, own.y, own.known = x+middle.x, y+middle.y, middle.known
		if body := t.arborOf[own.carrier]; body != nil && own.known && own.tilt == 0 && math.Hypot(own.x, own.y) <= near {
			return t.axes[body.Index]
		}
	}
	return own
}

// answer is yes, no or not known.
type answer uint8

const (
	unsure answer = iota
	yes
	no
)

// still says whether the arbor's axis stands still on the body.
func (t *Train) still(a *spec.Arbor, body int) answer {
	if t.carrier(a) == body {
		return yes
	}
	ax := t.axes[a.Index]
	if ax.known && ax.carrier == body {
		return yes
	}
	pivot := t.arborOf[body]
	if pivot == nil { // the frame, and the axis is carried by something that turns
		if !ax.known {
			return unsure
		}
		return no
	}
	middle := t.axes[pivot.Index]
	switch {
	case !ax.known || !middle.known:
		return unsure
	case ax.same(middle):
		return yes
	}
	return no
}

// between finds the body on which both arbors' axes stand still. Where
// positions are known it is proved from them; where they are not, it is the
// deeper of the two carriers, if one carries the other. ok is false if the axes
// wander apart.
func (t *Train) between(a, b *spec.Arbor) (body int, ok bool) {
	ca, cb := t.carrier(a), t.carrier(b)
	if ca == cb {
		return ca, true
	}
	open := false
	for _, c := range [...]int{ca, cb, t.axes[a.Index].carrier, t.axes[b.Index].carrier} {
		x, y := t.still(a, c), t.still(b, c)
		switch {
		case x == yes && y == yes:
			return c, true
		case x != no && y != no:
			open = true
		}
	}
	if !open {
		return frame, false
	}
	switch {
	case t.carries(ca, cb):
		return cb, true
	case t.carries(cb, ca):
		return ca, true
	}
	return frame, false
}

// carries reports whether outer carries inner, directly or over others.
func (t *Train) carries(outer, inner int) bool {
	for inner != frame {
		inner = t.carrier(t.arborOf[inner])
		if inner == outer {
			return true
		}
	}
	return outer == inner
}
