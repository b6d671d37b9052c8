package tooth

import "math"

// mostInvoluteAngle bounds the involute function short of its pole at 90 deg.
const mostInvoluteAngle = 89.0

// Involute returns the involute function, inv a = tan a - a, in radians, of an
// angle in degrees from 0 to 89. Source: ISO 21771.
func Involute(angle float64) (float64, error) {
	if err := within("angle in degrees", angle, 0, mostInvoluteAngle); err != nil {
		return 0, err
	}
	return inv(angle * degree), nil
}

// InvoluteAngle returns the angle in degrees whose involute function is value
// (radians, from 0 to inv 89 deg): the inverse of [Involute].
func InvoluteAngle(value float64) (float64, error) {
	if err := within("involute function", value, 0, inv(mostInvoluteAngle*degree)); err != nil {
		return 0, err
	}
	return invAngle(value) / degree, nil
}

// inv is the involute function of an angle in radians.
func inv(a float64) float64 { return math.Tan(a) - a }

// invAngle inverts inv for value >= 0. The function is convex, and both
// (3v)^(1/3) and atan(v + pi/2) lie beyond the root, so that Newton's steps
// walk down to it and cannot overshoot.
func invAngle(value float64) float64 {
	if value == 0 {
		return 0
	}
	a := math.Min(math.Cbrt(3*value), math.Atan(value+math.Pi/2))
	for range 60 {
		t := math.Tan(a)
		step := (t - a - value) / (t * t)
		a -= step
		if math.Abs(step) <= 1e-15*a {
			break
		}
	}
	return a
}
