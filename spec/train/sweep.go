package train

import (
	"errors"
	"math"

	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// Sweep is where something comes to stand in the plan of a body: from Least to
// Most mm away from (X, Y), which is given in mm from the body's middle.
type Sweep struct {
	On          spec.Body
	X, Y        float64
	Least, Most float64
}

// Why the sweeps of an axis are not known.
var (
	ErrUnplaced = errors.New("its position is not given")
	ErrLeaning  = errors.New("its axis leans")
	ErrDeep     = errors.New("too many arms carry one another")
)

// deepest is how many arms may carry one another for sweeps to be followed.
const deepest = 16

// Sweeps follows an upright axis outwards: first the plan in which it stands
// still, then the plan of each body further out, in which the arms between
// carry it round, each at any rate, up to the frame. The sweeps are appended to
// a list; with an error they are not.
func (t *Train) Sweeps(a *spec.Arbor, list []Sweep) ([]Sweep, error) {
	ax := t.axes[a.Index]
	switch {
	case !ax.known:
		return list, ErrUnplaced
	case ax.tilt > near:
		return list, ErrLeaning
	}
	on := spec.Body{Arbor: t.arborOf[ax.carrier]}
	away := math.Hypot(ax.x, ax.y)
	more, err := t.Outward(on, away, away, append(list, Sweep{On: on, X: ax.x, Y: ax.y}))
	if err != nil {
		return list, err
	}
	return more, nil
}

// Outward appends the sweeps, in the plans beyond that of a body, of what lies
// from least to most mm away from the body's middle.
func (t *Train) Outward(on spec.Body, least, most float64, list []Sweep) ([]Sweep, error) {
	depth := 0
	for body := t.body(on); body != frame; depth++ {
		pivot := t.axes[t.arborOf[body].Index]
		switch {
		case !pivot.known:
			return list, ErrUnplaced
		case pivot.tilt > near:
			return list, ErrLeaning
		case depth == deepest:
			return list, ErrDeep
		}
		list = append(list, Sweep{spec.Body{Arbor: t.arborOf[pivot.carrier]}, pivot.x, pivot.y, least, most})
		away := math.Hypot(pivot.x, pivot.y)
		least, most = max(0, away-most, least-away), away+most
		body = pivot.carrier
	}
	return list, nil
}

// Middle is where an arm's middle stands in the plan of the body that the arm
// is part of; ok is false where positions do not say it.
func (t *Train) Middle(a *spec.Arm) (on spec.Body, x, y float64, ok bool) {
	body := t.bodyOf[a.Arbor.Index]
	ax, ok := t.within(a.Arbor, body)
	return spec.Body{Arbor: t.arborOf[body]}, ax.x, ax.y, ok
}

// Turns reports whether two bodies ever turn against each other, whatever is
// driven.
func (t *Train) Turns(a, b spec.Body) bool {
	return len(t.sys.of(t.body(a)).plus(exact.Int(-1), t.sys.of(t.body(b)))) > 0
}
