package foretell

import (
	"errors"
	"math"

	"wheelwork/rules/sky"
)

// Tally counts what came of a model's calls.
type Tally struct {
	Sky      int // eclipses that the sky shows, of the marked sort
	Foretold int // of these
	Missed   int // of these
	False    int // calls without an eclipse
	WrongDay int // eclipses missed and called on a wrong day, in both counts
	Right    int // of those foretold, total or annular told rightly
	Wrong    int // the same wrongly
}

// Add counts a row.
func (t *Tally) Add(r *Row) {
	switch r.Verdict {
	case Foretold:
		t.Sky++
		t.Foretold++
	case Missed:
		t.Sky++
		t.Missed++
		if r.WrongDay {
			t.WrongDay++
		}
	case False:
		t.False++
	}
	if right, ok := r.KindRight(); ok && right {
		t.Right++
	} else if ok {
		t.Wrong++
	}
}

// Calls is how often the model foretold.
func (t Tally) Calls() int { return t.Foretold + t.False }

// WrongCalls is how often it was wrong: what it missed and what it invented.
func (t Tally) WrongCalls() int { return t.Missed + t.False }

func tally(rows []Row) (t Tally) {
	for i := range rows {
		t.Add(&rows[i])
	}
	return t
}

// Record is an almanac of a model beside the sky's.
type Record struct {
	Rows  []Row // in the order of time
	Tally Tally // of all
	// Marks is what came of each marker of Model.Markers.
	Marks []Tally
	// First is the first wrong row, FirstOfHands the first that the same
	// markers on exact hands would have had right; nil where there is none.
	First, FirstOfHands *Row
}

// ErrSpan tells that a span ends before it begins.
var ErrSpan = errors.New("the span ends before it begins")

// Record follows the model over a span of Universal Time, the end left out. A
// call counts where it lies within so many days, at most 14, of its eclipse. Where the
// sky's eclipses take long, tell is told what share of them is done. Days
// outside the years -1999 to 3000 are refused with a *sky.SpanError.
func (r *Run) Record(fromUT, toUT, days float64, tell func(done float64)) (*Record, error) {
	s := spanOf(fromUT, toUT, days)
	if toUT < fromUT {
		return nil, ErrSpan
	}
	eclipses, err := seen(s, tell)
	if err != nil {
		return nil, err
	}
	rec := &Record{Marks: make([]Tally, len(r.Markers))}
	told := map[float64]bool{}
	failed := map[failure]bool{} // by exact hands
	for _, lunar := range [...]bool{false, true} {
		list := only(eclipses, lunar)
		if markers, ev := r.marked(lunar); r.Phase != nil && len(markers) > 0 {
			for _, row := range r.follow(markers, ev, list, Exact, s) {
				failed[failureOf(&row)] = true
			}
			for _, row := range r.follow(markers, ev, list, nil, s) {
				rec.Tally.Add(&row)
				rec.Rows = append(rec.Rows, row)
				if row.Eclipse != nil && (row.Verdict != False || !row.WrongDay) {
					told[row.Eclipse.K] = true
				}
			}
		}
		for i := range list {
			if e := &list[i]; !told[e.K] && inside(e, s) {
				rec.Rows = append(rec.Rows, Row{Verdict: Unmarked, Solar: e.Solar, Eclipse: e})
			}
		}
	}
	sortRows(rec.Rows)
	for i := range rec.Rows {
		row := &rec.Rows[i]
		if row.Verdict != Missed && row.Verdict != False {
			continue
		}
		if rec.First == nil {
			rec.First = row
		}
		if rec.FirstOfHands == nil && !failed[failureOf(row)] {
			rec.FirstOfHands = row
		}
	}
	for i, m := range r.Markers {
		if r.Phase != nil {
			rec.Marks[i] = tally(r.follow([]*Marker{m}, m.Event, only(eclipses, m.Event.Lunar()), nil, s))
		}
	}
	return rec, nil
}

// marked lists the markers for one body, and the widest of their events.
func (r *Run) marked(lunar bool) (list []*Marker, widest sky.Event) {
	for _, ev := range sky.Events() { // the wider before the narrower
		for _, m := range r.Markers {
			if m.Event == ev && ev.Lunar() == lunar {
				list = append(list, m)
				if widest == "" {
					widest = ev
				}
			}
		}
	}
	return list, widest
}

func only(list []sky.Eclipse, lunar bool) []sky.Eclipse {
	out := make([]sky.Eclipse, 0, len(list)/2+1)
	for i := range list {
		if list[i].Solar != lunar {
			out = append(out, list[i])
		}
	}
	return out
}

// failure names a wrong row by what is wrong and the syzygy it is wrong about.
type failure struct {
	verdict Verdict
	k       float64
}

func failureOf(r *Row) failure {
	if r.Verdict != False {
		return failure{r.Verdict, r.Eclipse.K}
	}
	half := 0.0
	if !r.Solar {
		half = 0.5
	}
	k := (r.Call.TT-sky.NewMoon2000)/sky.SynodicMonthDays - half
	return failure{False, math.Round(k) + half}
}
