package tooth

import (
	"math"
	"slices"
)

// Cutter is one form cutter of a set and the tooth counts it is good for.
// Makers number their sets in opposite directions, so that the range is what
// counts.
type Cutter struct {
	Name     string // in the set's own numbering
	From, To int    // tooth counts
	Exact    int    // count whose form it has; 0 where the source tells none
}

// RackTeeth is the To of a cutter that goes up to the rack.
const RackTeeth = math.MaxInt

// eightCutters is the set of eight involute cutters. Source: Rose, Modern
// Machine-Shop Practice.
var eightCutters = []Cutter{
	{"1", 135, RackTeeth, 200}, {"2", 55, 134, 68}, {"3", 35, 54, 40}, {"4", 26, 34, 29},
	{"5", 21, 25, 22}, {"6", 17, 20, 18}, {"7", 14, 16, 16}, {"8", 12, 13, 13},
}

// fifteenCutters is the set with half numbers between (from memory).
var fifteenCutters = []Cutter{
	{"1", 135, RackTeeth, 0}, {"1.5", 80, 134, 0}, {"2", 55, 79, 0}, {"2.5", 42, 54, 0},
	{"3", 35, 41, 0}, {"3.5", 30, 34, 0}, {"4", 26, 29, 0}, {"4.5", 23, 25, 0},
	{"5", 21, 22, 0}, {"5.5", 19, 20, 0}, {"6", 17, 18, 0}, {"6.5", 15, 16, 0},
	{"7", 14, 14, 0}, {"7.5", 13, 13, 0}, {"8", 12, 12, 0},
}

// letterCutters is the set of 24 for epicycloidal teeth of large size. Source:
// Rose, Modern Machine-Shop Practice, for A to D and M to P; the rest is from
// memory. Clock cutters go by the module and the leaf count instead.
var letterCutters = []Cutter{
	{"A", 12, 12, 0}, {"B", 13, 13, 0}, {"C", 14, 14, 0}, {"D", 15, 15, 0},
	{"E", 16, 16, 0}, {"F", 17, 17, 0}, {"G", 18, 18, 0}, {"H", 19, 19, 0},
	{"I", 20, 20, 0}, {"J", 21, 22, 0}, {"K", 23, 24, 0}, {"L", 25, 26, 0},
	{"M", 27, 29, 0}, {"N", 30, 33, 0}, {"O", 34, 37, 0}, {"P", 38, 42, 0},
	{"Q", 43, 49, 0}, {"R", 50, 59, 0}, {"S", 60, 74, 0}, {"T", 75, 99, 0},
	{"U", 100, 149, 0}, {"V", 150, 249, 0}, {"W", 250, RackTeeth - 1, 0}, {"X", RackTeeth, RackTeeth, 0},
}

// CutterSet is a set of form cutters.
type CutterSet int

// The sets.
const (
	EightCutters   CutterSet = iota // involute, numbers 1 to 8 from the rack down
	EightMetric                     // the same ranges, numbered 1 to 8 upward as many metric sets are
	FifteenCutters                  // involute, with half numbers
	LetterCutters                   // epicycloidal, A to X
)

// Cutters returns a copy of the set, in the order of its names.
func (s CutterSet) Cutters() ([]Cutter, error) {
	switch s {
	case EightCutters:
		return slices.Clone(eightCutters), nil
	case EightMetric:
		set := slices.Clone(eightCutters)
		slices.Reverse(set)
		for i := range set {
			set[i].Name = eightCutters[i].Name
		}
		return set, nil
	case FifteenCutters:
		return slices.Clone(fifteenCutters), nil
	case LetterCutters:
		return slices.Clone(letterCutters), nil
	}
	return nil, within("cutter set", float64(s), 0, float64(LetterCutters))
}

// For returns the cutter of the set for a tooth count, 1 or more; for a helical
// or bevel gear ask with its virtual count, rounded. No standard cutter exists
// below 12 teeth: found is then false.
func (s CutterSet) For(teeth int) (cutter Cutter, found bool, err error) {
	set, err := s.Cutters()
	if err != nil {
		return Cutter{}, false, err
	}
	if teeth != RackTeeth {
		if err := count("tooth count", teeth, 1); err != nil {
			return Cutter{}, false, err
		}
	}
	i := slices.IndexFunc(set, func(c Cutter) bool { return c.From <= teeth && teeth <= c.To })
	if i < 0 {
		return Cutter{}, false, nil
	}
	return set[i], true, nil
}
