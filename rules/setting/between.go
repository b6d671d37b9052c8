package setting

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// Running is what a drive does between two dates.
type Running struct {
	Drive *spec.Drive
	// Turns against what carries it, exact, counter-clockwise positive.
	Turns exact.Rat
	// Minutes at its speed, exact, if Timed.
	Minutes exact.Rat
	Timed   bool
	// Why says for want of what nothing is known, "" where it is.
	Why string
}

// Between is what the drives do while so many days of model time pass; less
// than 0 where time is run back.
func Between(t *train.Train, days exact.Rat) []Running {
	var list []Running
	for _, v := range t.Design.Drives {
		r := Running{Drive: v}
		rate, known := exact.Rat{}, false
		if v.Arbor != nil {
			rate, known = t.Against(v.Arbor, t.Carrier(v.Arbor))
		}
		switch {
		case !t.Timed():
			r.Why = "neither a clock nor a drive settles the time"
		case !known:
			r.Why = "nothing ties it to the clock"
		default:
			r.Turns = rate.Mul(days)
			if v.Speed.Set() && !v.Speed.Exact.IsZero() {
				r.Minutes, r.Timed = r.Turns.Abs().Quo(v.Speed.Exact.Abs()), true
			}
		}
		list = append(list, r)
	}
	return list
}
