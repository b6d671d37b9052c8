package foretell

import (
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// Hand is a hand that shows something of Sun, Moon, node and perigee.
type Hand struct {
	*spec.Hand
	Shows string // the catalogue's entry

	cycle *cycle
	rate  exact.Rat // of the cycle's angle in turns a day, as built
	known bool      // whether the rate is
	why   string    // why it is not
}

// Way is an angle of the sky as the model shows it: a sum of what a few hands
// show.
type Way struct {
	Terms []Term
	stars bool // all of it against the stars
}

// Term is a hand, added or taken away.
type Term struct {
	*Hand
	sign int8
}

// Made tells which hands are taken as exact, with the sky's own rate, in place
// of as they are built. A nil Made takes all as they are built.
type Made func(*spec.Hand) bool

// Exact takes all hands as exact.
func Exact(*spec.Hand) bool { return true }

// Rate is how fast the angle goes round, in turns a day.
func (w *Way) Rate(made Made) exact.Rat {
	var sum exact.Rat
	for _, t := range w.Terms {
		rate := t.rate
		if made != nil && made(t.Hand.Hand) {
			rate = t.cycle.skyRate(w.stars)
		}
		if t.sign < 0 {
			rate = rate.Neg()
		}
		sum = sum.Add(rate)
	}
	return sum
}

// String names the hands: hand "year" less hand "node".
func (w *Way) String() string {
	var s strings.Builder
	for i, t := range w.Terms {
		switch {
		case i > 0 && t.sign < 0:
			s.WriteString(" less ")
		case i > 0:
			s.WriteString(" and ")
		case t.sign < 0:
			s.WriteString("less ")
		}
		s.WriteString(t.Title())
	}
	return s.String()
}

// book lists the hands that can be used.
type book struct {
	hands []*Hand
	of    map[*spec.Hand]*Hand
}

func newBook(t *train.Train) *book {
	b := &book{of: map[*spec.Hand]*Hand{}}
	marked := map[*spec.Hand]bool{}
	for _, m := range t.Design.Markers {
		marked[m.Hand] = true
	}
	for _, part := range t.Design.Hands {
		r := t.Read(part)
		c, name := shown(r, marked[part])
		if c == nil {
			continue
		}
		h := &Hand{Hand: part, Shows: name, cycle: c, known: r.Known}
		switch {
		case !t.Timed():
			h.why = "neither a clock nor a drive settles the time"
		case !r.Known:
			h.why = "nothing turns it"
		default:
			h.rate = r.Rate.Abs().Quo(exact.Int(c.turns))
			if entry(name).Retrograde {
				h.rate = h.rate.Neg()
			}
			if said := part.Sense.Text; part.Sense.Set() && said != "still" && train.Sense(r.Rate) != said {
				h.rate = h.rate.Neg() // it turns the wrong way round
			}
		}
		b.hands, b.of[part] = append(b.hands, h), h
	}
	return b
}

// way finds the fewest hands that show an angle, the first of the design where
// several do; own must be among them where it is not nil. Without any it says
// why, and what is wanted.
func (b *book) way(target angle, own *Hand, wanted string) (*Way, string) {
	if w := search(b.chosen(own, true), target, own); w != nil && (own == nil || own.known) {
		return w, ""
	}
	if w := search(b.chosen(own, false), target, own); w != nil {
		for _, t := range w.Terms {
			if !t.known {
				return nil, t.Title() + " shows it, but " + t.why
			}
		}
	}
	if own != nil {
		return nil, own.Title() + " shows the " + own.Shows + ", which with the other hands gives no distance of the Sun from the node; wanted is " + wanted
	}
	return nil, "no hands show it; wanted is " + wanted
}

// chosen are the first hands of each angle, own in place of the others of its;
// all of them, or those whose rate is known.
func (b *book) chosen(own *Hand, known bool) []*Hand {
	var list []*Hand
	seen := map[angle]bool{}
	if own != nil {
		seen[own.cycle.angle] = true
		list = append(list, own)
	}
	for _, h := range b.hands {
		if !seen[h.cycle.angle] && (h.known || !known) {
			seen[h.cycle.angle] = true
			list = append(list, h)
		}
	}
	return list
}

// search tries one hand, then two, then three. Where own is not nil it is the
// first of the list and must be used.
func search(list []*Hand, target angle, own *Hand) *Way {
	for size := 1; size <= 3; size++ {
		if terms := sum(list, target, size, own != nil); terms != nil {
			return newWay(terms)
		}
	}
	return nil
}

// sum finds so many of the hands, added or taken away, that make the angle.
func sum(list []*Hand, target angle, size int, first bool) []Term {
	if size == 0 {
		if target == (angle{}) {
			return []Term{}
		}
		return nil
	}
	for i, h := range list {
		if first && i > 0 {
			break
		}
		for _, sign := range [...]int8{1, -1} {
			rest := sum(list[i+1:], target.plus(h.cycle.angle, -sign), size-1, false)
			if rest != nil {
				return append([]Term{{h, sign}}, rest...)
			}
		}
	}
	return nil
}

func newWay(terms []Term) *Way {
	w := &Way{Terms: terms}
	equinox := false
	for i, t := range terms {
		if t.sign > 0 { // the added ones first, as one would say it
			copy(terms[1:i+1], terms[:i])
			terms[0] = t
			break
		}
	}
	for _, t := range terms {
		if len(t.cycle.names) > 1 {
			stars := strings.Contains(t.Shows, "sidereal")
			w.stars = w.stars || stars
			equinox = equinox || !stars
		}
	}
	w.stars = w.stars && !equinox
	return w
}
