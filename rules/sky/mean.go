package sky

// Polynomial is an angle in degrees as a polynomial in Julian centuries of
// Terrestrial Time from J2000.0.
type Polynomial [5]float64

// Mean longitudes and arguments of Sun and Moon against the mean equinox of
// date: Meeus, Astronomical Algorithms, 2nd ed., chapters 25 and 47. They are
// to be used together and not mixed with the IERS set (ArgNode and the
// others): the Moon's longitude here holds -0.70 arcsec of light-time, so that
// MeanMoon - MeanLatitude is not quite MeanNode.
var (
	MeanSun         = Polynomial{280.46646, 36000.76983, 0.0003032}
	MeanMoon        = Polynomial{218.3164477, 481267.88123421, -0.0015786, 1.0 / 538841, -1.0 / 65194000}
	MeanElongation  = Polynomial{297.8501921, 445267.1114034, -0.0018819, 1.0 / 545868, -1.0 / 113065000}
	MeanSunAnomaly  = Polynomial{357.5291092, 35999.0502909, -0.0001536, 1.0 / 24490000}
	MeanMoonAnomaly = Polynomial{134.9633964, 477198.8675055, 0.0087414, 1.0 / 69699, -1.0 / 14712000}
	MeanLatitude    = Polynomial{93.2720950, 483202.0175233, -0.0036539, -1.0 / 3526000, 1.0 / 863310000}
	MeanNode        = Polynomial{125.0445479, -1934.1362891, 0.0020754, 1.0 / 467441, -1.0 / 60616000}
	MeanPerigee     = Polynomial{83.3532465, 4069.0137287, -0.0103200, -1.0 / 80053, 1.0 / 18999000}
)

// At returns the angle in degrees, not reduced to one turn, at t Julian
// centuries of Terrestrial Time from J2000.0.
func (p Polynomial) At(t float64) float64 {
	return p[0] + t*(p[1]+t*(p[2]+t*(p[3]+t*p[4])))
}

// Degrees returns the angle from 0 to 360 at t Julian centuries of Terrestrial
// Time from J2000.0.
func (p Polynomial) Degrees(t float64) float64 { return turn360(p.At(t)) }

// MeanPlaces are the mean longitudes and arguments that the pointers of a
// model driven by mean motions show, in degrees from 0 to 360.
type MeanPlaces struct {
	Sun, Moon, Node, Perigee float64 // against the mean equinox of date
	Elongation               float64 // Moon from Sun: the mean phase
	SunAnomaly, MoonAnomaly  float64 // from perigee
	Latitude                 float64 // Moon from node
}

// MeanAt returns the mean places at a Julian day of Terrestrial Time (Meeus,
// chapters 25 and 47). Days outside the span are refused.
func MeanAt(tt float64) (MeanPlaces, error) {
	if err := checkSpan(tt); err != nil {
		return MeanPlaces{}, err
	}
	t := Centuries(tt)
	return MeanPlaces{
		Sun: MeanSun.Degrees(t), Moon: MeanMoon.Degrees(t),
		Node: MeanNode.Degrees(t), Perigee: MeanPerigee.Degrees(t),
		Elongation: MeanElongation.Degrees(t),
		SunAnomaly: MeanSunAnomaly.Degrees(t), MoonAnomaly: MeanMoonAnomaly.Degrees(t),
		Latitude: MeanLatitude.Degrees(t),
	}, nil
}
