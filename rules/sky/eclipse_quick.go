package sky

import (
	"math"
	"slices"
)

// QuickDays is how far the time of an eclipse of QuickEclipses may be off, in
// days: the approximation's error, 1.7 minutes over the whole span, with room.
const QuickDays = 4.0 / 1440

// quickDoubt is how near the bound between two events gamma must lie for the
// geometry of the shadow to be asked, in equatorial radii of the Earth. Over
// the whole span the approximation decides none wrongly that lies further than
// 0.006 from a bound.
const quickDoubt = 0.012

// QuickEclipses returns the eclipses of Eclipses, every one and no other, each
// one the same Event as there, in a tenth of the time: the geometry of the
// shadow is worked out only where the approximation of Meeus's chapter 54 leaves
// an event in doubt. Times are good to QuickDays, gamma to 0.01, and total,
// annular and hybrid eclipses of the Sun are told apart by that chapter's rule;
// magnitudes and durations are left at 0.
func QuickEclipses(fromJD, toJD float64) ([]Eclipse, error) {
	if err := checkSpan(fromJD, toJD); err != nil {
		return nil, err
	}
	if toJD <= fromJD {
		return nil, nil
	}
	list := make([]Eclipse, 0, 4+int((toJD-fromJD)/75))
	end := toTT(toJD) + 1
	for k := firstLunation(toTT(fromJD)); ; k += 0.5 {
		a := lunationAt(k)
		if a.mean > end {
			break
		}
		e, ok := a.quick()
		if ok && math.Min(math.Abs(e.UT-fromJD), math.Abs(e.UT-toJD)) < QuickDays {
			e, ok = a.eclipse() // which side of the bound it falls
		}
		if ok && e.UT >= fromJD && e.UT < toJD {
			list = append(list, e)
		}
	}
	slices.SortFunc(list, byTime)
	return list, nil
}

func byTime(a, b Eclipse) int {
	switch {
	case a.TT < b.TT:
		return -1
	case a.TT > b.TT:
		return 1
	}
	return 0
}

func (a *lunationArgs) quick() (e Eclipse, ok bool) {
	g, ok := a.guess()
	if !ok {
		return e, false
	}
	gamma, full := math.Abs(g.gamma), a.k != math.Floor(a.k)
	bounds := [...]float64{1.5433 + g.u, 0.9972 + math.Abs(g.u), 0}
	if full {
		bounds = [...]float64{1.5573 + g.u, 1.0128 - g.u, 0.4678 - g.u}
	}
	for _, b := range bounds {
		if b != 0 && math.Abs(gamma-b) < quickDoubt {
			return a.eclipse()
		}
	}
	if gamma > bounds[0] {
		return e, false
	}
	e = Eclipse{Syzygy: a.syzygy(), Solar: !full, Saros: sarosNumber(a.k), TT: g.tt, UT: toUT(g.tt), Gamma: g.gamma}
	switch {
	case !full:
		e.Kind, e.Central = solarKind(g.gamma, g.u)
	case gamma < bounds[2]:
		e.Kind = Total
	case gamma < bounds[1]:
		e.Kind = Partial
	default:
		e.Kind = Penumbral
	}
	return e, true
}
