package setting

import "wheelwork/spec/train"

// By is by what a hand is set.
type By string

// The ways to set a hand.
const (
	ByDrive    By = "drive"    // the model is run until the hand is right
	BySlip     By = "slip"     // the hand is turned on its arbor
	ByCoupling By = "coupling" // the hand is turned against a coupling that slips
	ByTeeth    By = "teeth"    // teeth are lifted out and let in again further on
	ByCounter  By = "counter"  // the hand is moved on by whole steps of its counter
	ByFollows  By = "follows"  // hands set before have brought it to its place
	ByTied     By = "tied"     // hands set before hold it where it stands
)

// Step is one thing to do, or that nothing is to be done.
type Step struct {
	Hand *Hand
	By   By
	// Joint is the mesh, chain, counter or coupling, nil for other ways; of a hand
	// that follows the one by whose teeth it comes no nearer.
	Joint *train.Joint
	index int // of the joint
	// Turn is by how many degrees the hand is moved, in the sense it turns.
	Turn float64
	// Drive is by how many turns the master is turned, counter-clockwise
	// positive, if By is ByDrive.
	Drive float64
	// Pitch is by how many degrees one tooth, or one step of a counter, moves the
	// hand, and Places how many of them it is moved on; less than 0 for back.
	Pitch  float64
	Places int
	// Error is by how many degrees the hand then stands ahead of its place.
	Error float64
	// Finer is a pair of meshes that leaves less, nil where none leaves half.
	Finer *Finer
	// With are the hands that move with it and are set later, After those whose
	// setting moved this one.
	With, After []*Hand
}

// Finer is a way to set a hand in two places at once.
type Finer struct {
	Joints [2]*train.Joint
	Places [2]int
	Error  float64
}

// Days is what the error amounts to in the time read off the hand; ok is false
// where its period is not known.
func (s *Step) Days() (days float64, ok bool) {
	return s.Error / 360 * s.Hand.Period, s.Hand.Period > 0
}
