// Package chain holds the formulas of roller chains and their sprockets: the
// sizes of ISO 606, the diameters of a sprocket, the length of a chain over
// two or more sprockets, and what follows from it.
//
// Lengths are mm or, where a name or comment says so, pitches of the chain.
// Angles are degrees. A length in pitches is a number of links, whole or not.
// Arguments out of range give an error that says what was wrong; no function
// returns NaN or an infinity.
package chain

import (
	"fmt"
	"math"
)

// Bounds of what the formulas accept; far outside anything that is made, they
// keep every result finite.
const (
	LeastTeeth = 3   // a sprocket's pitch polygon has at least three sides
	mostTeeth  = 1e6 // far above any sprocket
	mostLength = 1e9 // mm or pitches
	leastPitch = 1e-6
)

// RangeError is an argument outside its range.
type RangeError struct {
	What  string  // the argument, in the trade's words
	Value float64 // what was given
	Want  string  // what is accepted
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s is %v, must be %s", e.What, e.Value, e.Want)
}

func checkTeeth(teeth ...int) error {
	for _, z := range teeth {
		if z < LeastTeeth || z > mostTeeth {
			return &RangeError{"number of sprocket teeth", float64(z), fmt.Sprintf("from %d to %d", LeastTeeth, int(mostTeeth))}
		}
	}
	return nil
}

func checkPitch(p float64) error {
	if !(p >= leastPitch && p <= mostLength) {
		return &RangeError{"chain pitch", p, fmt.Sprintf("from %g to %g mm", leastPitch, mostLength)}
	}
	return nil
}

// checkLength accepts a length that is more than zero.
func checkLength(what string, v float64) error {
	if !(v > 0 && v <= mostLength) {
		return &RangeError{what, v, fmt.Sprintf("above 0 and at most %g", mostLength)}
	}
	return nil
}

// PitchRadius is the radius of the circle through the pins on a sprocket, in
// pitches: R = 1/(2 sin(180/z)). It fails for teeth below [LeastTeeth].
// Source: the regular polygon of z sides of one pitch.
func PitchRadius(teeth int) (float64, error) {
	if err := checkTeeth(teeth); err != nil {
		return 0, err
	}
	return pitchRadius(teeth), nil
}

func pitchRadius(teeth int) float64 { return 0.5 / math.Sin(math.Pi/float64(teeth)) }

func degrees(rad float64) float64 { return rad * 180 / math.Pi }
func radians(deg float64) float64 { return deg * math.Pi / 180 }
