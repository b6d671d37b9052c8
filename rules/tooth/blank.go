package tooth

import "math"

// Blank is what is turned and cut: diameters and tooth sizes in mm, in the
// plane of rotation.
type Blank struct {
	Reference float64 // pitch circle as cut
	Base      float64 // circle the involute springs from
	Tip       float64 // outside of a wheel, bore of a ring's teeth
	Root      float64
	Depth     float64 // whole depth of cut
	Thickness float64 // arc of a tooth at the reference circle
	TopLand   float64 // arc of a tooth at its tip, negative where it is pointed before
}

// Blank returns the gear's diameters and tooth sizes. Source: ISO 21771;
// SDP/SI D785 tables 4-1, 4-4 and 5-1 (from memory):
//
//	d = m z, db = d cos(a), da = d + 2 (haP + x - k) m, df = d - 2 (hfP - x) m
//	s = m (pi/2 + 2 x tan a), sa = da (s/d + inv a - inv aa), cos(aa) = db/da
//
// with the signs turned for a ring.
func (g Gear) Blank() (Blank, error) {
	if err := g.Check(); err != nil {
		return Blank{}, err
	}
	s := g.section()
	return g.blank(&s), nil
}

// TipDiameterFor returns the tip diameter in mm at which the tooth is land mm
// wide (0: pointed). It refuses a ring, and a land wider than the tooth is at
// the larger of its base and root circles. Computed from the top land formula.
func (g Gear) TipDiameterFor(land float64) (float64, error) {
	if err := first(g.Check(), within("top land in mm", land, 0, mostLength)); err != nil {
		return 0, err
	}
	if g.Ring {
		return 0, errRing("a top land's tip diameter")
	}
	excess := func(r float64) float64 { return r*(2*g.halfAngle(r)-g.Thinning/g.reference()) - land }
	foot := math.Max(g.base(), g.root())
	if err := within("top land in mm", land, 0, excess(foot)+land); err != nil {
		return 0, err
	}
	// The whole pitch is filled by the flank's involute well before this radius.
	pointed := g.base() / math.Cos(invAngle(inv(g.alphaT())+2*math.Pi/g.z()+math.Abs(2*g.Shift*g.tanAlpha()/g.z())))
	return 2 * bisect(excess, foot, math.Max(pointed, foot)), nil
}
