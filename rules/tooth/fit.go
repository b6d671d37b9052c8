package tooth

import "math"

// Fit is a pair at a centre distance: all that can be measured of the mesh.
// Lengths are mm and angles degrees, in the plane of rotation.
type Fit struct {
	Centre        float64
	NominalCentre float64 // where the shifts leave no backlash
	WorkingAngle  float64 // working pressure angle at Centre
	Modification  float64 // y, centre distance modification at Centre in modules

	// ContactRatio is the transverse contact ratio, counted only where
	// involute meets involute; UnclampedRatio counts the whole addendum even
	// where a tip interferes, as most books print it. Both fall below 0 where
	// the teeth no longer reach each other.
	ContactRatio   float64
	UnclampedRatio float64

	// Backlash is the play along the working circles; below 0 the teeth jam.
	// NormalBacklash is the same play along the line of action.
	Backlash       float64
	NormalBacklash float64

	A, B Side

	pair Pair
}

// Side is one gear of a [Fit]. Lengths are diameters in mm save the clearance.
type Side struct {
	Blank
	Working float64 // working pitch circle

	// TipLimit is the tip diameter beyond which the tip digs into the mate's
	// flank below its involute: the largest for teeth outside, the least for a
	// ring; 0 where there is no limit.
	TipLimit   float64
	Interferes bool // the tip passes TipLimit

	Clearance float64 // from its tip to the mate's root; below 0 they touch
	Play      float64 // backlash as degrees of its own rotation
}

// Fit returns the pair at its nominal centre distance.
func (p Pair) Fit() (Fit, error) {
	if err := p.Check(); err != nil {
		return Fit{}, err
	}
	return p.at(0)
}

// At returns the pair at a centre distance in mm, above the distance at which
// the base circles leave no line of action.
//
// Sources: diameters as [Gear.Blank] and [Pair.NominalCentre]; the tip limit
// is rt2^2 = rb2^2 + (a sin aw)^2, Shigley section 13-7 (from memory); the
// contact ratio is ISO 21771's, each part clamped at the tip limit; the
// backlash is computed from the involute, 2 a (inv aw - inv aw nominal) plus
// the thinning of both teeth.
func (p Pair) At(centre float64) (Fit, error) {
	if err := first(p.Check(), length("centre distance", centre)); err != nil {
		return Fit{}, err
	}
	return p.at(centre)
}

// at is the fit of a sound pair; 0 stands for its nominal centre distance.
func (p Pair) at(centre float64) (Fit, error) {
	a := p.A.section()
	b := a.of(p.B) // sound pairs have one module, pressure angle and helix
	touch := a.module * p.teeth() / 2
	base := touch * a.cosAlpha
	angle, value, err := p.nominal(&a)
	if err != nil {
		return Fit{}, err
	}
	nominal := touch
	if angle != a.alpha {
		nominal = base / math.Cos(angle)
	}
	if centre == 0 {
		centre = nominal
	}
	if err := p.checkReach(centre, base); err != nil {
		return Fit{}, err
	}
	cos := base / centre
	sin := math.Sqrt((1 - cos) * (1 + cos))
	working := math.Acos(cos)
	f := Fit{
		Centre:        centre,
		NominalCentre: nominal,
		WorkingAngle:  working / degree,
		Modification:  (centre - touch) / p.A.Module,
		Backlash:      p.B.outward()*2*centre*(sin/cos-working-value) + (p.A.Thinning+p.B.Thinning)*centre/touch,
		pair:          p,
	}
	f.NormalBacklash = f.Backlash * cos
	if p.A.Helix != 0 {
		f.NormalBacklash *= math.Cos(p.baseHelix())
	}
	f.A.Blank, f.B.Blank = p.A.blank(&a), p.B.blank(&b)
	line := centre * sin
	f.placeTips(cos, line)
	basePitch := math.Pi * a.module * a.cosAlpha
	whole, clamped := p.pathOfContact(&a, &b, line)
	f.UnclampedRatio, f.ContactRatio = whole/basePitch, clamped/basePitch
	return f, nil
}

// placeTips fills both sides with what depends on the mate, for the cosine of
// the working angle and the length of the line of action between the points
// where it touches the base circles.
func (f *Fit) placeTips(cos, line float64) {
	for _, s := range [...]*Side{&f.A, &f.B} {
		s.Working = s.Base / cos
		s.TipLimit = 2 * math.Hypot(s.Base/2, line)
		s.Play = 2 * f.Backlash / s.Working / degree
	}
	a, b := &f.A, &f.B
	if f.pair.B.Ring {
		a.TipLimit = 0
		b.Interferes = b.Tip < b.TipLimit-rounding
		a.Clearance = b.Root/2 - f.Centre - a.Tip/2
		b.Clearance = b.Tip/2 - f.Centre - a.Root/2
		return
	}
	a.Interferes = a.Tip > a.TipLimit+rounding
	b.Interferes = b.Tip > b.TipLimit+rounding
	a.Clearance = f.Centre - a.Tip/2 - b.Root/2
	b.Clearance = f.Centre - b.Tip/2 - a.Root/2
}

// pathOfContact is the length in mm of the path of contact, whole and clamped
// to where both flanks are involute; line is the length between the points
// where the line of action touches the base circles.
func (p Pair) pathOfContact(sa, sb *section, line float64) (whole, clamped float64) {
	reach := func(s *section) float64 {
		return math.Sqrt(math.Max(0, s.tip*s.tip-s.base*s.base))
	}
	a, b := reach(sa), reach(sb)
	if p.B.Ring {
		return a - b + line, a - math.Max(b, line) + line
	}
	return a + b - line, math.Min(a, line) + math.Min(b, line) - line
}

// baseHelix is the helix angle in radians at the base circle.
func (p Pair) baseHelix() float64 {
	return math.Asin(math.Sin(p.A.Helix*degree) * math.Cos(p.A.PressureAngle*degree))
}

// ContactRatioLimit returns the transverse contact ratio of two racks, which
// no pair of unshifted gears exceeds: 4 haP/(pi sin 2a), for a pressure angle
// in degrees and an addendum in modules. Computed from the geometry of two
// racks.
func ContactRatioLimit(angle, addendum float64) (float64, error) {
	if err := first(pressureAngle(angle), within("addendum in modules", addendum, 0, 5)); err != nil {
		return 0, err
	}
	return 4 * addendum / (math.Pi * math.Sin(2*angle*degree)), nil
}
