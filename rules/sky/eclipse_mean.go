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
	node, far := turningOf(a.node), turningOf(299.77+0.107408*a.k-0.009173*a.t*a.t)
	f1, m, mm := turningOf(f-0.02665*node.s), turningOf(a.m), turningOf(a.mm)
	f2, m2, mm2 := f1.times(f1), m.times(m), mm.times(mm)
	sum, less := mm.times(m), mm.times(m.back()) // of the anomalies
	e := a.e

	c1, c2 := -0.4075, 0.1721
	if a.k != math.Floor(a.k) {
		c1, c2 = -0.4065, 0.1727
	}
	g.tt = a.mean + c1*mm.s + c2*e*m.s +
		0.0161*mm2.s - 0.0097*f2.s + 0.0073*e*less.s -
		0.0050*e*sum.s - 0.0023*mm.times(f2.back()).s + 0.0021*e*m2.s +
		0.0012*mm.times(f2).s + 0.0006*e*mm2.times(m).s - 0.0004*mm2.times(mm).s -
		0.0003*e*m.times(f2).s + 0.0003*far.s - 0.0002*e*m.times(f2.back()).s -
		0.0002*e*mm2.times(m.back()).s - 0.0002*node.s
	p := 0.2070*e*m.s + 0.0024*e*m2.s - 0.0392*mm.s + 0.0116*mm2.s -
		0.0073*e*sum.s + 0.0067*e*less.s + 0.0118*f2.s
	q := 5.2207 - 0.0048*e*m.c + 0.0020*e*m2.c - 0.3299*mm.c -
		0.0060*e*sum.c + 0.0041*e*less.c
	g.gamma = (p*f1.c + q*f1.s) * (1 - 0.0048*math.Abs(f1.c))
	g.u = 0.0059 + 0.0046*e*m.c - 0.0182*mm.c + 0.0004*mm2.c - 0.0005*sum.c
	return g, true
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
