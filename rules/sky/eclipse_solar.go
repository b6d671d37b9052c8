package sky

import "math"

// flattening of the Earth, 1/298.257 (IAU 1976, as in the canons).
const flattening = 1 / 298.257

// besselian are the elements of a solar eclipse at one moment: the place of
// the Moon's axis in the fundamental plane, the radii of penumbra and umbra
// there and the slopes of their cones (Explanatory Supplement to the
// Astronomical Almanac, section 8.3; Meeus, Elements of Solar Eclipses). All
// in equatorial radii of the Earth; l2 is negative where the umbra reaches the
// plane before its tip.
type besselian struct {
	x, y, l1, l2 float64
	tan1, tan2   float64
	plane        plane
}

func besselianAt(sun, moon vector) besselian {
	way := sun.minus(moon)
	far := way.length()
	b := besselian{plane: planeAcross(way.scaled(1 / far))}
	z := moon.dot(b.plane.axis)
	b.x, b.y = moon.dot(b.plane.x), moon.dot(b.plane.y)
	sin1 := (sunRadius + moonRadiusPenumbra) / far
	sin2 := (sunRadius - moonRadiusUmbra) / far
	b.tan1 = sin1 / math.Sqrt(1-sin1*sin1)
	b.tan2 = sin2 / math.Sqrt(1-sin2*sin2)
	b.l1 = (z + moonRadiusPenumbra/sin1) * b.tan1
	b.l2 = (z - moonRadiusUmbra/sin2) * b.tan2
	return b
}

// solar computes the eclipse near a Julian day of Terrestrial Time.
func (e *Eclipse) solar(tt float64) {
	const h = 2.0 // hours to both sides
	sun, moon := sunPathAt(tt), moonMotionAt(tt)
	before := besselianAt(sun.after(-h), moon.after(-h))
	now := besselianAt(sun.after(0), moon.after(0))
	after := besselianAt(sun.after(h), moon.after(h))
	way := path{
		parabolaOf(before.x, now.x, after.x, h),
		parabolaOf(before.y, now.y, after.y, h),
	}
	l1 := parabolaOf(before.l1, now.l1, after.l1, h)
	l2 := parabolaOf(before.l2, now.l2, after.l2, h)

	t := way.nearest()
	e.TT = tt + t/24
	x, y := way.x.at(t), way.y.at(t)
	gamma := math.Hypot(x, y)
	e.Gamma = math.Copysign(gamma, y)

	pole := earthPole(e.TT)
	outline := now.plane.outline(pole, x, y)
	penumbra, umbra := l1.at(t), l2.at(t)
	miss := gamma - outline
	if miss >= penumbra {
		return // the penumbra passes the Earth by
	}
	zeta, central := now.plane.height(pole, x, y)
	if !central {
		e.Magnitude = (penumbra - miss) / (penumbra + umbra)
		e.Kind = Partial
		if miss < math.Abs(umbra) {
			e.Kind = annularOrTotal(umbra)
		}
		return
	}
	e.Central = true
	here1, here2 := penumbra-zeta*now.tan1, umbra-zeta*now.tan2
	e.Magnitude = (here1 - here2) / (here1 + here2)
	e.Kind = annularOrTotal(here2)
	// the ends of the path, where the axis touches the Earth at sunrise and sunset
	half := way.semi(outline)
	for _, end := range [2]float64{t - half, t + half} {
		if annularOrTotal(l2.at(end)) != e.Kind {
			e.Kind = Hybrid
		}
	}
}

func annularOrTotal(umbra float64) Kind {
	if umbra < 0 {
		return Total
	}
	return Annular
}

// earthPole returns the unit vector to the Earth's north pole in the frame of
// the ecliptic of date, by the mean obliquity (Meeus, formula 22.2).
func earthPole(tt float64) vector {
	s, c := math.Sincos(MeanObliquity(tt) * degree)
	return vector{0, s, c}
}

// outline returns the radius of the Earth's outline, seen along the axis of
// the shadow, in the direction of (x, y).
func (p *plane) outline(pole vector, x, y float64) float64 {
	px, py := pole.dot(p.x), pole.dot(p.y)
	cos2 := px*px + py*py // the pole leans so far out of the axis
	polarRadius2 := 1 - flattening*(2-flattening)*cos2
	// along and across the pole's direction
	n := (x*x + y*y) * cos2
	along := (x*px + y*py) * (x*px + y*py) / n
	return 1 / math.Sqrt((1-along)+along/polarRadius2)
}

// height returns where the axis through (x, y) meets the surface of the
// flattened Earth, above the fundamental plane; ok is false if it misses.
func (p *plane) height(pole vector, x, y float64) (zeta float64, ok bool) {
	foot := vector{
		p.x[0]*x + p.y[0]*y, p.x[1]*x + p.y[1]*y, p.x[2]*x + p.y[2]*y,
	}
	// stretch along the pole until the Earth is a sphere
	f, a := stretch(foot, pole), stretch(p.axis, pole)
	// |f + zeta*a| = 1
	qa, qb, qc := a.dot(a), f.dot(a), f.dot(f)-1
	d := qb*qb - qa*qc
	if d < 0 {
		return 0, false
	}
	return (-qb + math.Sqrt(d)) / qa, true
}

func stretch(v, pole vector) vector {
	return v.minus(pole.scaled(-v.dot(pole) * flattening / (1 - flattening)))
}
