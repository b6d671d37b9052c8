package sky

import "math"

// Place is a geocentric position against the mean equinox and ecliptic of
// date.
type Place struct {
	Longitude, Latitude float64 // degrees
	Distance            float64 // km
}

// astronomicalUnit in km (IAU 2012).
const astronomicalUnit = 149597870.7

// SunPlace returns the Sun's apparent geocentric place, aberration included
// and nutation not, at a Julian day of Terrestrial Time, to about 1 arcsec
// (Meeus, Astronomical Algorithms, chapter 25, higher accuracy, on the greater
// terms of VSOP87D). Days outside the span are refused.
func SunPlace(tt float64) (Place, error) {
	if err := checkSpan(tt); err != nil {
		return Place{}, err
	}
	l, b, r := sunRadians(tt)
	return Place{turn360(l / degree), b / degree, r * astronomicalUnit}, nil
}

// sunRadians returns the Sun's apparent longitude and latitude in radians, not
// reduced, and its distance in AU.
func sunRadians(tt float64) (lon, lat, dist float64) {
	tau := (tt - J2000) / (10 * DaysPerCentury)
	t := 10 * tau
	l := vsopSum(vsopLongitude[:], tau)
	b := vsopSum(vsopLatitude[:], tau)
	r := vsopSum(vsopDistance[:], tau)
	lon, lat = l+math.Pi, -b
	// from the dynamical equinox of VSOP87 to FK5, formula 25.9
	s, c := math.Sincos(lon - degree*t*(1.397+0.00031*t))
	lon -= 0.09033 * arcsec
	lat += 0.03916 * arcsec * (c - s)
	// aberration, formula 25.10
	lon -= 20.4898 * arcsec / r
	return lon, lat, r
}

func vsopSum(tables [][]vsopTerm, tau float64) float64 {
	sum := 0.0
	for i := len(tables) - 1; i >= 0; i-- {
		part := 0.0
		for _, w := range tables[i] {
			part += w.amplitude * math.Cos(w.phase+w.frequency*tau)
		}
		sum = sum*tau + part
	}
	return sum * 1e-8
}
