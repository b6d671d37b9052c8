package sky

// EarthRotation returns the Earth rotation angle in degrees from 0 to 360 at a
// Julian day of Universal Time (IERS Conventions 2003, section 5.4.4).
func EarthRotation(ut float64) float64 {
	d := ut - J2000
	return turn360(360 * (0.7790572732640 + 0.00273781191135448*d + frac(ut)))
}

// SiderealTime returns the mean sidereal time of Greenwich in degrees from 0
// to 360 at a Julian day of Universal Time (Meeus, Astronomical Algorithms,
// formula 12.4).
func SiderealTime(ut float64) float64 {
	d := ut - J2000
	t := d / DaysPerCentury
	// whole turns are left out so as not to lose digits
	return turn360(280.46061837 + 360*frac(d) + 0.98564736629*d + t*t*(0.000387933-t/38710000))
}

func frac(x float64) float64 { return x - float64(int64(x)) }
