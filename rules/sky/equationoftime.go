package sky

import "math"

// EquationOfTime returns apparent less mean solar time in minutes at a Julian
// day of Terrestrial Time, what a sundial is ahead of a clock (Meeus,
// Astronomical Algorithms, formula 28.1). Days outside the span are refused.
func EquationOfTime(tt float64) (float64, error) {
	if err := checkSpan(tt); err != nil {
		return 0, err
	}
	t := Centuries(tt)
	lon, _, _ := sunRadians(tt)
	// nutation, Meeus, chapter 22, to half an arcsecond
	node, sun, moon := MeanNode.Degrees(t)*degree, MeanSun.Degrees(t)*degree, MeanMoon.Degrees(t)*degree
	psi := (-17.20*math.Sin(node) - 1.32*math.Sin(2*sun) - 0.23*math.Sin(2*moon) + 0.21*math.Sin(2*node)) * arcsec
	eps := MeanObliquity(tt)*degree + (9.20*math.Cos(node)+0.57*math.Cos(2*sun)+0.10*math.Cos(2*moon)-0.09*math.Cos(2*node))*arcsec
	lon += psi
	ra := math.Atan2(math.Cos(eps)*math.Sin(lon), math.Cos(lon)) / degree
	e := MeanSun.At(t) - 0.0057183 - ra + psi/degree*math.Cos(eps)
	return 4 * turn180(e), nil
}
