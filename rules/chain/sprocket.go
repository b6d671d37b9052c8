package chain

import "math"

// PitchDiameter is the diameter of the circle through the pins on a sprocket of
// the chain pitch p, mm: d = p/sin(180/z).
// Source: ISO 606, as in Tandwiel, chain wheels.
func PitchDiameter(pitch float64, teeth int) (float64, error) {
	if err := checkSprocket(pitch, teeth); err != nil {
		return 0, err
	}
	return pitch / math.Sin(math.Pi/float64(teeth)), nil
}

// RootDiameter is the diameter at the bottom of the tooth gaps, mm: df = d - d1,
// where roller is d1. It fails where nothing of the sprocket would be left.
// Source: ISO 606, as in Tandwiel, chain wheels.
func RootDiameter(pitch float64, teeth int, roller float64) (float64, error) {
	d, err := PitchDiameter(pitch, teeth)
	if err != nil {
		return 0, err
	}
	if err := checkRoller(pitch, roller); err != nil {
		return 0, err
	}
	return d - roller, nil
}

// TipDiameters are the least and the greatest diameter over the teeth, mm:
// d + p(1 - 1.6/z) - d1 and d + 1.25 p - d1, where roller is d1.
// Source: ISO 606, as in Tandwiel, chain wheels; the term 1.6/z from memory.
func TipDiameters(pitch float64, teeth int, roller float64) (least, greatest float64, err error) {
	df, err := RootDiameter(pitch, teeth, roller)
	if err != nil {
		return 0, 0, err
	}
	return df + pitch*(1-1.6/float64(teeth)), df + 1.25*pitch, nil
}

// OutsideDiameter is the diameter over the teeth in American practice, mm:
// p(0.6 + cot(180/z)). Source: ANSI B29.1, from memory.
func OutsideDiameter(pitch float64, teeth int) (float64, error) {
	if err := checkSprocket(pitch, teeth); err != nil {
		return 0, err
	}
	return pitch * (0.6 + 1/math.Tan(math.Pi/float64(teeth))), nil
}

// Tooth width as a part of the chain's inner width, single strand, up to and
// above a pitch of 12.7 mm. Source: Tandwiel, chain wheels.
const (
	ToothWidthFine   = 0.93
	ToothWidthCoarse = 0.95
	finePitch        = 12.7
)

// ToothWidth is the width of a sprocket's teeth, mm, for a single chain of the
// given inner width b1: 0.93 b1 up to a pitch of 12.7 mm, 0.95 b1 above.
// Source: Tandwiel, chain wheels.
func ToothWidth(pitch, innerWidth float64) (float64, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	if err := checkLength("inner width of the chain", innerWidth); err != nil {
		return 0, err
	}
	if pitch <= finePitch {
		return ToothWidthFine * innerWidth, nil
	}
	return ToothWidthCoarse * innerWidth, nil
}

// ChordalRipple is how far the chain's speed varies as the sprocket's polygon
// turns: drop is (greatest - least)/greatest = 1 - cos(180/z), spread is
// (greatest - least)/mean, both as parts of one.
// Source: computed from the formula; the chain's speed goes as the cosine of the
// angle from the middle of a pitch, between -180/z and 180/z.
func ChordalRipple(teeth int) (drop, spread float64, err error) {
	if err := checkTeeth(teeth); err != nil {
		return 0, 0, err
	}
	half := math.Pi / float64(teeth)
	s := math.Sin(half / 2)
	drop = 2 * s * s // 1 - cos, without its loss of digits for many teeth
	return drop, drop * half / math.Sin(half), nil
}

func checkSprocket(pitch float64, teeth int) error {
	if err := checkPitch(pitch); err != nil {
		return err
	}
	return checkTeeth(teeth)
}

func checkRoller(pitch, roller float64) error {
	if !(roller > 0 && roller < pitch) {
		return &RangeError{"roller diameter", roller, "above 0 and below the pitch"}
	}
	return nil
}
