package tooth

// ShiftSum returns the sum of profile shift coefficients x1 + x2 (for a ring
// the difference x2 - x1) with which the pair fits the centre distance in mm
// without backlash; the shifts the gears have now do not matter. Source: SDP/SI
// D785 Table 4-4 (from memory):
//
//	cos(aw) = a0 cos(a)/centre, x1 + x2 = (z1 + z2)(inv aw - inv a)/(2 tan a)
func (p Pair) ShiftSum(centre float64) (float64, error) {
	p.A.Shift, p.B.Shift = 0, 0
	if err := p.checkCentre(centre); err != nil {
		return 0, err
	}
	return p.teeth() * (inv(p.angleAt(centre)) - inv(p.A.alphaT())) / (2 * p.A.tanAlpha()), nil
}

// Shortened returns the pair with the tips of both gears shortened so that
// each keeps its bottom clearance at the nominal centre distance:
// k = x1 + x2 - y. A ring pair gains clearance and needs none. Source: SDP/SI
// D785 Table 4-4 and ISO 21771 (from memory).
func (p Pair) Shortened() (Pair, error) {
	centre, err := p.NominalCentre()
	if err != nil {
		return Pair{}, err
	}
	k := 0.0
	if !p.B.Ring {
		k = p.shift() - (centre-p.referenceCentre())/p.A.Module
	}
	p.A.Shortening, p.B.Shortening = k, k
	return p, p.Check()
}

// TeethForCentre returns the two tooth counts of an unshifted spur pair that
// fills a centre distance in mm at a ratio z1/z2; they are whole numbers only
// where such a pair exists. Source: SDP/SI D785 Table 4-2.
func TeethForCentre(module, centre, ratio float64) (z1, z2 float64, err error) {
	err = first(length("module", module), length("centre distance", centre), within("ratio", ratio, 1e-6, 1e6))
	if err != nil {
		return 0, 0, err
	}
	sum := 2 * centre / module
	return sum * ratio / (1 + ratio), sum / (1 + ratio), nil
}
