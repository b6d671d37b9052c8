package tooth

import "math"

// section is what the formulas of a gear share, each worked out once: lengths
// in mm and angles in radians, in the plane of rotation.
type section struct {
	tanAlpha                  float64 // of the normal pressure angle
	module                    float64
	alpha, cosAlpha, invAlpha float64
	reference, base           float64
	tip, root                 float64
}

func (g Gear) section() section {
	s := section{module: g.moduleT(), alpha: g.alphaT(), tanAlpha: g.tanAlpha()}
	s.cosAlpha = math.Cos(s.alpha)
	if g.Helix == 0 {
		s.invAlpha = s.tanAlpha - s.alpha
	} else {
		s.invAlpha = inv(s.alpha)
	}
	return s.of(g)
}

// of is the section of another gear of the same module, pressure angle and
// helix.
func (s section) of(g Gear) section {
	s.reference = s.module * g.z() / 2
	s.base = s.reference * s.cosAlpha
	out := g.outward()
	s.tip = s.reference + out*(g.Addendum+out*g.Shift-g.Shortening)*g.Module
	s.root = s.reference - out*(g.Dedendum-out*g.Shift)*g.Module
	return s
}

// blank is the gear's [Blank]; the section is its own.
func (g Gear) blank(s *section) Blank {
	z, out := g.z(), g.outward()
	half := math.Pi/(2*z) + out*2*g.Shift*s.tanAlpha/z // at the reference circle
	thinned := g.Thinning / s.reference
	// The involute's angle at the tip; within the base circle there is none.
	cos := math.Min(1, s.base/s.tip)
	tan := math.Sqrt((1-cos)*(1+cos)) / cos
	atTip := half + out*(s.invAlpha-(tan-math.Acos(cos)))
	return Blank{
		Reference: 2 * s.reference,
		Base:      2 * s.base,
		Tip:       2 * s.tip,
		Root:      2 * s.root,
		Depth:     math.Abs(s.tip - s.root),
		Thickness: s.reference * (2*half - thinned),
		TopLand:   s.tip * (2*atTip - thinned),
	}
}
