package foretell

import (
	"wheelwork/rules/sky"
	"wheelwork/spec"
)

// Watch is a model followed over a span for what a check asks: the events
// alone, without kinds and times. It gives the same tallies as Record.
type Watch struct {
	run      *Run
	span     span
	eclipses [2][]sky.Eclipse // of the Sun, of the Moon
}

// Watch is as Record, a tenth as dear. It wants a model with a Phase.
func (r *Run) Watch(fromUT, toUT, days float64) (*Watch, error) {
	w := &Watch{run: r, span: spanOf(fromUT, toUT, days)}
	if toUT < fromUT {
		return nil, ErrSpan
	}
	list, err := seenQuickly(w.span)
	if err != nil {
		return nil, err
	}
	w.eclipses = [2][]sky.Eclipse{only(list, false), only(list, true)}
	return w, nil
}

// Tally counts what comes of a marker, with some hands made exact.
func (w *Watch) Tally(m *Marker, made Made) Tally {
	list := w.eclipses[0]
	if m.Event.Lunar() {
		list = w.eclipses[1]
	}
	return tally(w.run.follow([]*Marker{m}, m.Event, list, made, w.span))
}

// Share is what would come of a marker with one thing made right: a hand
// exact, or, where Hand is nil, its arc.
type Share struct {
	Hand  *Hand
	Tally Tally
}

// Split makes each hand behind the marker exact in turn, then its arc the one
// that is wrong least often, and counts again. The order is that of the hands
// in the design's ways; the arc comes last.
func (w *Watch) Split(m *Marker) []Share {
	var list []Share
	seen := map[*spec.Hand]bool{}
	for _, way := range [...]*Way{m.Node, w.run.Phase} {
		for _, t := range way.Terms {
			if seen[t.Hand.Hand] {
				continue
			}
			seen[t.Hand.Hand] = true
			one := func(h *spec.Hand) bool { return h == t.Hand.Hand }
			list = append(list, Share{t.Hand, w.Tally(m, one)})
		}
	}
	return append(list, Share{nil, w.Tally(w.best(m), nil)})
}

// Least is what exact hands and the best arc come to: no single arc is right
// every time.
func (w *Watch) Least(m *Marker) Tally { return w.Tally(w.best(m), Exact) }

func (w *Watch) best(m *Marker) *Marker {
	right := *m
	right.Arc = sky.BestArc(m.Event)
	return &right
}
