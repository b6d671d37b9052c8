package sky

import "math"

const (
	degree = math.Pi / 180
	arcsec = degree / 3600
)

// turn360 reduces an angle in degrees to [0, 360).
func turn360(a float64) float64 {
	// 360 times the floor is exact, and this is ten times as fast as math.Mod
	a -= 360 * math.Floor(a/360)
	if a < 0 {
		a += 360
	}
	if a >= 360 { // the quotient or a tiny negative angle was rounded up
		return 0
	}
	return a
}

// turn180 reduces an angle in degrees to [-180, 180).
func turn180(a float64) float64 { return turn360(a+180) - 180 }
