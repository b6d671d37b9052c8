package tooth

import (
	"fmt"
	"math/big"
)

// TrainValue returns the value of a train with its arm held, the turns of the
// last wheel to one of the first: the product of drivers over driven, negative
// after an odd number of outside meshes. Counts are 1 or more.
func TrainValue(drivers, driven []int, outsideMeshes int) (*big.Rat, error) {
	value := big.NewRat(1, 1)
	for _, z := range drivers {
		if err := count("driver's teeth", z, 1); err != nil {
			return nil, err
		}
		value.Mul(value, big.NewRat(int64(z), 1))
	}
	for _, z := range driven {
		if err := count("driven teeth", z, 1); err != nil {
			return nil, err
		}
		value.Mul(value, big.NewRat(1, int64(z)))
	}
	if outsideMeshes%2 != 0 {
		value.Neg(value)
	}
	return value, nil
}

// LastRate returns the rate of an epicyclic train's last wheel from its train
// value and the rates of its first wheel and its arm, all in one unit. Source:
// Willis, (last - arm)/(first - arm) = value.
func LastRate(value, firstRate, arm *big.Rat) *big.Rat {
	rate := new(big.Rat).Sub(firstRate, arm)
	return rate.Mul(rate, value).Add(rate, arm)
}

// ArmRate returns the rate of the arm from the train value and the rates of the
// first and last wheel; a train value of 1 leaves the arm free and is refused.
// Source: Willis, solved for the arm.
func ArmRate(value, firstRate, lastRate *big.Rat) (*big.Rat, error) {
	slip := new(big.Rat).Sub(big.NewRat(1, 1), value)
	if slip.Sign() == 0 {
		return nil, fmt.Errorf("train value is 1: %w, the arm turns freely", ErrRange)
	}
	rate := new(big.Rat).Mul(value, firstRate)
	rate.Sub(lastRate, rate)
	return rate.Quo(rate, slip), nil
}
