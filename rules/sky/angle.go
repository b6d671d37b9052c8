package sky

import "math"

const degree = math.Pi / 180

// turn360 reduces an angle in degrees to [0, 360).
func turn360(a float64) float64 {
	a = math.Mod(a, 360)
	if a < 0 {
		a += 360
		if a >= 360 { // a tiny negative angle rounds up to a full turn
			a = 0
		}
	}
	return a
}

// turn180 reduces an angle in degrees to [-180, 180).
func turn180(a float64) float64 { return turn360(a+180) - 180 }
