package sky

import "math"

// shadowExpansion is Danjon's allowance for the Earth's air and flattening: the
// Moon's parallax enlarged by 1/85 less 1/594 (Espenak and Meeus,
// NASA/TP-2009-214172, section 1).
const shadowExpansion = 1.01

// opposition is the Moon against the shadow at one moment: its place across
// the axis in equatorial radii of the Earth, and the angles of the shadow's
// radii and of the Moon's.
type opposition struct {
	x, y                  float64
	distance              float64 // of the Moon
	penumbra, umbra, moon float64 // radians
}

func oppositionAt(sun, moon vector) opposition {
	r := sun.length()
	p := planeAcross(sun.scaled(1 / r))
	d := moon.length()
	parallax := math.Asin(1 / d)
	semi, sunParallax := math.Asin(sunRadius/r), math.Asin(1/r)
	return opposition{
		// seen from the Earth against the axis, east is the other way round
		x: -moon.dot(p.x), y: moon.dot(p.y), distance: d,
		penumbra: shadowExpansion*parallax + sunParallax + semi,
		umbra:    shadowExpansion*parallax + sunParallax - semi,
		moon:     math.Asin(moonRadiusPenumbra / d),
	}
}

// lunar computes the eclipse near a Julian day of Terrestrial Time, with the
// shadow enlarged by Danjon's rule as in the canon (Espenak and Meeus, Five
// Millennium Canon of Lunar Eclipses, NASA/TP-2009-214172, section 1).
func (e *Eclipse) lunar(tt float64) {
	const h = 2.0 // hours to both sides
	sun, moon := sunPathAt(tt), moonMotionAt(tt)
	before := oppositionAt(sun.after(-h), moon.after(-h))
	now := oppositionAt(sun.after(0), moon.after(0))
	after := oppositionAt(sun.after(h), moon.after(h))
	way := path{
		parabolaOf(before.x, now.x, after.x, h),
		parabolaOf(before.y, now.y, after.y, h),
	}
	t := way.nearest()
	e.TT = tt + t/24
	gamma := way.distance(t)
	e.Gamma = math.Copysign(gamma, way.y.at(t))

	distance := parabolaOf(before.distance, now.distance, after.distance, h).at(t)
	apart := math.Asin(gamma / distance)
	e.PenumbralMagnitude = (now.penumbra + now.moon - apart) / (2 * now.moon)
	e.Magnitude = (now.umbra + now.moon - apart) / (2 * now.moon)
	switch {
	case e.PenumbralMagnitude <= 0:
		return
	case e.Magnitude <= 0:
		e.Kind = Penumbral
	case e.Magnitude < 1:
		e.Kind = Partial
	default:
		e.Kind = Total
	}
	minutes := func(angle float64) float64 { return 60 * way.semi(distance*math.Sin(angle)) }
	e.SemiPenumbral = minutes(now.penumbra + now.moon)
	e.SemiPartial = minutes(now.umbra + now.moon)
	if e.Kind == Total {
		e.SemiTotal = minutes(now.umbra - now.moon)
	}
}
