package tooth

import "fmt"

// Rack is a basic rack: the tooth form a gear of infinite size would have.
// Lengths are in modules.
type Rack struct {
	PressureAngle float64 // degrees
	Addendum      float64
	Clearance     float64
	Dedendum      float64
	Fillet        float64 // radius at the root
}

// basicRacks is ISO 53 (from memory).
var basicRacks = map[byte]Rack{
	'A': {20, 1, 0.25, 1.25, 0.38},
	'B': {20, 1, 0.25, 1.25, 0.30},
	'C': {20, 1, 0.25, 1.25, 0.25},
	'D': {20, 1, 0.40, 1.40, 0.39},
}

// BasicRack returns profile 'A', 'B', 'C' or 'D' of ISO 53 (from memory).
func BasicRack(profile byte) (Rack, error) {
	rack, ok := basicRacks[profile]
	if !ok {
		return Rack{}, fmt.Errorf("basic rack profile %q: %w, A to D", profile, ErrRange)
	}
	return rack, nil
}

// WorkshopDepth returns the whole depth in mm that metric cutters are commonly
// ground to: 2.4 modules below module 1.25, else 2.25. Source:
// metrication.com, Metric Gears.
func WorkshopDepth(module float64) (float64, error) {
	if err := length("module", module); err != nil {
		return 0, err
	}
	if module < 1.25 {
		return 2.4 * module, nil
	}
	return 2.25 * module, nil
}

// FinePitchDepth returns dedendum and whole depth in mm of inch gears of fine
// pitch, 20 teeth to the inch of diameter or finer: 1.2/P + 0.002 in and
// 2.2/P + 0.002 in. Source: ANSI/AGMA 1003 and Machinery's Handbook (from
// memory).
func FinePitchDepth(pitch float64) (dedendum, depth float64, err error) {
	if err := within("diametral pitch", pitch, 20, mostLength); err != nil {
		return 0, 0, err
	}
	return (1.2/pitch + 0.002) * inch, (2.2/pitch + 0.002) * inch, nil
}
