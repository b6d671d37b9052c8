package tooth

import "fmt"

// IndustrialBacklash returns the least normal backlash in mm recommended for a
// module in mm at a centre distance in mm: 2/3 (0.06 + 0.0005 a + 0.03 m).
// Source: ISO/TR 10064-2 and the metric table of AGMA 2002 (from memory), which
// begin at module 1.5; below that it is an extrapolation, and extrapolated
// says so.
func IndustrialBacklash(module, centre float64) (least float64, extrapolated bool, err error) {
	if err := first(length("module", module), length("centre distance", centre)); err != nil {
		return 0, false, err
	}
	return 2.0 / 3 * (0.06 + 0.0005*centre + 0.03*module), module < 1.5, nil
}

// InstrumentBacklash returns least and most backlash in mm usual in instruments
// and models of a module in mm: 0.04 to 0.10 modules. Common practice.
func InstrumentBacklash(module float64) (least, most float64, err error) {
	if err := length("module", module); err != nil {
		return 0, 0, err
	}
	return 0.04 * module, 0.10 * module, nil
}

// MachineBacklash returns least and most backlash in mm of new gearing of a
// module in mm: 3 to 6 % of the module. Source: Novexa glossary, written for
// girth gears.
func MachineBacklash(module float64) (least, most float64, err error) {
	if err := length("module", module); err != nil {
		return 0, 0, err
	}
	return 0.03 * module, 0.06 * module, nil
}

// finePitchBand is one line of a class: diametral pitches up to finest, and
// backlash in inches.
type finePitchBand struct {
	finest      float64
	least, most float64
}

// finePitchBands is the fine-pitch backlash table of Machinery's Handbook
// (from memory; verify before relying on it).
var finePitchBands = map[byte][]finePitchBand{
	'A': {{45, .004, .008}, {70, .003, .006}, {90, .002, .00375}, {200, .0015, .003}},
	'B': {{60, .002, .004}, {120, .0015, .003}, {200, .001, .002}},
	'C': {{60, .001, .002}, {120, .0007, .0014}, {200, .0004, .0008}},
	'D': {{60, .0005, .001}, {120, .0004, .0008}, {200, .0002, .0004}},
	'E': {{200, 0, 0}},
}

// FinePitchBacklash returns least and most backlash in mm of a mesh of fine
// pitch (20 to 200 teeth to the inch of diameter) in a class of AGMA, 'A' the
// loosest to 'E', which is adjusted to none. Source: Machinery's Handbook (from
// memory; verify before relying on it).
func FinePitchBacklash(class byte, pitch float64) (least, most float64, err error) {
	bands, ok := finePitchBands[class]
	if !ok {
		return 0, 0, fmt.Errorf("backlash class %q: %w, A to E", class, ErrRange)
	}
	if err := within("diametral pitch", pitch, 20, 200); err != nil {
		return 0, 0, err
	}
	i := 0
	for pitch > bands[i].finest {
		i++
	}
	return bands[i].least * inch, bands[i].most * inch, nil
}
