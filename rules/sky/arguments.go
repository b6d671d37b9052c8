package sky

// J2000 is the epoch of all polynomials, a Julian day in Terrestrial Time.
const J2000 = 2451545.0

// DaysPerCentury is the length of a Julian century in days.
const DaysPerCentury = 36525.0

const arcsecPerTurn = 1296000.0

// Argument is a polynomial in Julian centuries of Terrestrial Time from
// J2000.0, in arcseconds.
type Argument [5]float64

// The fundamental arguments of the Sun and Moon: Simon et al. 1994, Astron.
// Astrophys. 282, 663, as adopted in IERS Conventions 2003 and 2010, section
// 5.7. ArgPrecession is the general precession in longitude of IAU 2006 (from
// memory).
var (
	ArgMoonAnomaly = Argument{485868.249036, 1717915923.2178, 31.8792, 0.051635, -0.00024470}
	ArgSunAnomaly  = Argument{1287104.793048, 129596581.0481, -0.5532, 0.000136, -0.00001149}
	ArgLatitude    = Argument{335779.526232, 1739527262.8478, -12.7512, -0.001037, 0.00000417}
	ArgElongation  = Argument{1072260.703692, 1602961601.2090, -6.3706, 0.006593, -0.00003169}
	ArgNode        = Argument{450160.398036, -6962890.5431, 7.4722, 0.007702, -0.00005939}
	ArgPrecession  = Argument{0, 5028.796195, 1.1054348}
)

// planetRates are the mean motions of Mercury to Neptune against the stars, in
// radians per Julian century (IERS Conventions 2003, section 5.7, as coded in
// ERFA 2.0.0; the figure for the Earth gives the sidereal year).
var planetRates = [8]float64{
	2608.7903141574, 1021.3285546211, 628.3075849991, 334.0612426700,
	52.9690962641, 21.3299104960, 7.4781598567, 3.8133035638,
}

// Arcsec returns the argument in arcseconds, not reduced to one turn, at t
// Julian centuries of Terrestrial Time from J2000.0.
func (a Argument) Arcsec(t float64) float64 {
	return a[0] + t*(a[1]+t*(a[2]+t*(a[3]+t*a[4])))
}

// Degrees returns the argument in degrees from 0 to 360 at t Julian centuries
// of Terrestrial Time from J2000.0.
func (a Argument) Degrees(t float64) float64 {
	return turn360(a.Arcsec(t) / 3600)
}

// Minus returns the difference of two arguments.
func (a Argument) Minus(b Argument) Argument {
	for i := range a {
		a[i] -= b[i]
	}
	return a
}

// Plus returns the sum of two arguments.
func (a Argument) Plus(b Argument) Argument {
	for i := range a {
		a[i] += b[i]
	}
	return a
}

// PeriodDays returns the time of one turn at J2000.0, in days; negative where
// the argument runs backwards.
func (a Argument) PeriodDays() float64 {
	return arcsecPerTurn * DaysPerCentury / a[1]
}

// Centuries returns the Julian centuries from J2000.0 to the Julian day jd.
func Centuries(jd float64) float64 { return (jd - J2000) / DaysPerCentury }
