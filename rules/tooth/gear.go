package tooth

import (
	"fmt"
	"math"
)

// Gear is one involute gear: a wheel, a pinion, or a ring with its teeth
// inside. Start from [Standard] and change what differs.
type Gear struct {
	Teeth         int
	Module        float64 // mm, normal to the tooth
	PressureAngle float64 // degrees, normal to the tooth, 5 to 45
	Helix         float64 // degrees at the reference circle, right hand positive, within +/-60; 0 is spur
	Shift         float64 // profile shift coefficient x, modules; outward positive, for a ring too
	Addendum      float64 // addendum coefficient haP of the basic rack, modules
	Dedendum      float64 // dedendum coefficient hfP of the basic rack, modules
	Shortening    float64 // tip shortening coefficient k, modules
	Thinning      float64 // mm of arc, in the plane of rotation, by which each tooth is thinner at the reference circle
	Ring          bool    // the teeth stand inside
}

// Standard returns an unshifted spur gear on the basic rack of ISO 53,
// profile A (from memory): 20 deg, addendum 1, dedendum 1.25 modules.
func Standard(teeth int, module float64) Gear {
	rack := basicRacks['A']
	return Gear{
		Teeth: teeth, Module: module, PressureAngle: rack.PressureAngle,
		Addendum: rack.Addendum, Dedendum: rack.Dedendum,
	}
}

// Check refuses a gear that cannot be: a value outside its range, a tip not
// beyond its root, a root circle that has vanished.
func (g Gear) Check() error {
	if g.ordinary() {
		return nil
	}
	err := first(
		count("tooth count", g.Teeth, 1),
		length("module", g.Module),
		pressureAngle(g.PressureAngle),
		within("helix angle in degrees", g.Helix, -60, 60),
		within("profile shift coefficient", g.Shift, -10, 10),
		within("addendum in modules", g.Addendum, 0, 5),
		within("dedendum in modules", g.Dedendum, 0, 5),
		within("tip shortening in modules", g.Shortening, -5, 5),
		within("tooth thinning", g.Thinning, 0, g.Module),
	)
	if err != nil {
		return err
	}
	inner, outer := g.root(), g.tip()
	if g.Ring {
		inner, outer = outer, inner
	}
	if inner <= 0 || inner >= outer {
		return fmt.Errorf("%w: %d teeth leave a root radius of %.4g mm and a tip radius of %.4g mm",
			ErrRange, g.Teeth, g.root(), g.tip())
	}
	return nil
}

// ordinary reports whether the gear is well within all that Check asks, which
// most are.
func (g Gear) ordinary() bool {
	return g.Teeth >= 7 && g.Teeth <= mostTeeth && g.Module >= 1e-3 && g.Module <= 1e3 &&
		g.PressureAngle >= 5 && g.PressureAngle <= 45 && g.Helix >= -60 && g.Helix <= 60 &&
		g.Shift >= -0.5 && g.Shift <= 0.5 && g.Addendum >= 0.5 && g.Addendum <= 1.25 &&
		g.Dedendum >= 0.5 && g.Dedendum <= 1.5 && g.Shortening >= 0 && g.Shortening <= 0.25 && g.Thinning == 0
}

// Transverse returns the module in mm and the pressure angle in degrees in the
// plane of rotation: mt = mn / cos(helix), tan(at) = tan(an) / cos(helix).
// Source: ISO 21771.
func (g Gear) Transverse() (module, pressureAngle float64, err error) {
	if err := g.Check(); err != nil {
		return 0, 0, err
	}
	return g.moduleT(), g.alphaT() / degree, nil
}

// outward is +1 where the teeth point outward and -1 in a ring.
func (g Gear) outward() float64 {
	if g.Ring {
		return -1
	}
	return 1
}

func (g Gear) z() float64        { return float64(g.Teeth) }
func (g Gear) moduleT() float64  { return g.Module / g.cosHelix() }
func (g Gear) tanAlpha() float64 { return math.Tan(g.PressureAngle * degree) }

func (g Gear) cosHelix() float64 {
	if g.Helix == 0 {
		return 1
	}
	return math.Cos(g.Helix * degree)
}

// alphaT is the transverse pressure angle in radians.
func (g Gear) alphaT() float64 {
	if g.Helix == 0 {
		return g.PressureAngle * degree
	}
	return math.Atan(g.tanAlpha() / g.cosHelix())
}

// reference, base, tip and root are radii in mm.
func (g Gear) reference() float64 { return g.moduleT() * g.z() / 2 }
func (g Gear) base() float64      { return g.reference() * math.Cos(g.alphaT()) }

func (g Gear) tip() float64 {
	s := g.outward()
	return g.reference() + s*(g.Addendum+s*g.Shift-g.Shortening)*g.Module
}

func (g Gear) root() float64 {
	s := g.outward()
	return g.reference() - s*(g.Dedendum-s*g.Shift)*g.Module
}

// halfAngle is half the angle in radians that a tooth fills at radius r >= base,
// thinning left out: the flank's involute turned about the tooth's middle.
func (g Gear) halfAngle(r float64) float64 {
	s := g.outward()
	atReference := math.Pi/(2*g.z()) + s*2*g.Shift*g.tanAlpha()/g.z()
	return atReference + s*(inv(g.alphaT())-inv(g.angleAt(r)))
}

// angleAt is the transverse pressure angle in radians at radius r, 0 within
// the base circle, where no involute is.
func (g Gear) angleAt(r float64) float64 {
	return math.Acos(math.Min(1, g.base()/r))
}
