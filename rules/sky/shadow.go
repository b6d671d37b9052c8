package sky

import "math"

// vector is a place in equatorial radii of the Earth: x to the mean equinox of
// date, z to the north pole of the ecliptic.
type vector [3]float64

func (a vector) dot(b vector) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func (a vector) cross(b vector) vector {
	return vector{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func (a vector) scaled(k float64) vector { return vector{a[0] * k, a[1] * k, a[2] * k} }

func (a vector) minus(b vector) vector { return vector{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func (a vector) length() float64 { return math.Sqrt(a.dot(a)) }

func polar(lon, lat, r float64) vector {
	sl, cl := math.Sincos(lon)
	sb, cb := math.Sincos(lat)
	return vector{r * cb * cl, r * cb * sl, r * sb}
}

// auInRadii is the astronomical unit in equatorial radii of the Earth.
const auInRadii = astronomicalUnit / earthRadius

// Radii in equatorial radii of the Earth. The Sun's follows from its
// semidiameter of 959.63 arcsec at one astronomical unit; the Moon's are those
// of the canons (Espenak and Meeus, NASA/TP-2006-214141, section 2): the mean
// limb for the penumbra, the lower valleys for the umbra.
var sunRadius = auInRadii * math.Sin(959.63*arcsec)

const (
	moonRadiusPenumbra = 0.272508
	moonRadiusUmbra    = 0.272281
)

// plane is the fundamental plane: through the centre of the Earth across the
// axis of the shadow, x to the east, y to the ecliptic's north.
type plane struct {
	x, y, axis vector
}

// planeAcross returns the plane across the unit vector axis, which points
// towards the Sun.
func planeAcross(axis vector) plane {
	x := vector{-axis[1], axis[0], 0} // north pole of the ecliptic x axis
	x = x.scaled(1 / x.length())
	return plane{x, axis.cross(x), axis}
}

// sunPath is the Sun within some hours of a moment: over these its distance
// stands still to 1e-4 and its longitude grows by the law of areas, r*r*dl/dt
// being constant, to 0.15 arcsec (most of it the Moon's pull on the Earth).
type sunPath struct {
	lon, lat, r float64 // radians, AU
	rate        float64 // radians a day
}

// Gauss's constant with the areas' factor sqrt(1 - e*e), and the general
// precession, both in radians a day.
const (
	arealRate      = 0.01720209895 * 0.99986
	precessionRate = 5028.796195 * arcsec / DaysPerCentury
)

func sunPathAt(tt float64) sunPath {
	l, b, r := sunRadians(tt)
	return sunPath{l, b, r, arealRate/(r*r) + precessionRate}
}

// after returns the Sun's place so many hours later.
func (s *sunPath) after(hours float64) vector {
	return polar(s.lon+s.rate*hours/24, s.lat, s.r*auInRadii)
}

// moonMotionAt returns the Moon's motion around a Julian day of Terrestrial
// Time. The fine terms hardly change in some hours and are taken once.
func moonMotionAt(tt float64) moonMotion {
	a := moonArgumentsAt(tt)
	m := a.motion()
	lon, lat := a.fine()
	m.lon.c0 += lon
	m.lat.c0 += lat
	return m
}

// after returns the Moon's place so many hours later.
func (m *moonMotion) after(hours float64) vector {
	return polar(m.lon.at(hours), m.lat.at(hours), m.dist.at(hours)/earthRadius)
}

// path is the way of the axis past the Earth's centre, or of the Moon past the
// axis, in the fundamental plane; times in hours.
type path struct{ x, y parabola }

func (p *path) distance(t float64) float64 { return math.Hypot(p.x.at(t), p.y.at(t)) }

func (p *path) speed(t float64) float64 { return math.Hypot(p.x.rate(t), p.y.rate(t)) }

// nearest returns the time of least distance from the centre: where the place
// is square to the motion.
func (p *path) nearest() float64 {
	t := 0.0
	for range 4 {
		n := p.speed(t)
		t -= (p.x.at(t)*p.x.rate(t) + p.y.at(t)*p.y.rate(t)) / (n * n)
	}
	return t
}

// semi returns half the time during which the distance is below the radius, in
// hours, 0 when it never is.
func (p *path) semi(radius float64) float64 {
	t0 := p.nearest()
	g := p.distance(t0)
	if g >= radius {
		return 0
	}
	half := math.Sqrt(radius*radius-g*g) / p.speed(t0)
	return (p.contact(t0+half, radius) - p.contact(t0-half, radius)) / 2
}

// contact refines a time at which the distance equals the radius.
func (p *path) contact(t, radius float64) float64 {
	for range 3 {
		x, y := p.x.at(t), p.y.at(t)
		slope := 2 * (x*p.x.rate(t) + y*p.y.rate(t))
		if math.Abs(slope) < 1e-6 { // a graze
			return t
		}
		t -= (x*x + y*y - radius*radius) / slope
	}
	return t
}
