package sky

import "math/big"

// Drift compares a hand's rate with the sky's. Both are in turns a day, exact,
// and signed: counter-clockwise positive. The results are exact.
type Drift struct {
	Model, Sky *big.Rat
}

// Rate returns the rate of a period in turns a day; negative where retrograde.
func (p Period) Rate() *big.Rat {
	r := new(big.Rat).Inv(p.Days)
	if p.Retrograde {
		r.Neg(r)
	}
	return r
}

func (d Drift) difference() *big.Rat { return new(big.Rat).Sub(d.Model, d.Sky) }

// DegreesPerYear returns by how many degrees the hand runs ahead of the sky in
// a tropical year, in the sense of positive rates.
func (d Drift) DegreesPerYear() *big.Rat {
	x := d.difference()
	x.Mul(x, TropicalYear())
	return x.Mul(x, big.NewRat(360, 1))
}

// Degrees returns how far the hand is ahead after so many days.
func (d Drift) Degrees(days *big.Rat) *big.Rat {
	x := d.difference()
	x.Mul(x, days)
	return x.Mul(x, big.NewRat(360, 1))
}

// YearsPerDegree returns after how many tropical years the hand is a degree
// off; ok is false where it never is.
func (d Drift) YearsPerDegree() (years *big.Rat, ok bool) {
	x := d.DegreesPerYear()
	if x.Sign() == 0 {
		return nil, false
	}
	return x.Inv(x.Abs(x)), true
}

// YearsPerDay returns after how many tropical years the hand shows what the sky
// shows a day earlier or later; ok is false where it never does.
func (d Drift) YearsPerDay() (years *big.Rat, ok bool) {
	x := d.difference()
	if x.Sign() == 0 || d.Sky.Sign() == 0 {
		return nil, false
	}
	x.Quo(d.Sky, x)
	x.Abs(x)
	return x.Quo(x, TropicalYear()), true
}

// PPM returns the error of the hand's period against the sky's in parts per
// million, positive where the hand is slow; ok is false where either stands
// still or they turn opposite ways.
func (d Drift) PPM() (ppm *big.Rat, ok bool) {
	if d.Model.Sign()*d.Sky.Sign() <= 0 {
		return nil, false
	}
	x := new(big.Rat).Quo(d.Sky, d.Model)
	x.Sub(x, big.NewRat(1, 1))
	return x.Mul(x, big.NewRat(1_000_000, 1)), true
}
