package rules

import (
	"fmt"
	"math"
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "drift",
		Group:    Motion,
		Severity: Warning,
		Checks:   "a hand that shows a period, of the sky or of another hand, is still right at the end of the design's horizon",
		Why:      "an error too small to see in a month adds up over the years for which the model stands in its case: the phase comes a day early, then a week, and visitors read it as true",
		Formula:  "degrees = (rate - rate wanted) x horizon x 360, days = (1 - rate x period wanted) x horizon; a hand is reported when both pass their bound, since a day is nothing to Saturn's hand and fifteen degrees are an hour to a tide hand. A hand that shows the sky and keeps a tolerance of its own is held to kept_degrees alone; one that breaks it is period-error's. A quoted period is taken as what its digits may stand for, and with a tolerance is held to that alone",
		Source:   "periods of the catalogue, each with its own source; the bounds are common practice: 15 degrees are a day and a quarter of the Moon's age, half a turn shows the opposite of the sky. A design that states no horizon is read over 100 yr, and its drift is a note, unless the hand is off by more than cycle: published clockwork shows its periods to a fiftieth",
		Thresholds: []Threshold{
			{Name: "degrees", Dimension: quantity.Angle, Default: "15 deg", Doc: "what a hand without a tolerance may be off by over the horizon"},
			{Name: "days", Dimension: quantity.Time, Default: "1 d", Doc: "time lost over the horizon below which no hand is reported"},
			{Name: "cycle", Dimension: quantity.Plain, Default: "1/20", Doc: "part of its period beyond which a hand has another cycle, whatever the horizon"},
			{Name: "kept_degrees", Dimension: quantity.Angle, Default: "180 deg", Doc: "what a hand may be off by over the horizon that keeps its own tolerance"},
		},
		Breaks: func() string { return driftExample(10, 40, 8, 59) },
		Keeps:  func() string { return driftExample(4, 60, 32, 63) },
		Run:    drift,
	})
}

func driftExample(a1, b1, a2, b2 int) string {
	return fmt.Sprintf(`
design {
  title   = "Age of the Moon"
  horizon = "50 yr"
}
arbor "day" {}
arbor "lay" {}
arbor "moon" {}
wheel "a1" {
  on    = "day"
  teeth = %d
}
wheel "b1" {
  on    = "lay"
  teeth = %d
}
wheel "a2" {
  on    = "lay"
  teeth = %d
}
wheel "b2" {
  on    = "moon"
  teeth = %d
}
mesh { wheels = ["a1", "b1"] }
mesh { wheels = ["a2", "b2"] }
clock {
  on     = "day"
  period = "solar day"
}
hand "age" {
  on    = "moon"
  shows = "synodic month"
}
`, a1, b1, a2, b2)
}

func drift(p *Pass) {
	horizon, said := horizonOf(p.Design)
	bound, kept, days := p.Bound("degrees"), p.Bound("kept_degrees"), p.Bound("days")
	var missing lack
	for _, h := range p.Design.Hands {
		sky := h.Shows.Set() || h.Period.Entry != ""
		if !sky && (h.Within.Set() || !exactly(h.Ratio) && !h.Period.Set()) {
			continue // a tolerance of its own holds, or it need not show anything
		}
		r := p.Train.Read(h)
		if !sky {
			r = meant(r)
		}
		degrees, ok := r.Off(quantity.AngleOver, horizon)
		lost, _ := r.Off(quantity.TimeOver, horizon)
		if !ok || !r.HasError {
			missing.of("how far it drifts is not known, "+noPeriod(p, r), h.Title())
			continue
		}
		most := bound
		if h.Within.Set() {
			if off, ok := r.Off(h.Within.Measure, h.Within.Span); !ok || off.Abs().Cmp(h.Within.Amount) > 0 {
				continue // period-error tells it
			}
			most = kept
		}
		if degrees.Abs().Cmp(most) > 0 && lost.Abs().Cmp(days) > 0 {
			f := drifting(p, h, r, horizon, degrees.Float(), lost.Float())
			if !said && r.Error.Abs().Cmp(p.Bound("cycle")) <= 0 {
				f.Weigh(Note) // nobody said for how long it should hold
			}
			p.Report(f)
		}
	}
	missing.tell(p)
}

// exactly reports whether a ratio is given as a fraction or a whole number; a
// decimal one is rounded.
func exactly(ratio spec.Number) bool {
	return ratio.Set() && (ratio.Exact.IsInt() || strings.Contains(ratio.Place().Text(), "/"))
}

// meant reads a hand against the period, of those that its quoted digits may
// stand for, which it keeps best.
func meant(r train.Reading) train.Reading {
	unit, ok := lastDigit(r.Hand.Period)
	period, turns := r.Period()
	if !ok || !turns {
		return r
	}
	switch off := period.Sub(r.Wanted); {
	case off.Abs().Cmp(unit) <= 0:
		r.Wanted = period
	case off.Sign() > 0:
		r.Wanted = r.Wanted.Add(unit)
	case r.Wanted.Cmp(unit) > 0:
		r.Wanted = r.Wanted.Sub(unit)
	}
	return r
}

func drifting(p *Pass, h *spec.Hand, r train.Reading, horizon exact.Rat, degrees, lost float64) *Finding {
	way := "ahead"
	if degrees < 0 {
		way = "behind"
	}
	span := horizon.Float()
	want := wanted(r, h)
	if h.Period.Set() && !r.Wanted.Equal(h.Period.Days) {
		want += ", the nearest that " + targetOf(h).Text() + " may stand for"
	}
	f := p.Found(&h.Part, targetOf(h), "%s %s, wanted %s: over %s it runs %s by %s deg, or %s; a degree is lost in %s, a day in %s",
		h.Title(), turns(r), want, years(span), way, figures(math.Abs(degrees), 4), roundDays(math.Abs(lost)),
		roughYears(span/math.Abs(degrees)), roughYears(span/math.Abs(lost)))
	f.See(p.Design.Head.Horizon.Place(), "the horizon")
	f.See(h.Within.Place(), "the tolerance, which it keeps")
	for _, j := range p.Train.Path(h.Arbor, h.Base) {
		f.See(jointAt(j), "through %s, ratio %s", j.Name(), j.Ratio)
	}
	return f
}

func roundDays(x float64) string { return figures(x, 4) + " d" }

// roughYears is a span in days as years, to three digits.
func roughYears(x float64) string {
	return figures(x/quantity.TropicalYear.Float(), 3) + " yr"
}
