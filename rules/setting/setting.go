// Package setting works out how a model is set to a date: at which angle each
// hand then stands, and by what it is brought there, in which order.
//
// Angles are those of the mean sky, from the zero mark of the hand in the sense
// in which it turns. The order follows the train from the drive outwards, and
// begins with every hand on its zero mark, as it is put together: what has been
// set is not moved again. Rates and the reach of each shift are exact rationals;
// they become floating point where angles are taken from them.
package setting

import (
	"cmp"
	"slices"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// Setting is a model on a date.
type Setting struct {
	Day   exact.Rat // Julian day of Universal Time
	Hands []*Hand   // in the order of the text
	Steps []Step    // in the order in which to set
	// Master is what the drive's step turns: the first drive, or the clock's
	// arbor where there is none.
	Master *spec.Part

	rpm float64
}

// RPM is the speed of a master that is a motor, 0 of one turned by hand.
func (s *Setting) RPM() float64 { return s.rpm }

// Hand is where a hand ought to stand.
type Hand struct {
	*spec.Hand
	Shows string // the catalogue's name of what it shows, "" for other periods
	Zero  string // what its zero mark stands for
	// Sense is the way it turns, or where nothing turns it is said to; "" where
	// neither is known.
	Sense string
	// Degrees is the angle from the zero mark in that sense, from 0 to 360; of a
	// hand behind a counter in whole steps.
	Degrees float64
	// Period is the time of a turn as it should be, in days; 0 if not known.
	Period float64
	// Why says for want of what no angle is known, "" where it is.
	Why string
	// Unset says why no step sets it though its angle is known.
	Unset string

	total float64 // degrees since the epoch's round began, not reduced
	sign  float64 // of its sense: 1 for ccw
	slips []train.Slip
	drive float64 // its turns for one of the master
}

// On sets a model to a Julian day of Universal Time. Days outside the years
// -1999 to 3000 are refused with a *sky.SpanError.
func On(t *train.Train, day exact.Rat) (*Setting, error) {
	if jd := day.Float(); jd < sky.FirstDay || jd >= sky.EndDay {
		return nil, &sky.SpanError{JD: jd}
	}
	s := &Setting{Day: day}
	a := newAngles(t, day)
	slips := t.NewSlips()
	var master *spec.Arbor
	var base spec.Body
	s.Master, master, base = masterOf(t)
	for _, v := range t.Design.Drives {
		if &v.Part == s.Master && v.By.Or("motor") == "motor" && v.Speed.Set() {
			s.rpm = v.Speed.Exact.Abs().Float()
		}
	}
	for _, h := range t.Design.Hands {
		one, err := a.hand(h)
		if err != nil {
			return nil, err
		}
		s.Hands = append(s.Hands, one)
		rate, known := t.Against(h.Arbor, h.Base)
		switch {
		case one.Why != "":
		case !t.Timed():
			one.Unset = "neither a clock nor a drive settles the time"
		case !known:
			one.Unset = "nothing turns it"
		case rate.IsZero():
			one.Unset = "it stands still"
		default:
			if ratio, ok := t.Ratio(h.Arbor, h.Base, master, base); ok {
				one.drive = ratio.Float()
			}
		}
		if known {
			one.slips = slips.Of(h.Arbor, h.Base)
		}
		if step := countedBy(one); step > 0 && one.Why == "" {
			one.Degrees = turn(floor(one.total, step))
		}
	}
	s.order(t)
	return s, nil
}

// masterOf is what turns the model, with the arbor and what it turns against.
func masterOf(t *train.Train) (*spec.Part, *spec.Arbor, spec.Body) {
	for _, v := range t.Design.Drives {
		if v.Arbor == nil {
			continue
		}
		base := t.Carrier(v.Arbor)
		if rate, ok := t.Against(v.Arbor, base); ok && !rate.IsZero() {
			return &v.Part, v.Arbor, base
		}
	}
	if c := t.Design.Clock; c != nil && c.Arbor != nil {
		return &c.Arbor.Part, c.Arbor, c.Base
	}
	return nil, nil, spec.Body{}
}

// settable lists the hands that a step is sought for, in the order of their
// trains: the drive's hand first, then from the drive outwards, and last those
// that slip on their arbors, which move nothing but themselves.
func (s *Setting) settable(t *train.Train, gives map[*spec.Part]bool) (list []*Hand, driven *Hand) {
	for _, h := range s.Hands {
		if h.Why == "" && h.Unset == "" {
			list = append(list, h)
		}
	}
	slices.SortStableFunc(list, func(a, b *Hand) int {
		if a.SlipTorque.Set() != b.SlipTorque.Set() {
			if a.SlipTorque.Set() {
				return 1
			}
			return -1
		}
		return cmp.Compare(len(a.slips), len(b.slips))
	})
	for _, h := range list {
		if h.drive == 0 || h.SlipTorque.Set() || h.yields(gives) || countedBy(h) > 0 {
			continue
		}
		if c := t.Design.Clock; c != nil && c.Arbor == h.Arbor {
			driven = h
			break
		}
		if driven == nil {
			driven = h
		}
	}
	if i := slices.Index(list, driven); i > 0 {
		list = slices.Insert(slices.Delete(list, i, i+1), 0, driven)
	}
	return list, driven
}

// yields reports whether a coupling on the way to the hand gives.
func (h *Hand) yields(gives map[*spec.Part]bool) bool {
	return slices.ContainsFunc(h.slips, func(s train.Slip) bool { return gives[s.Joint.Part] })
}

func givingParts(d *spec.Design) map[*spec.Part]bool {
	gives := map[*spec.Part]bool{}
	for _, c := range d.Couples {
		if c.Gives() {
			gives[&c.Part] = true
		}
	}
	return gives
}
