package tooth

import "math"

// PinSlot is a pin on one disc that drives a slot in another whose axis lies
// beside its own: it adds an uneven motion to an even one, as a deferent with
// an epicycle does (Carman, Thorndike, Evans 2012, abstract). All formulas are
// computed from the geometry.
type PinSlot struct {
	PinRadius float64 // of the pin's circle, mm
	Offset    float64 // of the slotted disc's axis from the pin's, along angle 0; less than PinRadius, mm
}

// Check refuses an offset that is negative or reaches the pin's circle.
func (p PinSlot) Check() error {
	return first(length("pin radius", p.PinRadius), within("offset in mm", p.Offset, 0, p.PinRadius*(1-1e-9)))
}

// SlottedAngle returns the angle in degrees of the slotted disc for one of the
// pin's disc, in the same turn, within a million turns of 0:
// atan2(r sin t, r cos t - e).
func (p PinSlot) SlottedAngle(pin float64) (float64, error) {
	if err := p.checkAngle(pin); err != nil {
		return 0, err
	}
	sin, cos := math.Sincos(pin * degree)
	// What the slot adds, so that whole turns carry over.
	added := math.Atan2(p.Offset*sin, p.PinRadius-p.Offset*cos)
	return pin + added/degree, nil
}

// SpeedRatio returns the speed of the slotted disc over that of the pin's at an
// angle in degrees of the pin's disc: (r^2 - r e cos t)/(r^2 + e^2 - 2 r e cos t).
func (p PinSlot) SpeedRatio(pin float64) (float64, error) {
	if err := p.checkAngle(pin); err != nil {
		return 0, err
	}
	r, e, cos := p.PinRadius, p.Offset, math.Cos(pin*degree)
	return (r*r - r*e*cos) / (r*r + e*e - 2*r*e*cos), nil
}

func (p PinSlot) checkAngle(pin float64) error {
	return first(p.Check(), within("angle in degrees", pin, -360e6, 360e6))
}

// Swing is the uneven part of a [PinSlot]'s motion.
type Swing struct {
	Amplitude        float64 // degrees to either side of even motion: asin(e/r)
	At               float64 // degrees of the pin's disc where it is reached: acos(e/r)
	LeastSpeed, Most float64 // speed ratios: r/(r + e), r/(r - e)
	SlotFrom, SlotTo float64 // mm from the slotted disc's axis that the pin's middle reaches
}

// Swing returns the uneven part of the motion.
func (p PinSlot) Swing() (Swing, error) {
	if err := p.Check(); err != nil {
		return Swing{}, err
	}
	r, e := p.PinRadius, p.Offset
	return Swing{
		Amplitude: math.Asin(e/r) / degree, At: math.Acos(e/r) / degree,
		LeastSpeed: r / (r + e), Most: r / (r - e),
		SlotFrom: r - e, SlotTo: r + e,
	}, nil
}

// Harmonic returns the amplitude in degrees of the part of the swing that comes
// k times in a turn, k from 1: (e/r)^k/k.
func (p PinSlot) Harmonic(k int) (float64, error) {
	if err := first(p.Check(), count("harmonic", k, 1)); err != nil {
		return 0, err
	}
	return math.Pow(p.Offset/p.PinRadius, float64(k)) / float64(k) / degree, nil
}

// OffsetFor returns the offset in mm that gives a pin radius in mm an amplitude
// in degrees, 0 and more, below 90: r sin(amplitude).
func OffsetFor(pinRadius, amplitude float64) (float64, error) {
	if err := first(length("pin radius", pinRadius), within("amplitude in degrees", amplitude, 0, 89.9)); err != nil {
		return 0, err
	}
	return pinRadius * math.Sin(amplitude*degree), nil
}
