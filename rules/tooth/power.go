package tooth

import "math"

// Drive is a kind of transmission, for its efficiency.
type Drive int

// The kinds of transmission.
const (
	SpurDrive Drive = iota
	BevelDrive
	ChainDrive
	ClockDrive // a mesh of a clock train with its pivots
)

// efficiencies is low and high by kind: handbooks (from memory), the clock
// train common practice. A worm's depends on its lead: [WormEfficiency].
var efficiencies = [...]struct{ low, high float64 }{
	SpurDrive:  {0.98, 0.99},
	BevelDrive: {0.97, 0.98},
	ChainDrive: {0.97, 0.98},
	ClockDrive: {0.90, 0.95},
}

// Efficiency returns which part of the power at least and at most passes
// through one mesh or chain of the kind in good order. Source: handbooks (from
// memory); the clock train is common practice.
func Efficiency(kind Drive) (low, high float64, err error) {
	if err := within("kind of drive", float64(kind), 0, float64(len(efficiencies)-1)); err != nil {
		return 0, 0, err
	}
	return efficiencies[kind].low, efficiencies[kind].high, nil
}

// TorqueThrough returns the torque in N mm behind steps of equal efficiency
// (above 0, at most 1): T ratio efficiency^steps, where ratio is the turns of
// the first shaft to one of the last.
func TorqueThrough(torque, ratio, efficiency float64, steps int) (float64, error) {
	err := first(
		within("torque in N mm", torque, 0, 1e12), within("ratio", ratio, 1e-9, 1e9),
		within("efficiency", efficiency, 1e-3, 1), count("steps", steps, 0),
	)
	if err != nil {
		return 0, err
	}
	return torque * ratio * math.Pow(efficiency, float64(steps)), nil
}
