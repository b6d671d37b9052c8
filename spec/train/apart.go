package train

import (
	"math"

	"wheelwork/spec"
)

// Stands says where the arbor's axis stands in the plan of a body on which it
// stands still, in mm from the middle of the body; ok is false where positions
// do not say it.
func (t *Train) Stands(a *spec.Arbor, on spec.Body) (x, y float64, ok bool) {
	ax, ok := t.within(a, t.body(on))
	return ax.x, ax.y, ok
}

// Apart is the least and the greatest distance, in mm, between two upright axes
// as the bodies that carry them turn, each at any rate. Where the rates hang
// together the axes may not come quite so near or so far. ok is false where a
// position is missing or an axis leans.
func (t *Train) Apart(a, b *spec.Arbor) (least, most float64, ok bool) {
	var legs []leg
	for i, arbor := range [...]*spec.Arbor{a, b} {
		sign := float64(1 - 2*i)
		ax := t.axes[arbor.Index]
		if ax.tilt > near {
			return 0, 0, false
		}
		for {
			if !ax.known {
				return 0, 0, false
			}
			legs = lengthen(legs, leg{ax.carrier, sign * ax.x, sign * ax.y})
			if ax.carrier == frame {
				break
			}
			ax = t.axes[t.arborOf[ax.carrier].Index]
		}
	}
	longest := 0.0
	for _, l := range legs {
		length := math.Hypot(l.x, l.y)
		most += length
		longest = math.Max(longest, length)
	}
	return math.Max(0, 2*longest-most), most, true
}

// A leg is one stretch of the way from axis to axis, fixed to a body.
type leg struct {
	body int
	x, y float64
}

// lengthen adds a leg to the one that the same body already bears.
func lengthen(legs []leg, l leg) []leg {
	for i := range legs {
		if legs[i].body == l.body {
			legs[i].x += l.x
			legs[i].y += l.y
			return legs
		}
	}
	return append(legs, l)
}
