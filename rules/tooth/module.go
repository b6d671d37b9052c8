package tooth

import (
	"math"
	"slices"
)

// inch is 25.4 mm, and so the module of one tooth to the inch of diameter.
const inch = 25.4

// Choice says how a module stands in the published series.
type Choice int

// The standing of a module, best first.
const (
	FirstChoice  Choice = iota + 1 // series I of at least one standard
	SecondChoice                   // series II
	Avoid                          // listed, but to be avoided
	NoStandard                     // in none of them
)

// String names the choice as the standards do.
func (c Choice) String() string {
	switch c {
	case FirstChoice:
		return "series I"
	case SecondChoice:
		return "series II"
	case Avoid:
		return "series II, to be avoided"
	}
	return "no standard series"
}

// series is one list of one standard; all are from memory. DIN and JIS
// disagree below 1 mm, so that the union counts.
type series struct {
	standard string
	choice   Choice
	modules  []float64
}

var moduleSeries = []series{
	{"ISO 54:1996", FirstChoice, []float64{1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50}},
	{"ISO 54:1996", SecondChoice, []float64{1.125, 1.375, 1.75, 2.25, 2.75, 3.5, 4.5, 5.5, 7, 9, 11, 14, 18, 22, 28, 36, 45}},
	{"ISO 54:1996", Avoid, []float64{6.5}},
	{"JIS B 1701-2", FirstChoice, []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8}},
	{"JIS B 1701-2", SecondChoice, []float64{0.15, 0.25, 0.35, 0.45, 0.55, 0.7, 0.75, 0.9}},
	{"DIN 780-1", FirstChoice, []float64{
		0.05, 0.06, 0.08, 0.1, 0.12, 0.16, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9,
		1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 60,
	}},
	{"DIN 780-1", SecondChoice, []float64{
		0.055, 0.07, 0.09, 0.11, 0.14, 0.18, 0.22, 0.28, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95,
		1.125, 1.375, 1.75, 2.25, 2.75, 3.5, 4.5, 5.5, 7, 9, 11, 14, 18, 22, 28, 36, 45, 55, 70,
	}},
}

// sameModule holds where two modules differ by rounding alone.
func sameModule(a, b float64) bool { return math.Abs(a-b) <= 1e-6*b }

// ModuleChoice returns the best standing of a module in mm among ISO 54:1996,
// JIS B 1701-2 and DIN 780-1 (all from memory), and the standards that give it
// that standing, in this order.
func ModuleChoice(module float64) (Choice, []string, error) {
	if err := length("module", module); err != nil {
		return 0, nil, err
	}
	best, standards := NoStandard, []string(nil)
	for _, s := range moduleSeries {
		if !slices.ContainsFunc(s.modules, func(m float64) bool { return sameModule(module, m) }) {
			continue
		}
		if s.choice < best {
			best, standards = s.choice, nil
		}
		if s.choice == best {
			standards = append(standards, s.standard)
		}
	}
	return best, standards, nil
}

// NearestModule returns the standard module in mm nearest to the given one by
// ratio, series I before series II where both are as near; what is to be
// avoided is never offered.
func NearestModule(module float64) (float64, error) {
	if err := length("module", module); err != nil {
		return 0, err
	}
	var nearest float64
	distance, choice := math.Inf(1), NoStandard
	for _, s := range moduleSeries {
		if s.choice == Avoid {
			continue
		}
		for _, m := range s.modules {
			d := math.Abs(math.Log(module / m))
			if d < distance-1e-9 || d < distance+1e-9 && s.choice < choice {
				nearest, distance, choice = m, d, s.choice
			}
		}
	}
	return nearest, nil
}
