package almanac

import (
	"math"
	"strings"

	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
)

// Event is one line: an eclipse of the sky, a call of the model, or both.
type Event struct {
	Date  string `json:"date"` // in UT: of the greatest eclipse, or of the call where the sky shows none
	Time  string `json:"time"`
	Kind  string `json:"kind"` // "total solar eclipse"; "solar eclipse" where there is none
	Body  string `json:"body"` // "solar" or "lunar"
	Sky   bool   `json:"sky"`
	Model *bool  `json:"model,omitempty"` // nil where the design has no marker for it

	Verdict   string   `json:"verdict"`
	ModelDate string   `json:"model_date,omitempty"` // of the new or full moon that the model shows
	ModelKind string   `json:"model_kind,omitempty"`
	KindRight *bool    `json:"kind_right,omitempty"`
	DaysOff   *float64 `json:"days_off,omitempty"` // the model after the sky
	Node      *float64 `json:"node_deg,omitempty"` // the Sun past the nearest node, as the model shows it
	Saros     *int     `json:"saros,omitempty"`
	WrongDay  bool     `json:"wrong_day,omitempty"`

	solar bool
	kind  sky.Kind
}

func event(r *foretell.Row) Event {
	e := Event{Body: "lunar", Verdict: string(r.Verdict), solar: r.Solar, WrongDay: r.WrongDay}
	if r.Solar {
		e.Body = "solar"
	}
	if ut, err := sky.FormatTime(r.UT()); err == nil {
		e.Date, e.Time, _ = strings.Cut(ut, "T")
		if len(e.Time) > 5 {
			e.Time = e.Time[:5]
		}
	}
	// near a false call there may be an eclipse, but of another sort or on
	// another day
	e.Sky = r.Verdict != foretell.False
	e.Kind = e.Body + " eclipse"
	if s := r.Eclipse; s != nil {
		e.kind = s.Kind
		e.Kind = string(s.Kind) + " " + e.Kind
		e.Saros = &s.Saros
	}
	if r.Verdict != foretell.Unmarked {
		model := r.Verdict != foretell.Missed
		e.Model = &model
	}
	if c := r.Call; c != nil {
		e.ModelDate = date(c.UT)
		node := rounded(c.Node, 3)
		e.Node = &node
		if r.Solar {
			e.ModelKind = string(c.Kind())
		}
	}
	if off, ok := r.Off(); ok {
		off = rounded(off, 3)
		e.DaysOff = &off
	}
	if right, ok := r.KindRight(); ok {
		e.KindRight = &right
	}
	return e
}

func rounded(x float64, places int) float64 {
	scale := math.Pow10(places)
	if x = math.Round(x*scale) / scale; x == 0 {
		return 0 // not -0
	}
	return x
}
