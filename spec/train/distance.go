package train

import (
	"math"

	"wheelwork/spec"
)

// Distance is how far apart the axes of two arbors stand, in mm, along their
// common perpendicular. ok is false where positions do not say it: one of them
// is missing, the axes wander apart, or both lean.
func (t *Train) Distance(a, b *spec.Arbor) (mm float64, ok bool) {
	body, ok := t.between(a, b)
	if !ok {
		return 0, false
	}
	p, ok := t.within(a, body)
	if !ok {
		return 0, false
	}
	q, ok := t.within(b, body)
	if !ok {
		return 0, false
	}
	dx, dy := q.x-p.x, q.y-p.y
	switch {
	case p.tilt <= near && q.tilt <= near:
		return math.Hypot(dx, dy), true
	case p.tilt <= near:
		return aside(dx, dy, q.toward), true
	case q.tilt <= near:
		return aside(dx, dy, p.toward), true
	}
	return 0, false
}

// aside is how far (dx, dy) lies from the line through the origin in a
// direction in degrees: an upright axis passes a leaning one at this distance,
// at whatever height.
func aside(dx, dy, toward float64) float64 {
	sin, cos := math.Sincos(toward * math.Pi / 180)
	return math.Abs(dx*sin - dy*cos)
}

// within is the arbor's axis in the plan of a body on which it stands still.
func (t *Train) within(a *spec.Arbor, body int) (axis, bool) {
	ax := t.axes[a.Index]
	if !ax.known {
		return axis{}, false
	}
	if ax.carrier == body {
		return ax, true
	}
	// The axis lies in the arm's middle, or the body carries the arbor itself
	// and the axis was followed outwards.
	if pivot := t.arborOf[body]; pivot != nil && ax.same(t.axes[pivot.Index]) {
		ax.carrier, ax.x, ax.y = body, 0, 0
		return ax, true
	}
	return axis{}, false
}

// Crossing is the angle in degrees, 0 to 180, between the upward directions of
// two arbors' axes; ok is false where they do not stand still on one body.
func (t *Train) Crossing(a, b *spec.Arbor) (degrees float64, ok bool) {
	if _, ok := t.between(a, b); !ok {
		return 0, false
	}
	p, q := t.axes[a.Index], t.axes[b.Index]
	if p.tilt == 0 && q.tilt == 0 {
		return 0, true
	}
	st, ct := math.Sincos(p.tilt * math.Pi / 180)
	su, cu := math.Sincos(q.tilt * math.Pi / 180)
	cos := ct*cu + st*su*math.Cos((p.toward-q.toward)*math.Pi/180)
	return math.Acos(math.Max(-1, math.Min(1, cos))) * 180 / math.Pi, true
}
