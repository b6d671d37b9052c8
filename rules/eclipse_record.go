package rules

import (
	"errors"
	"fmt"
	"math"

	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "eclipse-record",
		Group:    Eclipses,
		Severity: Warning,
		Checks:   "from the date it is set to until the end of its horizon the model foretells the sky's eclipses, and invents few",
		Why:      "that it foretells is what the buyer was promised: a node of 18.5 years is right for ten of them, misses every seventh eclipse after forty and every third after a hundred, and nobody at the bench lives to see it",
		Formula:  "the hands are set to the mean Sun, Moon, node on the epoch and run on at their exact rates; at each new or full moon that the model shows, it foretells where the Sun is nearer to the node than the arc reaches. missed = eclipses not foretold within days of the greatest eclipse / eclipses of the sky, false = calls without one / calls; both less what exact hands with the best arc (16.2 deg; central 9.5, in the umbra 9.1, total of the Moon 6.5) come to, for no single arc is right every time. A node that is d degrees out is wrong about 4 d / 360 of all lunations. Each hand is then made exact in turn: the one that leaves the fewest wrong is to blame. An arc outside the limits of marker-width is that rule's",
		Source:   "mean arguments and phases: Meeus, Astronomical Algorithms, ch. 47 and 49; the sky's eclipses agree with the canons of Espenak and Meeus (NASA/TP-2006-214141, NASA/TP-2009-214172); the bounds are common practice: 5 % more than the best are an error of two degrees in the mean",
		Thresholds: []Threshold{
			{Name: "missed", Dimension: quantity.Plain, Default: "5", Doc: "percent of the sky's eclipses that it may miss more than exact hands and the best arc do"},
			{Name: "false", Dimension: quantity.Plain, Default: "5", Doc: "percent of its calls that may be in vain more than theirs"},
			{Name: "days", Dimension: quantity.Time, Default: "1.5 d", Doc: "how far its new or full moon may fall from the greatest eclipse: the true moon is up to 0.6 d from the mean one"},
		},
		Breaks: func() string { return recordExample(37, 50) },
		Keeps:  func() string { return recordExample(22, 110) },
		Run:    eclipseRecord,
	})
}

func recordExample(first, second int) string {
	lay := 10
	if first == 22 {
		lay = 13
	}
	return fmt.Sprintf(`
design {
  title   = "Moon and node from the year"
  epoch   = "2027-01-01"
  horizon = "100 yr"
}
arbor "year" {}
arbor "moon" {}
arbor "lay" {}
arbor "node" {}
wheel "year_moon" {
  on    = "year"
  teeth = 4131
}
wheel "moon" {
  on    = "moon"
  teeth = 334
}
wheel "year_node" {
  on    = "year"
  teeth = %d
}
wheel "lay_great" {
  on    = "lay"
  teeth = %d
}
wheel "lay_pinion" {
  on    = "lay"
  teeth = 10
}
wheel "node" {
  on    = "node"
  teeth = %d
  kind  = "ring"
}
mesh { wheels = ["year_moon", "moon"] }
mesh { wheels = ["year_node", "lay_great"] }
mesh { wheels = ["lay_pinion", "node"] }
clock {
  on     = "year"
  period = "tropical year"
}
hand "year" {
  on    = "year"
  shows = "tropical year"
}
hand "age" {
  on    = "moon"
  shows = "synodic month"
}
hand "node" {
  on    = "node"
  shows = "lunar node"
}
marker "sun" {
  hand       = "node"
  event      = "solar eclipse"
  half_angle = 16.2
}
`, lay, first, second)
}

func eclipseRecord(p *Pass) {
	if len(p.Design.Markers) == 0 {
		return
	}
	model := foretold(p.Facts)
	unread(p, model)
	if len(model.Markers) == 0 {
		return
	}
	if model.Phase == nil {
		for _, l := range model.Lacks {
			if l.Marker == nil {
				p.StandAside("%s", l) // the first is the phase's
				return
			}
		}
	}
	epoch := p.Design.Head.Epoch
	if !epoch.Set() {
		p.StandAside("the design states no epoch, the date it is set to")
		return
	}
	horizon, said := horizonOf(p.Design)
	from := foretell.DayOf(epoch)
	to := math.Min(from+horizon.Float(), sky.EndDay)
	var watch *foretell.Watch
	run, err := model.SetOn(from)
	if err == nil {
		watch, err = run.Watch(from, to, p.Limit("days"))
	}
	if outside := (*sky.SpanError)(nil); errors.As(err, &outside) || errors.Is(err, foretell.ErrSpan) {
		p.StandAside("the epoch lies outside the years %d to %d for which the sky's eclipses are known", sky.FirstYear, sky.LastYear)
		return
	}
	for _, m := range model.Markers {
		if f := record(p, watch, m, to-from); f != nil {
			f.See(epoch.Place(), "the date it is set to")
			f.See(p.Design.Head.Horizon.Place(), "the horizon")
			if !said {
				f.Weigh(Note) // nobody said for how long it should hold
			}
			p.Report(f)
		}
	}
}

// record reports a marker that is wrong more often than it may be.
func record(p *Pass, watch *foretell.Watch, m *foretell.Marker, span float64) *Finding {
	got := watch.Tally(m, nil)
	if !over(p, got, foretell.Tally{}) {
		return nil // not even all told
	}
	limit := sky.MeanLimit(m.Event)
	astray := m.Arc < limit.Certain || m.Arc > limit.Impossible
	least, than := watch.Least(m), "exact hands with the best arc"
	if astray {
		least, than = watch.Tally(m, foretell.Exact), "exact hands with that arc"
	}
	if !over(p, got, least) {
		return nil
	}
	f := p.Found(&m.Part, m.Marker.Event.Place(), "%s: over %s it foretells %d of the sky's %d %s and misses %d (%s), and %d of its %d calls are in vain (%s), where %s miss %d and call %d in vain",
		m.Title(), years(span), got.Foretold, got.Sky, events(m.Event), got.Missed, percent(got.Missed, got.Sky), got.False, got.Calls(), percent(got.False, got.Calls()), than, least.Missed, least.False)
	if got.WrongDay > 0 {
		f.Message += fmt.Sprintf("; %d of those missed it calls on a wrong day", got.WrongDay)
	}
	blame(p, f, watch, m, got, astray)
	return f
}

// over tells whether the shares of a tally pass those of another by more than
// the bounds.
func over(p *Pass, got, than foretell.Tally) bool {
	share := func(part, whole int) float64 {
		if whole == 0 {
			return 0
		}
		return 100 * float64(part) / float64(whole)
	}
	return share(got.Missed, got.Sky)-share(than.Missed, than.Sky) > p.Limit("missed") ||
		share(got.False, got.Calls())-share(than.False, than.Calls()) > p.Limit("false")
}
