package sky

import "math"

// firstGuess is an eclipse by Meeus's chapter 54: good to two minutes and to
// 0.01 in gamma over the whole span, which serves as the start for the geometry of the
// shadow.
type firstGuess struct {
	tt    float64 // greatest eclipse, Julian day TT
	gamma float64 // in equatorial radii of the Earth
	u     float64 // radius of the umbra in the fundamental plane, the same unit; negative where it is total
}

// guess applies chapter 54 of Meeus, Astronomical Algorithms, 2nd ed.; ok is
// false where the Moon is too far from the node for any eclipse.
func (a *lunationArgs) guess() (g firstGuess, ok bool) {
	f := turn360(a.f)
	if math.Abs(math.Sin(f*degree)) > 0.36 {
		return g, false
	}
	sin := func(deg float64) float64 { return math.Sin(deg * degree) }
	cos := func(deg float64) float64 { return math.Cos(deg * degree) }
	m, mm, e := a.m, a.mm, a.e
	node := sin(a.node)
	f1 := f - 0.02665*node
	a1 := 299.77 + 0.107408*a.k - 0.009173*a.t*a.t

	c1, c2 := -0.4075, 0.1721
	if a.k != math.Floor(a.k) {
		c1, c2 = -0.4065, 0.1727
	}
	g.tt = a.mean + c1*sin(mm) + c2*e*sin(m) +
		0.0161*sin(2*mm) - 0.0097*sin(2*f1) + 0.0073*e*sin(mm-m) -
		0.0050*e*sin(mm+m) - 0.0023*sin(mm-2*f1) + 0.0021*e*sin(2*m) +
		0.0012*sin(mm+2*f1) + 0.0006*e*sin(2*mm+m) - 0.0004*sin(3*mm) -
		0.0003*e*sin(m+2*f1) + 0.0003*sin(a1) - 0.0002*e*sin(m-2*f1) -
		0.0002*e*sin(2*mm-m) - 0.0002*node
	p := 0.2070*e*sin(m) + 0.0024*e*sin(2*m) - 0.0392*sin(mm) + 0.0116*sin(2*mm) -
		0.0073*e*sin(mm+m) + 0.0067*e*sin(mm-m) + 0.0118*sin(2*f1)
	q := 5.2207 - 0.0048*e*cos(m) + 0.0020*e*cos(2*m) - 0.3299*cos(mm) -
		0.0060*e*cos(mm+m) + 0.0041*e*cos(mm-m)
	w := math.Abs(cos(f1))
	g.gamma = (p*cos(f1) + q*sin(f1)) * (1 - 0.0048*w)
	g.u = umbraRadius(m, mm, e)
	return g, true
}

// umbraRadius is u of Meeus's chapter 54 from the anomalies of Sun and Moon.
func umbraRadius(m, mm, e float64) float64 {
	m, mm = m*degree, mm*degree
	return 0.0059 + 0.0046*e*math.Cos(m) - 0.0182*math.Cos(mm) +
		0.0004*math.Cos(2*mm) - 0.0005*math.Cos(m+mm)
}

// solarKind is Meeus's rule for the kind of a solar eclipse, chapter 54. The
// bool tells whether the axis of the shadow meets the Earth.
func solarKind(gamma, u float64) (kind Kind, central bool) {
	g := math.Abs(gamma)
	switch {
	case g > 1.5433+u:
		return None, false
	case g > 0.9972+math.Abs(u):
		return Partial, false
	case u < 0:
		return Total, g < 0.9972
	case g < 0.9972 && u < 0.00464*math.Sqrt(1-g*g):
		return Hybrid, true
	}
	return Annular, g < 0.9972
}

// maybe tells whether the geometry of the shadow is worth computing: the guess
// is as good as an eclipse, or misses it by less than it may be wrong.
func (g *firstGuess) maybe(full bool) bool {
	const doubt = 0.03 // three times as much
	limit := 1.5433 + g.u
	if full {
		limit = 1.5573 + g.u
	}
	return math.Abs(g.gamma) < limit+doubt
}
