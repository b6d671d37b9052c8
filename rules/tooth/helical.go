package tooth

import "math"

// VirtualTeeth returns the tooth count of the spur gear whose teeth a helical
// gear's look like across the tooth: z/cos3(helix). Cutters are chosen by it.
// Source: SDP/SI D785 section 6 (from memory).
func (g Gear) VirtualTeeth() (float64, error) {
	if err := g.Check(); err != nil {
		return 0, err
	}
	c := g.cosHelix()
	return g.z() / (c * c * c), nil
}

// Lead returns the length in mm along the axis in which the tooth of a helical
// gear winds once round: pi z m/sin(helix). It refuses a spur gear, which has
// none. Source: SDP/SI D785 section 6 (from memory).
func (g Gear) Lead() (float64, error) {
	helix := math.Abs(g.Helix)
	if err := first(g.Check(), within("helix angle in degrees", helix, 1e-6, 60)); err != nil {
		return 0, err
	}
	return math.Pi * g.z() * g.Module / math.Sin(helix*degree), nil
}

// OverlapRatio returns the share that a helical gear's face, in mm, adds to the
// transverse contact ratio: b sin(helix)/(pi m); 0 for a spur gear. Source: ISO
// 21771 (from memory).
func (g Gear) OverlapRatio(face float64) (float64, error) {
	if err := first(g.Check(), length("face width", face)); err != nil {
		return 0, err
	}
	return face * math.Sin(math.Abs(g.Helix)*degree) / (math.Pi * g.Module), nil
}
