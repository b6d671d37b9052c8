package rules

import (
	"math"

	"wheelwork/spec"
)

// passing is which part of a drive's power reaches the arbors and joints.
type passing struct {
	f      *Facts
	arbors []float64 // by Arbor.Index, 0 where no drive reaches it
	joints []passed  // by the joint's place in Train.Joints
	order  []int32   // joints as the power comes to them, drives left out
}

// passed is what a joint makes of the power that reaches it.
type passed struct {
	reached float64 // the part of the drive's power that does
	loss    float64 // what rubs away for a unit that is passed on
	rate    float64 // of its B against its carrier, in turns a day
	// from is the body that drives it and to the one it drives, its arbor; to is
	// nil where both ends are reached otherwise.
	from, to *spec.Arbor
}

// to is the part that reaches an arbor.
func (p passing) to(a *spec.Arbor) float64 {
	if b := p.bodyOf(a); b != nil && p.arbors[b.Index] > 0 {
		return p.arbors[b.Index]
	}
	return 1
}

// through is the part that reaches a joint.
func (p passing) through(joint int) float64 {
	if x := p.joints[joint].reached; x > 0 {
		return x
	}
	return 1
}

// circling is what is left, beside the efficiency of each joint on the way, of
// the power with which an arbor is held: in trains of small differences far more
// goes round and rubs than is passed on.
//
// A joint rubs away its share of the power that rolls through it, its torque times
// its rate against its carrier; for a plain train the sum of them is the way's own
// efficiency, and circling is 1.
func (p passing) circling(h *Held) float64 {
	rate, _ := p.f.Train.Against(h.Arbor, h.Base)
	away := 0.0
	for _, s := range h.bears {
		x := p.joints[s.Index]
		away += x.loss * s.Weight * x.rate
	}
	left := 1 / (1 + away/math.Abs(rate.Float()))
	return min(1, left/p.to(h.Arbor))
}

// bodyOf is the arbor that stands for the arbor's body: a stud is one with what
// carries it. It is nil for the frame.
func (p passing) bodyOf(a *spec.Arbor) *spec.Arbor {
	if a != nil && a.Stud {
		return p.f.Train.Carrier(a).Arbor
	}
	return a
}

type passageKey struct{}

// passage follows the power from the drives, or where there are none from the
// clock's arbor, through the joints.
func passage(f *Facts) passing { return Shared(f, passageKey{}, follow) }
