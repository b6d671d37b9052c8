package tooth

import "math"

// Crown is a crown wheel (contrate): teeth on the face of a disc, driven by a
// spur pinion whose axis meets its own at 90 deg. Its pitch diameter, m z, lies
// in the middle of the face.
type Crown struct {
	Teeth, Pinion int
	Module        float64 // mm
	PressureAngle float64 // degrees, the pinion's, 5 to 45
}

// Check refuses a crown wheel that cannot be.
func (c Crown) Check() error {
	return first(
		count("crown wheel teeth", c.Teeth, 3), count("pinion teeth", c.Pinion, 3),
		length("module", c.Module), pressureAngle(c.PressureAngle),
	)
}

// PitchRadius returns the radius in mm where the pinion's pitch line touches.
func (c Crown) PitchRadius() (float64, error) {
	if err := c.Check(); err != nil {
		return 0, err
	}
	return c.pitchRadius(), nil
}

func (c Crown) pitchRadius() float64 { return c.Module * float64(c.Teeth) / 2 }

// LeastRadius returns the radius in mm within which there is no tooth:
// m z cos(a)/2. Computed from the local pressure angle.
func (c Crown) LeastRadius() (float64, error) {
	if err := c.Check(); err != nil {
		return 0, err
	}
	return c.pitchRadius() * math.Cos(c.PressureAngle*degree), nil
}

// LocalPressureAngle returns the pressure angle in degrees at a radius in mm,
// not below [Crown.LeastRadius]: cos(a) = m z cos(alpha)/(2 r). Computed from
// the rack that the wheel is at each radius.
func (c Crown) LocalPressureAngle(radius float64) (float64, error) {
	least, err := c.LeastRadius()
	if err != nil {
		return 0, err
	}
	if err := within("radius in mm", radius, least, mostLength); err != nil {
		return 0, err
	}
	return math.Acos(least/radius) / degree, nil
}

// MostRadius returns the radius in mm at which a full-depth tooth (its tip one
// module above the pitch plane) comes to a point. There the wheel is a rack of
// pitch 2 pi r/z, which fills the gaps of the pinion at the pinion's working
// circle. Computed from that rack.
func (c Crown) MostRadius() (float64, error) {
	least, err := c.LeastRadius()
	if err != nil {
		return 0, err
	}
	pinion := Gear{Teeth: c.Pinion, Module: c.Module, PressureAngle: c.PressureAngle}
	pitch := pinion.reference()
	land := func(radius float64) float64 {
		angle := math.Acos(math.Min(1, least/radius))
		working := pinion.base() / math.Cos(angle)
		gap := 2 * working * (math.Pi/pinion.z() - pinion.halfAngle(working))
		return gap - 2*(working-pitch+c.Module)*math.Tan(angle)
	}
	return bisect(land, least, 4*c.pitchRadius()), nil
}

// UsualFace returns inner and outer radius in mm of the face usually cut: the
// pitch radius less and more one module, within the radii at which teeth end
// and come to a point. Common practice keeps 0.5 to 1 mm to either side at
// module 0.5 to 1.
func (c Crown) UsualFace() (inner, outer float64, err error) {
	least, err := c.LeastRadius()
	if err != nil {
		return 0, 0, err
	}
	most, err := c.MostRadius()
	if err != nil {
		return 0, 0, err
	}
	return math.Max(least, c.pitchRadius()-c.Module), math.Min(most, c.pitchRadius()+c.Module), nil
}
