package sky

import "math"

// SunCentre returns the equation of the centre of the Sun, true minus mean
// longitude, in degrees, at a Julian day of Terrestrial Time (Meeus,
// Astronomical Algorithms, chapter 25). Days outside the span are refused.
func SunCentre(tt float64) (float64, error) {
	if err := checkSpan(tt); err != nil {
		return 0, err
	}
	t := Centuries(tt)
	m := MeanSunAnomaly.At(t) * degree
	return (1.914602-t*(0.004817+t*0.000014))*math.Sin(m) +
		(0.019993-0.000101*t)*math.Sin(2*m) + 0.000289*math.Sin(3*m), nil
}
