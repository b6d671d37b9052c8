package train

import (
	"math"

	"wheelwork/spec"
)

// Standing is how two axes stand to each other.
type Standing struct {
	// Distance is how far apart they stand, in mm, along their common
	// perpendicular, if Placed: not where a position is missing or both lean.
	Distance float64
	Placed   bool
	// Crossing is the angle in degrees, 0 to 180, between their upward
	// directions, if Still: not where they wander apart.
	Crossing float64
	Still    bool
}

// Standing says how the axes of two arbors stand on the body on which both
// stand still.
func (t *Train) Standing(a, b *spec.Arbor) Standing {
	body, ok := t.between(a, b)
	if !ok {
		return Standing{}
	}
	p, q := &t.axes[a.Index], &t.axes[b.Index]
	s := Standing{Crossing: crossing(p, q), Still: true}
	if x, ok := t.within(a, body); ok {
		if y, ok := t.within(b, body); ok {
			s.Distance, s.Placed = distance(x, y)
		}
	}
	return s
}

// Distance is [Standing]'s.
func (t *Train) Distance(a, b *spec.Arbor) (mm float64, ok bool) {
	s := t.Standing(a, b)
	return s.Distance, s.Placed
}

// Crossing is [Standing]'s.
func (t *Train) Crossing(a, b *spec.Arbor) (degrees float64, ok bool) {
	s := t.Standing(a, b)
	return s.Crossing, s.Still
}

// distance is that of two axes in one plan.
func distance(p, q axis) (mm float64, ok bool) {
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

// crossing is the angle in degrees between the upward directions of two axes.
func crossing(p, q *axis) float64 {
	if p.tilt == 0 && q.tilt == 0 {
		return 0
	}
	st, ct := math.Sincos(p.tilt * math.Pi / 180)
	su, cu := math.Sincos(q.tilt * math.Pi / 180)
	cos := ct*cu + st*su*math.Cos((p.toward-q.toward)*math.Pi/180)
	return math.Acos(math.Max(-1, math.Min(1, cos))) * 180 / math.Pi
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
