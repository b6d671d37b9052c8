package tooth

import (
	"cmp"
	"errors"
	"fmt"
	"math"
)

var (
	// ErrRange is wrapped by every error that refuses an argument.
	ErrRange = errors.New("outside its range")
	// ErrNoMesh is wrapped by every error that refuses a pair of sound parts.
	ErrNoMesh = errors.New("the pair cannot mesh")
)

const (
	mostTeeth = 1_000_000
	degree    = math.Pi / 180

	// rounding is what a condition may fail by when its bound was computed.
	rounding = 1e-9

	// The lengths taken, in mm, keep every product and quotient finite.
	leastLength = 1e-9
	mostLength  = 1e6
)

// within refuses v outside least..most, and NaN.
func within(what string, v, least, most float64) error {
	if v >= least && v <= most {
		return nil
	}
	return fmt.Errorf("%s is %.6g: %w, %.6g to %.6g", what, v, ErrRange, least, most)
}

// between refuses v unless it lies strictly between low and high.
func between(what string, v, low, high float64) error {
	if v > low && v < high {
		return nil
	}
	return fmt.Errorf("%s is %.6g: %w, above %.6g and below %.6g", what, v, ErrRange, low, high)
}

// length refuses a length that is not positive and of this world.
func length(what string, v float64) error {
	if v >= leastLength && v <= mostLength {
		return nil
	}
	return fmt.Errorf("%s is %.6g mm: %w, above 0 and up to %.6g mm", what, v, ErrRange, mostLength)
}

// count refuses a whole number below least.
func count(what string, n, least int) error {
	if n >= least && n <= mostTeeth {
		return nil
	}
	return fmt.Errorf("%s is %d: %w, %d or more", what, n, ErrRange, least)
}

// pressureAngle refuses what no tooth is cut with.
func pressureAngle(angle float64) error {
	return within("pressure angle in degrees", angle, 5, 45)
}

// first returns the first error that is not nil.
func first(errs ...error) error { return cmp.Or(errs...) }

// bisect returns where the monotone f changes sign between low and high, to
// the last bit that matters; the caller has made sure that it does.
func bisect(f func(float64) float64, low, high float64) float64 {
	rising := f(low) < f(high)
	for range 200 {
		middle := low + (high-low)/2
		if middle == low || middle == high {
			break
		}
		if (f(middle) < 0) == rising {
			low = middle
		} else {
			high = middle
		}
	}
	return low + (high-low)/2
}
