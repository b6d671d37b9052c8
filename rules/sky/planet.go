package sky

// planetLongitudes are the mean longitudes of Mercury to Neptune against the
// mean equinox of date: Meeus, Astronomical Algorithms, table 31.A.
var planetLongitudes = [...]struct {
	name string
	l    Polynomial
}{
	{"Mercury", Polynomial{252.250906, 149474.0722491, 0.00030350, 0.000000018}},
	{"Venus", Polynomial{181.979801, 58519.2130302, 0.00031014, 0.000000015}},
	{"Earth", Polynomial{100.466457, 36000.7698278, 0.00030322, 0.000000020}},
	{"Mars", Polynomial{355.433000, 19141.6964471, 0.00031052, 0.000000016}},
	{"Jupiter", Polynomial{34.351519, 3036.3027748, 0.00022330, 0.000000037}},
	{"Saturn", Polynomial{50.077444, 1223.5110686, 0.00051908, -0.000000030}},
	{"Uranus", Polynomial{314.055005, 429.8640561, 0.00030390, 0.000000026}},
	{"Neptune", Polynomial{304.348665, 219.8833092, 0.00030882, 0.000000018}},
}

// Where the Earth and Jupiter stand in planetLongitudes.
const (
	earthIndex   = 2
	jupiterIndex = 4
)

// galileanLongitudes are the mean longitudes of Jupiter's great moons in
// degrees, as constant and rate a day from JD 2443000.5 TT, seen from Jupiter
// and counted from the equinox of 1950: Meeus, chapter 44.
var galileanLongitudes = [...]struct {
	name       string
	l0, perDay float64
}{
	{"Io", 106.07719, 203.488955790},
	{"Europa", 175.73161, 101.374724735},
	{"Ganymede", 120.55883, 50.317609207},
	{"Callisto", 84.44459, 21.571071177},
}

// galileanEpoch is the origin of galileanLongitudes, a Julian day TT.
const galileanEpoch = 2443000.5

// PlanetLongitude returns the mean heliocentric longitude of a planet against
// the mean equinox of date, in degrees from 0 to 360, at a Julian day of
// Terrestrial Time. It knows Mercury to Neptune; ok is false for another name.
// Days outside the span are refused.
func PlanetLongitude(name string, tt float64) (deg float64, ok bool, err error) {
	if err := checkSpan(tt); err != nil {
		return 0, false, err
	}
	for i := range planetLongitudes {
		if planetLongitudes[i].name == name {
			return planetLongitudes[i].l.Degrees(Centuries(tt)), true, nil
		}
	}
	return 0, false, nil
}
