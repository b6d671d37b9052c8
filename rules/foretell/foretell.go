// Package foretell works out which eclipses a model foretells from its own
// hands, and holds them against the sky's.
//
// A model is set right on one day: at that moment each of its hands stands
// where the mean Sun, Moon, node and perigee stand. From there it runs at its
// own rates. Whenever its Moon meets its Sun, or stands opposite, and the Sun
// is then nearer to the node than a marker's arc reaches, the model foretells
// that marker's eclipse on the day it then shows. All its motions are taken in
// the mean: what a pin and slot adds to the Moon moves a syzygy by half a day
// and the Sun against the node by half a degree at most.
//
// Rates are exact rationals; they become floating point where angles are taken
// from them.
package foretell

import (
	"fmt"
	"math"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// Model is what a design's hands can foretell.
type Model struct {
	Phase   *Way      // the Moon from the Sun: when new and full moon come; nil where no hands show it
	Anomaly *Way      // the Moon from her perigee: total or annular; nil where no hands show it
	Markers []*Marker // those that can be read, in the order of the design
	Arcs    []*Marker // those whose arc is known; without a Node where it cannot be read
	Lacks   []Lack    // what cannot be foretold
}

// Marker is an arc that can be read.
type Marker struct {
	*spec.Marker
	Event sky.Event
	Arc   float64 // degrees of the Sun from the node to either side within which it calls
	Node  *Way    // the Sun from the node; nil where no hands show it
}

// Lack is something that the model cannot foretell, and for want of what.
type Lack struct {
	What, Why string
	Marker    *spec.Marker // the marker that cannot be read, nil where it is none
}

func (l Lack) String() string { return l.What + ": " + l.Why }

// Of finds what the design can foretell.
func Of(t *train.Train) *Model {
	m := &Model{}
	b := newBook(t)
	var why string
	if m.Phase, why = b.way(moonFromSun, nil, "the synodic month, or a month of the Moon beside the year"); m.Phase != nil {
		why = runsLikeTheMoon(t, m.Phase)
	}
	if why != "" {
		m.Phase = nil
		m.lack(nil, "new and full moon", why)
	}
	if m.Anomaly, why = b.way(moonFromPerigee, nil, "the anomalistic month, or a month of the Moon beside the lunar apse"); m.Anomaly == nil {
		m.lack(nil, "total or annular", why)
	}
	marked := map[bool]bool{}
	for _, part := range t.Design.Markers {
		one, why := b.marker(part)
		if one != nil {
			m.Arcs = append(m.Arcs, one)
		}
		if why != "" {
			m.lack(part, part.Title(), why)
			continue
		}
		marked[one.Event.Lunar()] = true
		m.Markers = append(m.Markers, one)
	}
	if !marked[false] {
		m.lack(nil, "eclipses of the Sun", "no marker for them that can be read")
	}
	if !marked[true] {
		m.lack(nil, "eclipses of the Moon", "no marker for them that can be read")
	}
	return m
}

func (m *Model) lack(marker *spec.Marker, what, why string) {
	m.Lacks = append(m.Lacks, Lack{what, why, marker})
}

// runsLikeTheMoon says why the phase cannot be used; "" where it can. A hand
// that is off by more than a tenth counts no lunations.
func runsLikeTheMoon(t *train.Train, w *Way) string {
	rate := w.Rate(nil)
	if t.RealTime() {
		return "the design has no clock, so its hands run by the watch"
	}
	month := exact.FromBig(sky.SynodicMonth())
	if rate.Mul(month).Sub(exact.Int(1)).Abs().Cmp(exact.Frac(1, 10)) <= 0 {
		return ""
	}
	if rate.Sign() <= 0 {
		return w.String() + " never brings the Moon round to the Sun"
	}
	return fmt.Sprintf("%s brings a new moon every %.6g d, which is no month", w, rate.Inv().Float())
}

// marker reads a marker, or says why it cannot be read; nil where its arc is
// not known either.
func (b *book) marker(part *spec.Marker) (*Marker, string) {
	m := &Marker{Marker: part, Event: sky.Event(part.Event.Text)}
	if part.Hand == nil {
		return nil, "it is on no hand"
	}
	switch {
	case part.HalfAngle.Set():
		m.Arc = part.HalfAngle.Exact.Float()
	case part.Length.Set() && part.Radius.Set():
		m.Arc = part.Length.Exact.Quo(part.Radius.Exact).Float() / 2 * 180 / math.Pi
	default:
		return nil, "it states neither half_angle nor length and radius"
	}
	own := b.of[part.Hand]
	if own == nil {
		return nil, part.Hand.Title() + " shows nothing of Sun, Moon or node"
	}
	if own.cycle.angle.perigee != 0 {
		return nil, part.Hand.Title() + " shows the " + own.Shows + ", which has nothing to do with the node"
	}
	var why string
	m.Node, why = b.way(sunFromNode, own, "the eclipse year, or the lunar node beside the year, or the draconic month beside the synodic one")
	m.Arc /= float64(own.cycle.turns)
	return m, why
}
