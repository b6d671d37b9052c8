package tooth

import "math"

// Worm is a cylindrical worm and its wheel, shafts crossed at 90 deg. The
// diameter of the worm is free: the centre distance does not follow from the
// teeth alone.
type Worm struct {
	Starts, Teeth int
	Module        float64 // mm, axial
	Diameter      float64 // mm, pitch diameter of the worm
	Shift         float64 // profile shift of the wheel in modules; a worm has none
}

// WormSizes is what follows from a [Worm]: lengths in mm, angles in degrees.
type WormSizes struct {
	WheelDiameter float64 // pitch diameter
	Centre        float64
	Lead          float64
	LeadAngle     float64
	WormTip       float64 // tip diameter of the worm
	Quotient      float64 // diameter over module, usually 7 to 17 (from memory)
	Ratio         float64 // turns of the worm to one of the wheel
}

// Sizes returns the geometry. Source: Tandwiel, cylindrical worm and worm
// wheel, and SDP/SI D785 Table 9-3 (from memory):
//
//	d2 = m z2, a = (d1 + d2)/2, lead = pi m z1, tan(lead angle) = m z1/d1
//
// and with the wheel shifted a = (d1 + d2)/2 + x m (DIN 3975, from memory).
func (w Worm) Sizes() (WormSizes, error) {
	err := first(
		count("worm starts", w.Starts, 1), count("worm wheel teeth", w.Teeth, 3),
		length("module", w.Module), length("worm diameter", w.Diameter),
		within("profile shift", w.Shift, -2, 2),
	)
	if err != nil {
		return WormSizes{}, err
	}
	wheel := w.Module * float64(w.Teeth)
	advance := w.Module * float64(w.Starts)
	return WormSizes{
		WheelDiameter: wheel,
		Centre:        (w.Diameter+wheel)/2 + w.Shift*w.Module,
		Lead:          math.Pi * advance,
		LeadAngle:     math.Atan(advance/w.Diameter) / degree,
		WormTip:       w.Diameter + 2*w.Module,
		Quotient:      w.Diameter / w.Module,
		Ratio:         float64(w.Teeth) / float64(w.Starts),
	}, nil
}

// SelfLockingLead is the lead angle in degrees below which a worm usually
// cannot be driven by its wheel (from memory). It holds at rest, depends on
// lubrication, and shaking undoes it.
const SelfLockingLead = 5.0

// WormEfficiency returns which part of the power passes from the worm to its
// wheel, and from the wheel to the worm (0 where the wheel cannot drive it),
// for a lead angle and a normal pressure angle in degrees and a coefficient of
// friction from 0 to 1. Source: Shigley eq 13-46 (from memory):
//
//	(cos(a) - mu tan(lead))/(cos(a) + mu cot(lead))
//
// the way back computed from the same forces with friction turned round.
func WormEfficiency(lead, angle, friction float64) (forward, back float64, err error) {
	err = first(
		within("lead angle in degrees", lead, 0.1, 60),
		pressureAngle(angle), within("coefficient of friction", friction, 0, 1),
	)
	if err != nil {
		return 0, 0, err
	}
	t, c := math.Tan(lead*degree), math.Cos(angle*degree)
	forward = (c - friction*t) / (c + friction/t)
	back = (c - friction/t) / (c + friction*t)
	return math.Max(0, forward), math.Max(0, back), nil
}
