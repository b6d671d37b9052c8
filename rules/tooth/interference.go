package tooth

import "math"

// The limits below ask from which tooth count on the tips of a pair of
// unshifted gears at their standard centres stay off the flank below the base
// circle. Any shift and centre distance is judged by [Pair.At] instead.
// Source of all: Shigley section 13-7, eq 13-10 to 13-13 (from memory).

// LeastPinion returns the least tooth count, not rounded, of a pinion that runs
// free with a wheel of ratio times its teeth (1 or more; infinity means a
// rack), at a pressure angle in degrees with an addendum in modules:
//
//	2k/((1 + 2i) sin2(a)) (i + sqrt(i^2 + (1 + 2i) sin2(a))), 2k/sin2(a) for a rack
func LeastPinion(ratio, angle, addendum float64) (float64, error) {
	if err := checkInterference(angle, addendum); err != nil {
		return 0, err
	}
	s2 := sin2(angle)
	if math.IsInf(ratio, 1) {
		return 2 * addendum / s2, nil
	}
	if err := within("ratio", ratio, 1, 1e9); err != nil {
		return 0, err
	}
	w := 1 + 2*ratio
	return 2 * addendum / (w * s2) * (ratio + math.Sqrt(ratio*ratio+w*s2)), nil
}

// LargestWheel returns the largest tooth count, not rounded, of a wheel that
// runs free with a pinion of so many teeth, at a pressure angle in degrees with
// an addendum in modules; infinity where even a rack does:
//
//	(z^2 sin2(a) - 4k^2)/(4k - 2 z sin2(a))
//
// Where it is below the pinion's own count, no wheel of at least that count
// runs free.
func LargestWheel(pinion int, angle, addendum float64) (float64, error) {
	err := first(count("pinion teeth", pinion, 1), checkInterference(angle, addendum))
	if err != nil {
		return 0, err
	}
	z, s2 := float64(pinion), sin2(angle)
	denominator := 4*addendum - 2*z*s2
	if denominator <= 0 {
		return math.Inf(1), nil
	}
	return math.Max(0, (z*z*s2-4*addendum*addendum)/denominator), nil
}

func sin2(angle float64) float64 {
	sin := math.Sin(angle * degree)
	return sin * sin
}

func checkInterference(angle, addendum float64) error {
	return first(pressureAngle(angle), between("addendum in modules", addendum, 0, 5))
}
