package tooth

import "math"

// lewisFactors is the form factor Y of 20 deg full-depth teeth by tooth count,
// the rack last. Source: Shigley Table 14-2 (from memory).
var lewisFactors = []struct{ teeth, y float64 }{
	{12, .245}, {13, .261}, {14, .277}, {15, .290}, {16, .296}, {17, .303}, {18, .309}, {19, .314},
	{20, .322}, {21, .328}, {22, .331}, {24, .337}, {26, .346}, {28, .353}, {30, .359}, {34, .371},
	{38, .384}, {43, .397}, {50, .409}, {60, .422}, {75, .435}, {100, .447}, {150, .460}, {300, .472},
	{math.Inf(1), .485},
}

// LewisFactor returns the Lewis form factor Y of a 20 deg full-depth tooth, for
// 12 teeth or more (a virtual count for helical and bevel gears), interpolated
// over 1/z between the values of Shigley Table 14-2 (from memory), which has
// none below 12.
func LewisFactor(teeth float64) (float64, error) {
	if err := within("tooth count", teeth, lewisFactors[0].teeth, mostTeeth); err != nil {
		return 0, err
	}
	i := 1
	for teeth > lewisFactors[i].teeth {
		i++
	}
	low, high := lewisFactors[i-1], lewisFactors[i]
	share := (1/low.teeth - 1/teeth) / (1/low.teeth - 1/high.teeth)
	return low.y + share*(high.y-low.y), nil
}

// TangentialForce returns the force in N at the pitch circle, of so many mm
// diameter, for a torque in N mm, 0 or more: 2 T/d. Source: Shigley section
// 13-14 (from memory).
func TangentialForce(torque, diameter float64) (float64, error) {
	if err := first(length("pitch diameter", diameter), within("torque in N mm", torque, 0, 1e12)); err != nil {
		return 0, err
	}
	return 2 * torque / diameter, nil
}

// LewisStress returns the bending stress in MPa at the root of a tooth that
// carries force N over a face of so many mm, at a module in mm and a Lewis form
// factor: F/(b m Y). Multiply by [VelocityFactor] where the wheel runs fast.
// Source: Shigley eq 14-2 (from memory).
func LewisStress(force, face, module, factor float64) (float64, error) {
	err := first(
		within("force in N", force, 0, 1e12), length("face width", face),
		length("module", module), between("form factor", factor, 0.01, 1),
	)
	if err != nil {
		return 0, err
	}
	return force / (face * module * factor), nil
}

// LewisForce returns the force in N at which a tooth reaches a stress in MPa:
// the inverse of [LewisStress].
func LewisForce(stress, face, module, factor float64) (float64, error) {
	err := first(
		within("stress in MPa", stress, 0, 1e6), length("face width", face),
		length("module", module), between("form factor", factor, 0.01, 1),
	)
	if err != nil {
		return 0, err
	}
	return stress * face * module * factor, nil
}

// VelocityFactor returns by what the stress of cut teeth grows at a pitch line
// speed in m/s: (6.096 + V)/6.096, which is (1200 + V)/1200 in ft/min. Source:
// Shigley eq 14-4 (from memory), whose metric form rounds to 6.1.
func VelocityFactor(speed float64) (float64, error) {
	const cutTeeth = 1200 * 0.3048 / 60
	if err := within("pitch line speed in m/s", speed, 0, 1000); err != nil {
		return 0, err
	}
	return (cutTeeth + speed) / cutTeeth, nil
}

// PitchLineSpeed returns the speed in m/s of a pitch circle of so many mm
// diameter at so many rpm, 0 or more: pi d n/60. Source: Shigley eq 13-34 (from
// memory).
func PitchLineSpeed(diameter, rpm float64) (float64, error) {
	if err := first(length("pitch diameter", diameter), within("rpm", rpm, 0, 1e6)); err != nil {
		return 0, err
	}
	return math.Pi * diameter * rpm / 60_000, nil
}
