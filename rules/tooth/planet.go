package tooth

import "math"

// Planetary is a sun, planets and a ring on one axis, with standard teeth.
// Source of its conditions: SDP/SI D785 eq 13-5 to 13-10.
type Planetary struct {
	Sun, Planet, Ring int
}

// Check refuses counts that no planetary set has.
func (p Planetary) Check() error {
	return first(
		count("sun teeth", p.Sun, 1), count("planet teeth", p.Planet, 1), count("ring teeth", p.Ring, 1),
	)
}

// Coaxial reports whether planets of standard teeth mesh with both the sun and
// the ring: zr = zs + 2 zp. Shifted teeth need the two centre distances
// compared instead ([Pair.NominalCentre]).
func (p Planetary) Coaxial() (bool, error) {
	if err := p.Check(); err != nil {
		return false, err
	}
	return p.Ring == p.Sun+2*p.Planet, nil
}

// Assembles reports whether so many planets can be put in at equal spacing:
// (zs + zr)/n is whole.
func (p Planetary) Assembles(planets int) (bool, error) {
	if err := first(p.Check(), count("number of planets", planets, 1)); err != nil {
		return false, err
	}
	return (p.Sun+p.Ring)%planets == 0, nil
}

// UnitPosition returns the degrees of which every angle between two planets is
// a multiple: 360/(zs + zr). Computed from the assembly condition.
func (p Planetary) UnitPosition() (float64, error) {
	if err := p.Check(); err != nil {
		return 0, err
	}
	return 360 / float64(p.Sun+p.Ring), nil
}

// AssemblesAt reports whether two planets can stand spacing degrees apart, to
// a thousandth of the unit position, and by how many degrees the nearest
// position that fits lies further on (below 0: back). At half that angle t
// the published condition reads: (zs + zr) t/180 is whole.
func (p Planetary) AssemblesAt(spacing float64) (fits bool, move float64, err error) {
	unit, err := p.UnitPosition()
	if err == nil {
		err = between("spacing in degrees", spacing, 0, 360)
	}
	if err != nil {
		return false, 0, err
	}
	move = math.Round(spacing/unit)*unit - spacing
	return math.Abs(move) <= 1e-3*unit, move, nil
}

// PlanetsClear reports whether so many equally spaced planets of standard
// teeth stay off each other: zp + 2 < (zs + zp) sin(180/n), whose right side is
// limit.
func (p Planetary) PlanetsClear(planets int) (clear bool, limit float64, err error) {
	if err := first(p.Check(), count("number of planets", planets, 2)); err != nil {
		return false, 0, err
	}
	limit = float64(p.Sun+p.Planet) * math.Sin(math.Pi/float64(planets))
	return float64(p.Planet+2) < limit, limit, nil
}

// PlanetGap returns the distance in mm between the tips of two planets of so
// many mm tip diameter, spacing degrees apart at a centre distance in mm from
// the sun's axis: 2 a sin(t) - da, t half the spacing; below 0 they collide.
// A maker asks for half a module at least (planetary note of jyzdl); a whole
// module is common practice.
func PlanetGap(centre, spacing, tipDiameter float64) (float64, error) {
	err := first(
		length("centre distance", centre), length("tip diameter", tipDiameter),
		between("spacing in degrees", spacing, 0, 360),
	)
	if err != nil {
		return 0, err
	}
	return 2*centre*math.Sin(spacing/2*degree) - tipDiameter, nil
}
