package tooth

import (
	"fmt"
	"math"
)

// Geneva is an external Geneva movement: a driver with one or more equally
// spaced pins steps a wheel of 3 or more slots, whose pins enter along the slot.
type Geneva struct {
	Slots  int
	Pins   int     // on the driver
	Centre float64 // distance of the axes, mm
}

// GenevaSizes is what follows from a [Geneva]: mm, degrees.
type GenevaSizes struct {
	Step       float64 // of the wheel
	Move       float64 // turn of the driver while the wheel moves
	Dwell      float64 // turn of the driver while it rests, between one pin and the next
	MoveShare  float64 // part of the driver's turn that moves the wheel, all pins
	Crank      float64 // radius of the pin's circle
	Mouth      float64 // radius of the wheel at the mouth of a slot
	Bottom     float64 // radius that the pin's middle reaches in the slot
	SlotDepth  float64 // from the mouth to that
	MostSpeed  float64 // greatest ratio of the wheel's speed to the driver's
	EntryAccel float64 // angular acceleration at entry over the driver's speed squared
	MostAccel  float64 // greatest of it
	MostAt     float64 // driver's angle from the line of centres where that is
}

// Check refuses a movement that cannot be: pins so many that one enters before
// another has left.
func (g Geneva) Check() error {
	err := first(count("slots", g.Slots, 3), count("pins", g.Pins, 1), length("centre distance", g.Centre))
	if err != nil {
		return err
	}
	if share := g.moveShare(); share >= 1 {
		return fmt.Errorf("%w: %d pins would move %d slots for %.4g of a turn", ErrNoMesh, g.Pins, g.Slots, share)
	}
	return nil
}

// moveShare is pins (n - 2)/(2 n).
func (g Geneva) moveShare() float64 {
	n := float64(g.Slots)
	return float64(g.Pins) * (n - 2) / (2 * n)
}

// mu is the crank radius over the centre distance.
func (g Geneva) mu() float64 { return math.Sin(math.Pi / float64(g.Slots)) }

// Sizes returns geometry and motion. Source: the right angle between crank and
// slot at entry, KMODDL; formulas as in Mechanisms and Mechanical Devices
// Sourcebook (from memory) and computed from that right angle:
//
//	crank a sin(180/n), mouth a cos(180/n), move 180 - 360/n
//	speed mu/(1 - mu), entry tan(180/n)
func (g Geneva) Sizes() (GenevaSizes, error) {
	if err := g.Check(); err != nil {
		return GenevaSizes{}, err
	}
	half := math.Pi / float64(g.Slots)
	mu := g.mu()
	step := 360 / float64(g.Slots)
	crank, mouth := g.Centre*mu, g.Centre*math.Cos(half)
	move := 180 - step
	// The acceleration's own derivative vanishes at this cosine.
	k := (1 + mu*mu) / (4 * mu)
	peak := math.Acos(math.Sqrt(k*k+2) - k)
	return GenevaSizes{
		Step: step, Move: move,
		Dwell:     360/float64(g.Pins) - move,
		MoveShare: g.moveShare(),
		Crank:     crank, Mouth: mouth,
		Bottom:     g.Centre - crank,
		SlotDepth:  mouth - g.Centre + crank,
		MostSpeed:  mu / (1 - mu),
		EntryAccel: math.Tan(half),
		MostAccel:  -genevaAccel(mu, peak),
		MostAt:     peak / degree,
	}, nil
}

// genevaAccel is the second derivative of the wheel's angle by the driver's.
func genevaAccel(mu, theta float64) float64 {
	d := 1 + mu*mu - 2*mu*math.Cos(theta)
	return -mu * (1 - mu*mu) * math.Sin(theta) / (d * d)
}

// WheelAngle returns the wheel's angle in degrees from the line of centres for
// the driver's, within half of Move to either side: tan b = mu sin t/(1 - mu
// cos t). Computed from the geometry.
func (g Geneva) WheelAngle(driver float64) (float64, error) {
	if err := g.Check(); err != nil {
		return 0, err
	}
	half := 90 - 180/float64(g.Slots)
	if err := within("driver's angle in degrees", driver, -half-1e-9, half+1e-9); err != nil {
		return 0, err
	}
	mu, t := g.mu(), driver*degree
	return math.Atan2(mu*math.Sin(t), 1-mu*math.Cos(t)) / degree, nil
}

// StopTurns returns how many turns a stop-work allows whose wheel has one slot
// filled: n - 1.
func (g Geneva) StopTurns() (int, error) {
	if err := g.Check(); err != nil {
		return 0, err
	}
	return g.Slots - 1, nil
}
