// Package almanac writes the sky's eclipses beside those a model foretells.
package almanac

import (
	"encoding/json"
	"io"
	"math"

	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec/quantity"
)

// Almanac is a model's record over a span. What the model cannot tell is nil
// or empty, and left out of the JSON.
type Almanac struct {
	Design string  `json:"design"` // its title
	Set    string  `json:"set"`    // the date it was set right
	From   string  `json:"from"`
	To     string  `json:"to"` // the last day
	Years  float64 `json:"years"`
	Days   float64 `json:"days"` // how far a call may lie from its eclipse

	Foretold int  `json:"foretold"` // of the sky's eclipses of the marked sorts
	Missed   int  `json:"missed"`   // of the same
	False    int  `json:"false"`    // calls without an eclipse
	WrongDay int  `json:"wrong_day"`
	Right    *int `json:"kind_right,omitempty"`
	Wrong    *int `json:"kind_wrong,omitempty"`

	Phase   string   `json:"phase,omitempty"`   // the hands that show new and full moon
	Anomaly string   `json:"anomaly,omitempty"` // the hands that tell total from annular
	Markers []Marker `json:"markers"`
	Cannot  []string `json:"cannot"` // what it cannot foretell, and why

	First        *Event   `json:"first_failure,omitempty"`
	FirstOfHands *Event   `json:"first_failure_of_hands,omitempty"`
	Decades      []Decade `json:"decades"`
	Events       []Event  `json:"events"`
	// Unmarked are the sky's eclipses for which the design has no marker.
	Unmarked []Event `json:"unmarked"`

	calls int
	rows  []Event // events and unmarked in the order of time
}

// Marker is what came of one marker.
type Marker struct {
	Name       string   `json:"name"`
	Event      string   `json:"event"`
	By         string   `json:"by"` // the hands that show the Sun from the node
	Arc        float64  `json:"arc_deg"`
	Certain    float64  `json:"certain_deg"`    // nearer than this the event always comes
	Impossible float64  `json:"impossible_deg"` // farther than this never
	Drift      *float64 `json:"drift_deg_per_year,omitempty"`
	Counts
}

// Counts is what came of the calls in part of the almanac.
type Counts struct {
	Sky      int `json:"sky"`
	Foretold int `json:"foretold"`
	Missed   int `json:"missed"`
	False    int `json:"false"`
	WrongDay int `json:"wrong_day"`

	right, wrong int
}

func counts(t foretell.Tally) Counts {
	return Counts{t.Sky, t.Foretold, t.Missed, t.False, t.WrongDay, t.Right, t.Wrong}
}

// Decade is the counts of ten years.
type Decade struct {
	From int `json:"from_year"`
	Counts
	Right *int `json:"kind_right,omitempty"`
	Wrong *int `json:"kind_wrong,omitempty"`
}

// Span is what an almanac is of.
type Span struct {
	From, To float64 // Julian days of Universal Time, To left out
	Days     float64
}

// Of follows a model and makes its almanac. Where that takes long, tell is told
// what share is done.
func Of(title string, run *foretell.Run, s Span, tell func(float64)) (*Almanac, error) {
	rec, err := run.Record(s.From, s.To, s.Days, tell)
	if err != nil {
		return nil, err
	}
	a := &Almanac{
		Design: title, Set: date(run.SetUT), From: date(s.From), To: date(s.To - 1e-6),
		Years:    math.Round((s.To-s.From)/quantity.TropicalYear.Float()*1000) / 1000,
		Days:     s.Days,
		Foretold: rec.Tally.Foretold, Missed: rec.Tally.Missed, False: rec.Tally.False, WrongDay: rec.Tally.WrongDay,
		Markers: []Marker{}, Cannot: []string{}, Decades: []Decade{}, Events: []Event{}, Unmarked: []Event{},
		calls: rec.Tally.Calls(),
	}
	kinds := false
	if run.Phase != nil {
		a.Phase = run.Phase.String()
		if run.Anomaly != nil {
			a.Anomaly = run.Anomaly.String()
			for _, m := range run.Markers {
				kinds = kinds || !m.Event.Lunar()
			}
		}
	}
	if kinds {
		a.Right, a.Wrong = &rec.Tally.Right, &rec.Tally.Wrong
	}
	for i, m := range run.Markers {
		a.mark(m, rec.Marks[i])
	}
	for _, l := range run.Lacks {
		a.Cannot = append(a.Cannot, l.String())
	}
	for i := range rec.Rows {
		row := &rec.Rows[i]
		e := event(row)
		a.rows = append(a.rows, e)
		if row.Verdict == foretell.Unmarked {
			a.Unmarked = append(a.Unmarked, e)
		} else {
			a.Events = append(a.Events, e)
		}
		if row == rec.First {
			a.First = &e
		}
		if row == rec.FirstOfHands {
			a.FirstOfHands = &e
		}
	}
	a.decades(rec.Rows, kinds)
	return a, nil
}

func (a *Almanac) mark(m *foretell.Marker, t foretell.Tally) {
	limit, drift := sky.MeanLimit(m.Event), m.Drift()
	a.Markers = append(a.Markers, Marker{
		Name: m.Name.Text, Event: string(m.Event), By: m.Node.String(), Arc: m.Arc,
		Certain: limit.Certain, Impossible: limit.Impossible, Drift: &drift, Counts: counts(t),
	})
}

// decades counts by the calendar's decades.
func (a *Almanac) decades(rows []foretell.Row, kinds bool) {
	var sum foretell.Tally
	from, open := 0, false
	end := func() {
		if !open {
			return
		}
		d := Decade{From: from, Counts: counts(sum)}
		if kinds {
			right, wrong := sum.Right, sum.Wrong
			d.Right, d.Wrong = &right, &wrong
		}
		a.Decades = append(a.Decades, d)
	}
	for i := range rows {
		if rows[i].Verdict == foretell.Unmarked {
			continue
		}
		day, _, err := sky.DateOf(rows[i].UT())
		if err != nil {
			continue
		}
		if first := 10 * int(math.Floor(float64(day.Year)/10)); !open || first != from {
			end()
			from, open, sum = first, true, foretell.Tally{}
		}
		sum.Add(&rows[i])
	}
	end()
}

func date(jd float64) string {
	d, _, err := sky.DateOf(jd)
	if err != nil {
		return ""
	}
	return d.String()
}

// JSON writes the almanac as one document.
func (a *Almanac) JSON(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(a)
}
