package chain

import (
	"fmt"
	"math"
)

// Length is the exact length in pitches of an open chain over two sprockets at
// the centre distance c, in pitches, by tangents to the pitch circles:
//
//	L = 2c cos b + (z1+z2)/2 + (z2-z1) b/180,  sin b = (R2-R1)/c
//
// It fails where c is not above the sum of the pitch radii: the sprockets would
// run into each other. Source: computed from the formula; the wraps are counted
// in teeth.
func Length(z1, z2 int, c float64) (float64, error) {
	r1, r2, err := pair(z1, z2, c)
	if err != nil {
		return 0, err
	}
	return openLength(z1, z2, r1, r2, c), nil
}

// CrossedLength is the exact length in pitches of a chain that crosses itself
// between two sprockets at the centre distance c, in pitches:
//
//	L = 2c cos b + (z1+z2)/2 + (z1+z2) b/180,  sin b = (R1+R2)/c
//
// It fails where c is not above the sum of the pitch radii. Source: computed
// from the formula.
func CrossedLength(z1, z2 int, c float64) (float64, error) {
	r1, r2, err := pair(z1, z2, c)
	if err != nil {
		return 0, err
	}
	return crossedLength(z1, z2, r1, r2, c), nil
}

// LengthApprox is the length in pitches by the handbook series, c in pitches:
// L = 2c + (z1+z2)/2 + ((z2-z1)/(2 pi))^2/c.
// Source: Shigley, Mechanical Engineering Design, eq. 17-34, from memory; Ramsey's
// page gives the same with a table.
func LengthApprox(z1, z2 int, c float64) (float64, error) {
	if _, _, err := pair(z1, z2, c); err != nil {
		return 0, err
	}
	k := float64(z2-z1) / (2 * math.Pi)
	return 2*c + float64(z1+z2)/2 + k*k/c, nil
}

// Centre is the centre distance in pitches at which an open chain of the given
// length in pitches lies exactly tight, found from the tangent length. It fails
// where the chain is too short for the sprockets to clear each other. Source:
// computed from the formula of [Length].
func Centre(z1, z2 int, length float64) (float64, error) {
	return centre(z1, z2, length, openLength)
}

// CrossedCentre is [Centre] for a crossed chain.
func CrossedCentre(z1, z2 int, length float64) (float64, error) {
	return centre(z1, z2, length, crossedLength)
}

// CentreApprox is the centre distance in pitches for a length in pitches by the
// handbook's solution of its series:
//
//	c = (A + sqrt(A^2 - 8((z2-z1)/(2 pi))^2))/4,  A = L - (z1+z2)/2
//
// It fails where the chain is too short. Source: Shigley, Mechanical Engineering
// Design, eq. 17-35, from memory.
func CentreApprox(z1, z2 int, length float64) (float64, error) {
	if err := checkTeeth(z1, z2); err != nil {
		return 0, err
	}
	if err := checkLength("chain length in pitches", length); err != nil {
		return 0, err
	}
	a := length - float64(z1+z2)/2
	k := float64(z2-z1) / (2 * math.Pi)
	under := a*a - 8*k*k
	if a <= 0 || under < 0 {
		return 0, &RangeError{"chain length in pitches", length, fmt.Sprintf("longer for sprockets of %d and %d teeth", z1, z2)}
	}
	return (a + math.Sqrt(under)) / 4, nil
}

// EvenLinks is the even number of links nearest to a length in pitches, the
// lower one halfway between two. An odd number would need an offset link.
func EvenLinks(length float64) (int, error) {
	if err := checkLength("chain length in pitches", length); err != nil {
		return 0, err
	}
	const slip = 1e-9 // a length that is odd but for rounding is halfway
	return max(2, 2*int(math.Ceil((length-1-slip)/2))), nil
}

func openLength(z1, z2 int, r1, r2, c float64) float64 {
	d := r2 - r1
	return 2*tangent(c, d) + float64(z1+z2)/2 + float64(z2-z1)*math.Asin(d/c)/math.Pi
}

func crossedLength(z1, z2 int, r1, r2, c float64) float64 {
	s := r1 + r2
	return 2*tangent(c, s) + float64(z1+z2)*(0.5+math.Asin(min(1, s/c))/math.Pi)
}

// tangent is the length of the common tangent: sqrt(c^2 - d^2), |d| <= c.
func tangent(c, d float64) float64 {
	return math.Sqrt(max(0, (c-d)*(c+d)))
}

// pair checks two sprockets at a centre distance and gives their pitch radii.
func pair(z1, z2 int, c float64) (r1, r2 float64, err error) {
	if err := checkTeeth(z1, z2); err != nil {
		return 0, 0, err
	}
	r1, r2 = pitchRadius(z1), pitchRadius(z2)
	if !(c > r1+r2 && c <= mostLength) {
		return 0, 0, &RangeError{"centre distance in pitches", c,
			fmt.Sprintf("above %.4f, where sprockets of %d and %d teeth touch, and at most %g", r1+r2, z1, z2, mostLength)}
	}
	return r1, r2, nil
}

// centre finds by halving where the length, which grows with the centre
// distance from the touching of the pitch circles on, has the wanted value.
func centre(z1, z2 int, length float64, lengthAt func(z1, z2 int, r1, r2, c float64) float64) (float64, error) {
	if err := checkTeeth(z1, z2); err != nil {
		return 0, err
	}
	if err := checkLength("chain length in pitches", length); err != nil {
		return 0, err
	}
	r1, r2 := pitchRadius(z1), pitchRadius(z2)
	lo := r1 + r2
	if least := lengthAt(z1, z2, r1, r2, lo); length <= least {
		return 0, &RangeError{"chain length in pitches", length,
			fmt.Sprintf("above %.4f, where sprockets of %d and %d teeth touch", least, z1, z2)}
	}
	// Whatever the tangents fall short of twice the distance, the wraps make
	// up for: the distance is below half the length.
	hi := max(lo, length/2)
	for range 200 {
		mid := lo + (hi-lo)/2
		if mid <= lo || mid >= hi {
			break
		}
		if lengthAt(z1, z2, r1, r2, mid) < length {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + (hi-lo)/2, nil
}
