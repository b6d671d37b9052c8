package tooth

import (
	"fmt"
	"math"
)

// Margin is one condition: it holds where Have is at least Need, but for
// rounding.
type Margin struct {
	Have, Need float64
	Holds      bool
}

func margin(have, need float64) Margin { return Margin{have, need, have >= need-rounding} }

// RingClearance is the three conditions that a pinion runs free in its ring.
type RingClearance struct {
	// Involute: the ring's tip stays off the pinion's flank below its involute.
	// Have is z1/z2. Ordinary planetary sets break it by a little: a warning.
	Involute Margin
	// Trochoid: the pinion's tip passes the ring's tip on its way out. Have and
	// Need are radians; Have is 0 where the tip circles do not cross.
	Trochoid Margin
	// Trimming: the pinion can be put in along a radius. Where it does not
	// hold, it still goes in along its axis. Have and Need are radians; Have is
	// 0 where the tips do not close up at all or would do so without end.
	Trimming Margin
}

// RingClearance judges the fit of a pinion in a ring at its centre distance; it
// refuses a pair without a ring. Sources: SDP/SI D785 eq 5-4 to 5-10, and from
// memory eq 5-2; the limits of their range are computed from the geometry.
func (f Fit) RingClearance() (RingClearance, error) {
	if !f.pair.B.Ring {
		return RingClearance{}, fmt.Errorf("ring clearance of a pair without a ring: %w", ErrRange)
	}
	g := f.ringGeometry()
	return RingClearance{Involute: g.involute(), Trochoid: g.trochoid(), Trimming: g.trimming()}, nil
}

// ringGeometry names what the three conditions share: tip radii in mm and
// pressure angles in radians, at the working circles and at the tips.
type ringGeometry struct {
	z1, z2, centre float64
	ra1, ra2       float64
	aw, aa1, aa2   float64
}

func (f Fit) ringGeometry() ringGeometry {
	a, b := f.pair.A, f.pair.B
	return ringGeometry{
		z1: a.z(), z2: b.z(), centre: f.Centre,
		ra1: a.tip(), ra2: b.tip(),
		// A ring's tip within its base circle has no involute: its angle is 0.
		aw: f.WorkingAngle * degree, aa1: a.angleAt(a.tip()), aa2: b.angleAt(b.tip()),
	}
}

// involute is z1/z2 >= 1 - tan(aa2)/tan(aw).
func (g ringGeometry) involute() Margin {
	return margin(g.z1/g.z2, 1-math.Tan(g.aa2)/math.Tan(g.aw))
}

// trochoid compares the angles at which the tip circles cross.
func (g ringGeometry) trochoid() Margin {
	atPinion := (g.ra2*g.ra2 - g.ra1*g.ra1 - g.centre*g.centre) / (2 * g.centre * g.ra1)
	atRing := (g.centre*g.centre + g.ra2*g.ra2 - g.ra1*g.ra1) / (2 * g.centre * g.ra2)
	switch {
	case atPinion < -1:
		return Margin{Need: math.Pi} // the ring's tips stand inside the pinion's throughout
	case atPinion > 1:
		return Margin{Holds: true} // and here outside
	}
	turned := math.Acos(atPinion) + inv(g.aa1) - inv(g.aw)
	return margin(turned*g.z1/g.z2+inv(g.aw)-inv(g.aa2), math.Acos(math.Max(-1, math.Min(1, atRing))))
}

// trimming compares the angles at which the tips stand at the same distance
// from the line of centres while they close up soonest.
func (g ringGeometry) trimming() Margin {
	cosines := math.Cos(g.aa1) / math.Cos(g.aa2)
	if cosines >= 1 {
		// The pinion's tips close up slower than the ring's everywhere.
		return Margin{Holds: true}
	}
	i := g.z1 / g.z2
	sin1 := (1 - cosines*cosines) / (1 - i*i)
	sin2 := (1/(cosines*cosines) - 1) / (1/(i*i) - 1)
	if sin1 > 1 || sin2 > 1 {
		return Margin{Need: math.Pi / 2}
	}
	turned1 := math.Asin(math.Sqrt(sin1)) + inv(g.aa1) - inv(g.aw)
	turned2 := math.Asin(math.Sqrt(sin2)) + inv(g.aa2) - inv(g.aw)
	return margin(turned1, turned2/i)
}

// LargestRingAddendum returns the largest addendum coefficient, in modules,
// that the ring may have without involute interference at this centre
// distance; unshifted,
//
//	z2/2 - sqrt((z2 cos(a)/2)^2 + ((z2 - z1) sin(a)/2)^2)
//
// It refuses a pair without a ring. Computed from the condition on the ring's
// tip radius, ra2^2 >= rb2^2 + (a sin aw)^2.
func (f Fit) LargestRingAddendum() (float64, error) {
	ring := f.pair.B
	if !ring.Ring {
		return 0, fmt.Errorf("ring addendum of a pair without a ring: %w", ErrRange)
	}
	least := f.B.TipLimit / 2
	return (ring.reference()-least)/ring.Module + ring.Shift + ring.Shortening, nil
}
