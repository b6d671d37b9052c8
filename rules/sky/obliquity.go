package sky

// MeanObliquity returns the tilt of the Earth's axis against the mean ecliptic
// of date, in degrees, at a Julian day of Terrestrial Time (IAU 1980; Meeus,
// Astronomical Algorithms, formula 22.2; 10 arcsec off after two thousand
// years).
func MeanObliquity(tt float64) float64 {
	t := Centuries(tt)
	return Obliquity - t*(46.8150+t*(0.00059-t*0.001813))/3600
}
