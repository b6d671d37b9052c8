package tooth

import (
	"fmt"
	"math"
)

// backlashAt is the play in mm along the working circles at a centre distance.
// Opening the centres loosens an outside pair and tightens a ring pair.
func (p Pair) backlashAt(centre float64) float64 {
	nominal := inv(p.A.alphaT()) + 2*p.A.tanAlpha()*p.shift()/p.teeth()
	thinning := (p.A.Thinning + p.B.Thinning) * centre / p.referenceCentre()
	return p.B.outward()*2*centre*(inv(p.angleAt(centre))-nominal) + thinning
}

// CentreForBacklash returns the centre distance in mm at which the pair has a
// backlash of so many mm, 0 or more, along its working circles. For 0 it is
// the distance the centres must never cross: the least for an outside pair,
// the greatest for a ring. Computed from the exact backlash of [Pair.At].
func (p Pair) CentreForBacklash(backlash float64) (float64, error) {
	if err := first(p.Check(), within("backlash in mm", backlash, 0, mostLength)); err != nil {
		return 0, err
	}
	low := p.baseCentre() * (1 + 1e-12)
	high := p.baseCentre() / math.Cos(mostInvoluteAngle*degree)
	excess := func(centre float64) float64 { return p.backlashAt(centre) - backlash }
	if excess(low)*excess(high) > 0 {
		return 0, fmt.Errorf("%w: no centre distance gives a backlash of %.6g mm", ErrNoMesh, backlash)
	}
	return bisect(excess, low, high), nil
}

// ApproxBacklash returns the backlash in mm along the pitch circles that
// opening the centres by so many mm adds: j = 2 da tan(a). Source: SDP/SI D190
// eq 21-22c and QTC Q410 eq 14-2.
func ApproxBacklash(opening, angle float64) (float64, error) {
	if err := first(pressureAngle(angle), within("opening in mm", opening, -mostLength, mostLength)); err != nil {
		return 0, err
	}
	return 2 * opening * math.Tan(angle*degree), nil
}

// OpeningForBacklash returns by how many mm the centres must be opened for so
// many mm of backlash more: the inverse of [ApproxBacklash], 1.374 j at 20 deg.
// Source: SDP/SI D190 eq 21-22c and QTC Q410 eq 14-3.
func OpeningForBacklash(backlash, angle float64) (float64, error) {
	if err := first(pressureAngle(angle), within("backlash in mm", backlash, -mostLength, mostLength)); err != nil {
		return 0, err
	}
	return backlash / (2 * math.Tan(angle*degree)), nil
}

// NormalBacklash returns the play along the line of action in mm that goes
// with a backlash along the pitch circles, at the pressure angle in degrees
// there: jn = j cos(a). Source: SDP/SI D785 section 14 (from memory).
func NormalBacklash(backlash, angle float64) (float64, error) {
	if err := first(pressureAngle(angle), within("backlash in mm", backlash, -mostLength, mostLength)); err != nil {
		return 0, err
	}
	return backlash * math.Cos(angle*degree), nil
}

// PlayAngle returns the degrees that a gear of so many mm pitch diameter can
// turn in a backlash of so many mm: 360 j/(pi d). Source: SDP/SI D785 section
// 14 (from memory).
func PlayAngle(backlash, diameter float64) (float64, error) {
	if err := first(length("pitch diameter", diameter), within("backlash in mm", backlash, -diameter, diameter)); err != nil {
		return 0, err
	}
	return 2 * backlash / diameter / degree, nil
}

// Play is the play of one mesh of a train.
type Play struct {
	Angle float64 // degrees, at the mesh's driven shaft
	Ratio float64 // turns of that shaft to one of the train's last; 1 for the last mesh
}

// TrainPlay returns the degrees of play at the last shaft of a train: the sum
// of each mesh's angle over its ratio to the last shaft, whatever its sense.
// Computed from the ratios.
func TrainPlay(plays ...Play) (float64, error) {
	sum := 0.0
	for _, p := range plays {
		err := first(
			within("play in degrees", p.Angle, 0, 360),
			within("ratio", math.Abs(p.Ratio), 1e-9, 1e9),
		)
		if err != nil {
			return 0, err
		}
		sum += p.Angle / math.Abs(p.Ratio)
	}
	return sum, nil
}
