// Package motion writes what the hands and arbors of a design do.
package motion

import (
	"encoding/json"
	"io"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

// Motion is what a design's hands and arbors do. What cannot be known from the
// spec is nil or empty, and left out of the JSON.
type Motion struct {
	Design string `json:"design"` // its title
	Time   string `json:"time,omitempty"`
	// Horizon is for how many days the design should hold, if it says so.
	Horizon *float64 `json:"horizon_days,omitempty"`
	Hands   []Hand   `json:"hands"`
	Arbors  []Arbor  `json:"arbors"`
}

// The two kinds of time: the clock's, or where a design has drives and no
// clock the watch's.
const (
	ModelTime = "model"
	WatchTime = "watch"
)

// Hand is what one hand does, against what it is read against, beside what it
// should do.
type Hand struct {
	Name    string `json:"name"`
	On      string `json:"on"`
	Against string `json:"against"`
	// Rate is in turns a day, "p/q", counter-clockwise positive.
	Rate       string   `json:"rate,omitempty"`
	PeriodDays *float64 `json:"period_days,omitempty"`
	Sense      string   `json:"sense,omitempty"`
	Shows      string   `json:"shows,omitempty"` // the catalogue's name of what it shows
	WantedDays *float64 `json:"wanted_days,omitempty"`
	Within     string   `json:"within,omitempty"` // as the spec says it
	// ErrorPPM is positive for a slow hand, Drift for one that gains.
	ErrorPPM          *float64 `json:"error_ppm,omitempty"`
	Drift             *float64 `json:"drift_deg_per_year,omitempty"`
	YearsPerDayLost   *float64 `json:"years_per_day_lost,omitempty"`
	YearsPerDegreeOff *float64 `json:"years_per_degree_lost,omitempty"`
	// Ahead is what Drift comes to over the horizon; Late is by how many days the
	// time read off the hand is then behind.
	Ahead *float64 `json:"drift_deg_over_horizon,omitempty"`
	Late  *float64 `json:"days_lost_over_horizon,omitempty"`
}

// Arbor is what one arbor or stud does against the frame.
type Arbor struct {
	Name       string   `json:"name"`
	Kind       string   `json:"kind"` // "arbor" or "stud"
	CarriedBy  string   `json:"carried_by"`
	Rate       string   `json:"rate,omitempty"`
	PeriodDays *float64 `json:"period_days,omitempty"`
	Sense      string   `json:"sense,omitempty"`
}

// Of is the motion of a design.
func Of(t *train.Train) *Motion {
	d := t.Design
	m := &Motion{Design: d.Head.Title.Text, Hands: []Hand{}, Arbors: []Arbor{}}
	switch {
	case t.RealTime():
		m.Time = WatchTime
	case t.Timed():
		m.Time = ModelTime
	}
	horizon := d.Head.Horizon
	if horizon.Set() {
		m.Horizon = float(horizon.Exact)
	}
	for _, h := range d.Hands {
		r := t.Read(h)
		one := hand(r)
		if horizon.Set() {
			one.over(r, horizon.Exact)
		}
		m.Hands = append(m.Hands, one)
	}
	for _, a := range d.Arbors {
		one := Arbor{Name: a.Name.Text, Kind: a.Kind, CarriedBy: a.CarrierName()}
		if rate, ok := t.ArborRate(a); ok && t.Timed() {
			one.Rate, one.Sense = rate.Fraction(), train.Sense(rate)
			one.PeriodDays = period(rate)
		}
		m.Arbors = append(m.Arbors, one)
	}
	return m
}

func hand(r train.Reading) Hand {
	h := r.Hand
	one := Hand{
		Name: h.Name.Text, On: h.On.Text, Against: h.Against.Or(spec.Frame),
		Shows: h.Shows.Entry,
	}
	if h.Within.Set() {
		one.Within = figure.Unquoted(h.Within.Place().Text())
	}
	if one.Shows == "" {
		one.Shows = h.Period.Entry
	}
	if r.Known {
		one.Rate, one.Sense = r.Rate.Fraction(), train.Sense(r.Rate)
		one.PeriodDays = period(r.Rate)
	}
	if r.HasWanted {
		one.WantedDays = float(r.Wanted)
	}
	if r.HasError {
		ppm := r.PPM()
		one.ErrorPPM = &ppm
	}
	if d, ok := r.Drift(); ok {
		one.Drift = float(d)
		one.YearsPerDegreeOff = years(d)
	}
	if d, ok := r.Lost(); ok {
		one.YearsPerDayLost = years(d)
	}
	return one
}

// over adds what the hand is off at the end of a span of days.
func (h *Hand) over(r train.Reading, span exact.Rat) {
	if off, ok := r.Off(quantity.AngleOver, span); ok {
		h.Ahead = float(off)
	}
	if off, ok := r.Off(quantity.TimeOver, span); ok {
		h.Late = float(off)
	}
}

// period is how long a turn takes in days; nothing for what stands still.
func period(rate exact.Rat) *float64 {
	if rate.IsZero() {
		return nil
	}
	return float(rate.Abs().Inv())
}

// years is how many years it takes until an error of so much a year makes
// one; nothing where there is no error.
func years(perYear exact.Rat) *float64 {
	if perYear.IsZero() {
		return nil
	}
	return float(perYear.Abs().Inv())
}

func float(x exact.Rat) *float64 {
	f := x.Float()
	return &f
}

// JSON writes the motion as one document.
func (m *Motion) JSON(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(m)
}
