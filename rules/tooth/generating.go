package tooth

import "math"

// generating is the circle that traces the tips of a cycloidal wheel, half the
// pinion's pitch radius, by the wheel's teeth to one leaf and the leaf count.
type generating struct {
	ratio, leaves float64
}

func (c Cycloidal) generating() generating {
	return generating{float64(c.Teeth) / float64(c.Leaves), float64(c.Leaves)}
}

// reach is the distance of the circle's centre from the wheel's, in radii of
// the circle.
func (g generating) reach() float64 { return 1 + 2*g.ratio }

// addendum is the height in modules traced when the circle has turned by t
// radians.
func (g generating) addendum(t float64) float64 {
	k := g.reach()
	return g.leaves / 4 * (1 - k + math.Sqrt(1+k*k-2*k*math.Cos(t)))
}

// pointed is the turn in radians at which the traced point stands over the
// tooth's middle. The two sides of its equation differ by a falling function,
// positive at 0 and negative at pi, too flat near 0 to iterate on.
func (g generating) pointed() float64 {
	k := g.reach()
	return bisect(func(t float64) float64 {
		return math.Pi/g.leaves + 2*g.ratio*math.Atan2(math.Sin(t), k-math.Cos(t)) - t
	}, 0, math.Pi)
}
