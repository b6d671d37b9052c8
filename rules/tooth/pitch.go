package tooth

import (
	"cmp"
	"math"
	"slices"
)

// diametralPitches is the list of Shigley Table 13-2 (from memory), coarse and
// fine, with 72, which is stocked as well.
var diametralPitches = []float64{
	2, 2.25, 2.5, 3, 4, 6, 8, 10, 12, 16,
	20, 24, 32, 40, 48, 64, 72, 80, 96, 120, 150, 200,
}

// ModuleOfPitch returns the module in mm of a diametral pitch (teeth to the
// inch of diameter): m = 25.4/P.
func ModuleOfPitch(pitch float64) (float64, error) {
	if err := between("diametral pitch", pitch, 1e-3, mostLength); err != nil {
		return 0, err
	}
	return inch / pitch, nil
}

// PitchOfModule returns the diametral pitch of a module in mm: P = 25.4/m.
func PitchOfModule(module float64) (float64, error) {
	if err := length("module", module); err != nil {
		return 0, err
	}
	return inch / module, nil
}

// NearestPitch returns the standard diametral pitch nearest to a module in mm,
// and by which part of itself the module of that pitch is larger than the
// given one (0.058: 5.8 % larger). A small difference that is not nothing
// makes a cutter of the wrong kind pass unnoticed.
func NearestPitch(module float64) (pitch, larger float64, err error) {
	if err := length("module", module); err != nil {
		return 0, 0, err
	}
	pitch = slices.MinFunc(diametralPitches, func(p, q float64) int {
		return cmp.Compare(math.Abs(math.Log(inch/p/module)), math.Abs(math.Log(inch/q/module)))
	})
	return pitch, inch/pitch/module - 1, nil
}

// DisguisedPitch reports whether a module that no standard knows is really a
// standard diametral pitch: the module of one (0.5292 for 48, to the 0.1 %
// that rounding to three digits leaves), or its number written in place of the
// module (48). Pitches whose number is a standard module as well, such as 20,
// are not suspected.
func DisguisedPitch(module float64) (pitch float64, disguised bool, err error) {
	choice, _, err := ModuleChoice(module)
	if err != nil || choice != NoStandard {
		return 0, false, err
	}
	for _, p := range diametralPitches {
		if sameModule(module, p) || math.Abs(module*p/inch-1) <= 1e-3 {
			return p, true, nil
		}
	}
	return 0, false, nil
}
