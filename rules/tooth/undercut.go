package tooth

import "math"

// LeastTeeth returns the least tooth count, not rounded, that a rack cuts
// without undercut: 2 (haP - x)/sin2(a), for a pressure angle in degrees, an
// addendum and a profile shift in modules; 0 where the shift alone suffices.
// Source: SDP/SI D785 eq 4-1.
func LeastTeeth(angle, addendum, shift float64) (float64, error) {
	err := first(
		pressureAngle(angle),
		within("addendum in modules", addendum, 0, 5),
		within("profile shift coefficient", shift, -10, 10),
	)
	if err != nil {
		return 0, err
	}
	sin := math.Sin(angle * degree)
	return math.Max(0, 2*(addendum-shift)/(sin*sin)), nil
}

// UndercutShift returns the least profile shift coefficients with which a rack
// cuts the gear without undercut: exactly, haP - z sin2(at)/(2 cos(helix)), and
// as far as practice goes, (14 - z)/17 at 20 deg, which tolerates the trace of
// undercut on 14 to 17 unshifted teeth. For another angle, helix or addendum
// the practical limit is scaled as the exact one. It refuses a ring. Sources:
// SDP/SI D785 eq 4-1; DIN 3960 for the practical limit (from memory), its
// scaling computed from the formula.
func (g Gear) UndercutShift() (exact, practical float64, err error) {
	if err := g.Check(); err != nil {
		return 0, 0, err
	}
	if g.Ring {
		return 0, 0, errRing("undercut by a rack")
	}
	sin := math.Sin(g.alphaT())
	exact = g.Addendum - g.z()*sin*sin/(2*g.cosHelix())
	// The count that would be undercut as much at 20 deg on a spur gear.
	sin20 := math.Sin(20 * degree)
	equal := g.z() * sin * sin / (sin20 * sin20 * g.cosHelix())
	return exact, (14*g.Addendum - equal) / 17, nil
}
