package train

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

// Reading is what a hand does, beside what it should.
type Reading struct {
	Hand *spec.Hand
	// Rate is in turns a day against the hand's base, if Known.
	Rate  exact.Rat
	Known bool
	// Wanted is the period it should have, in days, if HasWanted. It is more
	// than zero: the way it turns is the hand's sense, not its period.
	Wanted    exact.Rat
	HasWanted bool
	// Error is period/wanted - 1, if HasError. A positive error is a slow hand.
	Error    exact.Rat
	HasError bool
}

// Read compares the hand with what it should show.
func (t *Train) Read(h *spec.Hand) Reading {
	r := Reading{Hand: h}
	if h.Arbor == nil {
		return r
	}
	if rate, ok := t.Against(h.Arbor, h.Base); ok && t.Timed() {
		r.Rate, r.Known = rate, true
	}
	switch {
	case h.Shows.Set():
		r.Wanted, r.HasWanted = h.Shows.Days, true
	case h.Period.Set():
		r.Wanted, r.HasWanted = h.Period.Days, true
	case h.Ratio.Set() && h.OfHand != nil && h.OfHand.Arbor != nil:
		// A ratio to another hand needs no clock.
		o := h.OfHand
		ratio, ok := t.Ratio(h.Arbor, h.Base, o.Arbor, o.Base)
		if ok && !ratio.IsZero() {
			r.Error, r.HasError = h.Ratio.Exact.Quo(ratio).Abs().Sub(exact.Int(1)), true
		}
		if rate, ok := t.Against(o.Arbor, o.Base); ok && t.Timed() && !rate.IsZero() {
			r.Wanted, r.HasWanted = rate.Mul(h.Ratio.Exact).Inv().Abs(), true
		}
		return r
	}
	if r.HasWanted && r.Known && !r.Rate.IsZero() {
		r.Error, r.HasError = r.Rate.Mul(r.Wanted).Abs().Inv().Sub(exact.Int(1)), true
	}
	return r
}

// Period is the hand's period in days; ok is false if it stands still or is
// not known.
func (r Reading) Period() (exact.Rat, bool) {
	if !r.Known || r.Rate.IsZero() {
		return exact.Rat{}, false
	}
	return r.Rate.Abs().Inv(), true
}

// PPM is the error in parts in a million.
func (r Reading) PPM() float64 { return r.Error.Mul(exact.Int(1_000_000)).Float() }

// Drift is how many degrees the hand gains in a tropical year on one that is
// right; ok is false if either rate is not known.
func (r Reading) Drift() (exact.Rat, bool) {
	if !r.Known || !r.HasWanted {
		return exact.Rat{}, false
	}
	gain := r.Rate.Abs().Sub(r.Wanted.Inv())
	return gain.Mul(exact.Int(360)).Mul(quantity.TropicalYear), true
}

// Lost is how many days the time read off the hand falls behind in a tropical
// year; negative if it runs ahead. ok is false if either rate is not known.
func (r Reading) Lost() (exact.Rat, bool) {
	if !r.Known || !r.HasWanted {
		return exact.Rat{}, false
	}
	return exact.Int(1).Sub(r.Rate.Abs().Mul(r.Wanted)).Mul(quantity.TropicalYear), true
}

// Sense is the way a rate turns, seen from above: "ccw", "cw" or "still".
func Sense(rate exact.Rat) string { return [...]string{"cw", "still", "ccw"}[rate.Sign()+1] }

// Off is by how much the hand is off over a span of days, in the measure of a
// tolerance: ppm of its period, degrees, or days. ok is false if that is not
// known.
func (r Reading) Off(m quantity.Measure, span exact.Rat) (exact.Rat, bool) {
	years := span.Quo(quantity.TropicalYear)
	switch m {
	case quantity.AngleOver:
		d, ok := r.Drift()
		return d.Mul(years), ok
	case quantity.TimeOver:
		d, ok := r.Lost()
		return d.Mul(years), ok
	}
	return r.Error.Mul(exact.Int(1_000_000)), r.HasError
}
