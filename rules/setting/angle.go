package setting

import (
	"errors"
	"fmt"
	"math"

	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// EpochOf is the date of a design as an exact Julian day of Universal Time; ok
// is false where it states none.
func EpochOf(d *spec.Design) (day exact.Rat, ok bool) {
	e := d.Head.Epoch
	if !e.Set() {
		return exact.Rat{}, false
	}
	const nanoseconds = 86_400_000_000_000
	part := exact.Frac(int64(math.Round(e.DayFraction*nanoseconds)), nanoseconds)
	e.DayFraction = 0
	return exact.Frac(int64(2*foretell.DayOf(e)), 2).Add(part), true
}

// angles finds where hands ought to stand on a day.
type angles struct {
	t        *train.Train
	day      exact.Rat
	epoch    exact.Rat
	hasEpoch bool
	noEpoch  string
	done     map[*spec.Hand]*Hand
}

func newAngles(t *train.Train, day exact.Rat) *angles {
	a := &angles{t: t, day: day, done: map[*spec.Hand]*Hand{}}
	a.noEpoch = "it is counted from the design's epoch, and none is stated"
	if a.epoch, a.hasEpoch = EpochOf(t.Design); a.hasEpoch {
		if e := a.epoch.Float(); e < sky.FirstDay || e >= sky.EndDay {
			a.hasEpoch = false
			a.noEpoch = fmt.Sprintf("it is counted from the design's epoch, which lies outside the years %d to %d", sky.FirstYear, sky.LastYear)
		}
	}
	return a
}

// hand is where a hand ought to stand. The error is a *sky.SpanError.
func (a *angles) hand(part *spec.Hand) (*Hand, error) {
	if h := a.done[part]; h != nil {
		return h, nil
	}
	h := &Hand{Hand: part, Sense: part.Sense.Text}
	a.done[part] = h // also against hands that refer to one another in a circle
	h.Why = "its hand \"" + part.Of.Text + "\" refers back to it"
	r := a.t.Read(part)
	if r.Known && h.Sense == "" {
		h.Sense = train.Sense(r.Rate)
	}
	if h.sign = 1; h.Sense == "cw" {
		h.sign = -1
	}
	if r.HasWanted {
		h.Period = r.Wanted.Float()
	}
	name := part.Shows.Entry + part.Period.Entry
	if name == "" && part.Period.Set() {
		name = foretell.Shown(r)
	}
	var err error
	switch {
	case h.Sense == "still":
		h.Why = "it stands still"
	case part.Ratio.Set():
		err = a.byRatio(h)
	case name != "":
		if earth := part.Shows.Named + part.Period.Named; earthFromSun(earth) {
			name = earth
		}
		err = a.bySky(h, name)
	case part.Period.Set() && !a.hasEpoch:
		h.Why = a.noEpoch
	case part.Period.Set():
		h.Why, h.Zero = "", "the epoch"
		turns := a.day.Sub(a.epoch).Quo(part.Period.Days)
		h.total = 360 * turns.Float()
		h.Degrees = turn(360 * fraction(turns).Float())
	default:
		h.Why = "it says neither what it shows nor a period"
	}
	if h.Why != "" {
		h.Zero = ""
	}
	return h, err
}

// bySky reads the angle off the mean sky.
func (a *angles) bySky(h *Hand, name string) error {
	h.Shows = name
	at, err := skyAngle(name, a.day.Float())
	var none *sky.NoAngleError
	if errors.As(err, &none) {
		h.Why = fmt.Sprintf("the %s has no agreed zero mark", name)
		return nil
	}
	if err != nil {
		return err
	}
	h.Why, h.Zero = "", zeroOf(name)
	h.Degrees, h.total = at, at
	if !a.hasEpoch {
		return nil
	}
	start, err := skyAngle(name, a.epoch.Float())
	if err != nil {
		return err
	}
	p, _ := sky.Lookup(name)
	since := 360 * a.day.Sub(a.epoch).Quo(exact.FromBig(p.Days)).Float()
	h.total += 360 * math.Round((start+since-at)/360)
	return nil
}

// byRatio follows the hand that the ratio refers to, which has gone round so
// many times since the epoch.
func (a *angles) byRatio(h *Hand) error {
	if h.OfHand == nil {
		h.Why = "the hand that its ratio refers to is not known"
		return nil
	}
	of, err := a.hand(h.OfHand)
	if err != nil {
		return err
	}
	ratio := h.Ratio.Exact.Abs()
	switch {
	case of.Why != "":
		h.Why = fmt.Sprintf("it follows %s, of which no angle is known", of.Title())
	case !ratio.IsInt() && !a.hasEpoch:
		h.Why = a.noEpoch
	default:
		h.Why, h.Zero = "", "as "+of.Title()
		h.total = of.total * ratio.Float()
		h.Degrees = turn(h.total)
	}
	return nil
}

// fraction is what is left of x above the next whole number below.
func fraction(x exact.Rat) exact.Rat {
	b := x.Big()
	whole := exact.FromBig(b.SetInt(floorOf(b)))
	return x.Sub(whole)
}

// turn is an angle from 0 to 360.
func turn(x float64) float64 {
	if x = math.Mod(x, 360); x < 0 {
		x += 360
	}
	if x >= 360 {
		x = 0
	}
	return x
}

// floor is the whole steps in x.
func floor(x, step float64) float64 { return step * math.Floor(x/step+1e-9) }
