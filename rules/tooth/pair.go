package tooth

import (
	"fmt"
	"math"
)

// Pair is two gears on parallel axes. B may be a ring, A may not.
type Pair struct {
	A, B Gear
}

// Check refuses a pair of which a gear cannot be, or which cannot mesh: module,
// pressure angle or helix unequal, or a ring with no more teeth than its pinion.
// On parallel axes helices are equal and of opposite hand, in a ring of the
// same hand.
func (p Pair) Check() error {
	if err := first(p.A.Check(), p.B.Check()); err != nil {
		return err
	}
	hand := -p.B.Helix
	if p.B.Ring {
		hand = p.B.Helix
	}
	switch {
	case p.A.Ring:
		return fmt.Errorf("%w: the first of the pair is a ring", ErrNoMesh)
	case !sameModule(p.A.Module, p.B.Module):
		return fmt.Errorf("%w: module %.6g mm against %.6g mm", ErrNoMesh, p.A.Module, p.B.Module)
	case math.Abs(p.A.PressureAngle-p.B.PressureAngle) > 1e-9:
		return fmt.Errorf("%w: pressure angle %.6g deg against %.6g deg", ErrNoMesh, p.A.PressureAngle, p.B.PressureAngle)
	case math.Abs(p.A.Helix-hand) > 1e-9:
		return fmt.Errorf("%w: helix %.6g deg against %.6g deg", ErrNoMesh, p.A.Helix, p.B.Helix)
	case p.B.Ring && p.B.Teeth <= p.A.Teeth:
		return fmt.Errorf("%w: a ring of %d teeth round a pinion of %d", ErrNoMesh, p.B.Teeth, p.A.Teeth)
	}
	return nil
}

// The formulas below hold for both kinds of pair, with these two taken as sums
// outside and as differences in a ring (SDP/SI D785 tables 4-4 and 5-1).

func (p Pair) teeth() float64 { return p.B.z() + p.B.outward()*p.A.z() }
func (p Pair) shift() float64 { return p.B.Shift + p.B.outward()*p.A.Shift }

// referenceCentre is the centre distance at which the reference circles touch.
func (p Pair) referenceCentre() float64 { return p.A.moduleT() * p.teeth() / 2 }

// baseCentre is the centre distance below which there is no line of action.
func (p Pair) baseCentre() float64 { return p.referenceCentre() * math.Cos(p.A.alphaT()) }

// angleAt is the working pressure angle in radians at a centre distance.
func (p Pair) angleAt(centre float64) float64 { return math.Acos(p.baseCentre() / centre) }

// nominalAngle is the working pressure angle in radians that the shifts ask for.
func (p Pair) nominalAngle() (float64, error) {
	s := p.A.section()
	angle, _, err := p.nominal(&s)
	return angle, err
}

// nominal is the working pressure angle in radians that the shifts ask for and
// its involute function; the section is that of A.
func (p Pair) nominal(s *section) (angle, value float64, err error) {
	if p.shift() == 0 {
		return s.alpha, s.invAlpha, nil
	}
	value = 2*s.tanAlpha*p.shift()/p.teeth() + s.invAlpha
	if value <= 0 || value > invMostAngle {
		return 0, 0, fmt.Errorf("%w: a shift sum of %.6g gives no working pressure angle", ErrNoMesh, p.shift())
	}
	return invAngle(value), value, nil
}

// invMostAngle is the involute function of the greatest working pressure angle.
var invMostAngle = inv(mostInvoluteAngle * degree)

// NominalCentre returns the centre distance in mm at which the pair, its teeth
// not thinned, runs without backlash:
//
//	inv(aw) = 2 tan(a) (x1 + x2)/(z1 + z2) + inv(a), centre = a0 cos(a)/cos(aw)
//
// with differences in place of the sums for a ring. Source: SDP/SI D785 tables
// 4-3 and 5-1 and ISO 21771 (from memory).
func (p Pair) NominalCentre() (float64, error) {
	if err := p.Check(); err != nil {
		return 0, err
	}
	angle, err := p.nominalAngle()
	if err != nil {
		return 0, err
	}
	return p.baseCentre() / math.Cos(angle), nil
}

// checkCentre refuses a centre distance at which no line of action exists.
func (p Pair) checkCentre(centre float64) error {
	if err := first(p.Check(), length("centre distance", centre)); err != nil {
		return err
	}
	return p.checkReach(centre, p.baseCentre())
}

// checkReach is [Pair.checkCentre] for a pair that is known to be sound, by
// the distance at which its base circles touch.
func (p Pair) checkReach(centre, base float64) error {
	if centre <= base {
		return fmt.Errorf("%w: centre distance %.6g mm, the base circles need more than %.6g mm",
			ErrNoMesh, centre, base)
	}
	if base < centre*cosMostAngle {
		return fmt.Errorf("centre distance is %.6g mm: %w, the reference circles touch at %.6g mm",
			centre, ErrRange, p.referenceCentre())
	}
	return nil
}

// cosMostAngle is the cosine of the greatest working pressure angle.
var cosMostAngle = math.Cos(mostInvoluteAngle * degree)
