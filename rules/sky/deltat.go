package sky

// segment is one polynomial of delta-T: coefficients of u = (year - origin) /
// scale, valid up to the year end.
type segment struct {
	end, origin, scale float64
	c                  [8]float64
}

// deltaTSegments are the polynomials of Espenak and Meeus, Five Millennium
// Canon of Solar Eclipses, NASA/TP-2006-214141, section 2.7, without the
// canon's small correction for another tidal acceleration of the Moon (0.1 s
// in 2050). After 2005 they are a forecast: the real delta-T of the 2020s is
// some seconds smaller.
var deltaTSegments = [...]segment{
	{-500, 1820, 100, [8]float64{-20, 0, 32}},
	{500, 0, 100, [8]float64{10583.6, -1014.41, 33.78311, -5.952053, -0.1798452, 0.022174192, 0.0090316521}},
	{1600, 1000, 100, [8]float64{1574.2, -556.01, 71.23472, 0.319781, -0.8503463, -0.005050998, 0.0083572073}},
	{1700, 1600, 1, [8]float64{120, -0.9808, -0.01532, 1.0 / 7129}},
	{1800, 1700, 1, [8]float64{8.83, 0.1603, -0.0059285, 0.00013336, -1.0 / 1174000}},
	{1860, 1800, 1, [8]float64{13.72, -0.332447, 0.0068612, 0.0041116, -0.00037436, 0.0000121272, -0.0000001699, 0.000000000875}},
	{1900, 1860, 1, [8]float64{7.62, 0.5737, -0.251754, 0.01680668, -0.0004473624, 1.0 / 233174}},
	{1920, 1900, 1, [8]float64{-2.79, 1.494119, -0.0598939, 0.0061966, -0.000197}},
	{1941, 1920, 1, [8]float64{21.20, 0.84493, -0.076100, 0.0020936}},
	{1961, 1950, 1, [8]float64{29.07, 0.407, -1.0 / 233, 1.0 / 2547}},
	{1986, 1975, 1, [8]float64{45.45, 1.067, -1.0 / 260, -1.0 / 718}},
	{2005, 2000, 1, [8]float64{63.86, 0.3345, -0.060374, 0.0017275, 0.000651814, 0.00002373599}},
	{2050, 2000, 1, [8]float64{62.92, 0.32217, 0.005589}},
	{2150, 1820, 100, [8]float64{-205.724, 56.28, 32}},
	{LastYear + 2, 1820, 100, [8]float64{-20, 0, 32}},
}

// DeltaT returns TT - UT in seconds for a decimal year of the civil calendar
// from FirstYear to LastYear; others are refused.
func DeltaT(year float64) (float64, error) {
	if !(year >= FirstYear-1 && year < LastYear+2) {
		return 0, &SpanError{JD: J2000 + (year-2000)*365.25}
	}
	return deltaT(year), nil
}

func deltaT(year float64) float64 {
	i := 0
	for i < len(deltaTSegments)-1 && year >= deltaTSegments[i].end {
		i++
	}
	s := &deltaTSegments[i]
	u := (year - s.origin) / s.scale
	sum := 0.0
	for j := len(s.c) - 1; j >= 0; j-- {
		sum = sum*u + s.c[j]
	}
	return sum
}

// ToTT turns a Julian day of Universal Time into Terrestrial Time.
func ToTT(ut float64) (float64, error) {
	if err := checkSpan(ut); err != nil {
		return 0, err
	}
	return toTT(ut), nil
}

// ToUT turns a Julian day of Terrestrial Time into Universal Time.
func ToUT(tt float64) (float64, error) {
	if err := checkSpan(tt); err != nil {
		return 0, err
	}
	return toUT(tt), nil
}

func toTT(ut float64) float64 { return ut + deltaT(DecimalYear(ut))/86400 }

// toUT: delta-T changes by less than 30 s a year, so one step back is enough
// to a hundredth of a second.
func toUT(tt float64) float64 {
	ut := tt - deltaT(DecimalYear(tt))/86400
	return tt - deltaT(DecimalYear(ut))/86400
}
