package rules

import (
	"fmt"
	"math"

	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "marker-width",
		Group:    Eclipses,
		Severity: Warning,
		Checks:   "the arc of a marker ends between the distance from the node at which its eclipse always comes and that at which it never does",
		Why:      "an arc shorter than the sure limit passes over eclipses that could not fail, one longer than the last limit promises eclipses that cannot be; either way visitors wait for the wrong day",
		Formula:  "for pointers of mean Sun and mean node, at mean syzygy, certain below and impossible above: any eclipse of the Sun 13.99 and 20.37 deg, a central one (total, annular or hybrid) 7.84 and 14.10, any of the Moon 14.15 and 20.61, one in her umbra 7.99 and 14.31, a total one 1.94 and 8.05; half_angle = length / (2 radius), halved on a hand that goes round twice in an eclipse year. Of what an arc within the sure limit lets through, share = 1 - arc / (90 deg x events in a lunation); of the calls of an arc beyond the last limit, in vain = 1 - (90 deg x events in a lunation) / arc",
		Source:   "limits and counts over the 11898 solar and 12064 lunar eclipses of the canons of Espenak and Meeus (NASA/TP-2006-214141, NASA/TP-2009-214172), against the mean arguments of Meeus, Astronomical Algorithms, ch. 49. Published limits of 15.4 and 18.5 deg are for the true Sun and node, which no mean train shows",
		Thresholds: []Threshold{
			{Name: "grave", Dimension: quantity.Plain, Default: "50", Doc: "percent of eclipses let through, or of calls in vain, from which on a marker within the limits is reported, too, and the finding is an error"},
		},
		Breaks: func() string { return markerExample("10") },
		Keeps:  func() string { return markerExample("16.2") },
		Run:    markerWidth,
	})
}

func markerExample(arc string) string {
	return `
design { title = "The Moon's node" }
arbor "node" {}
clock {
  on     = "node"
  period = "eclipse year"
}
hand "node_from_sun" {
  on    = "node"
  shows = "eclipse year"
}
marker "sun" {
  hand       = "node_from_sun"
  event      = "solar eclipse"
  half_angle = ` + arc + `
}
`
}

func markerWidth(p *Pass) {
	if len(p.Design.Markers) == 0 {
		return
	}
	model := foretold(p.Facts)
	known := map[*spec.Marker]bool{}
	for _, m := range model.Arcs {
		known[m.Marker] = true
	}
	for _, l := range model.Lacks {
		if l.Marker != nil && !known[l.Marker] {
			p.StandAside("%s", l)
		}
	}
	for _, m := range model.Arcs {
		if f := arc(m, p.Limit("grave")/100); f != nil {
			f.See(m.Marker.Event.Place(), "what it foretells")
			f.See(m.Radius.Place(), "the radius at which the arc lies")
			leaves(p, f, m)
			widen(f, m)
			p.Report(f)
		}
	}
}

// arc judges how far a marker reaches. Of the eclipses it lets through at
// least 1 - arc / whole, and of its calls at least 1 - whole / arc are in vain;
// where an arc keeps the limits and still loses the grave share, that is grave
// enough.
func arc(m *foretell.Marker, grave float64) *Finding {
	limit := sky.MeanLimit(m.Event)
	whole := 90 * sky.Frequency(m.Event) // the arc that holds as many syzygies as there are eclipses
	least := math.Max(limit.Certain, whole*(1-grave))
	most := limit.Impossible
	if grave < 1 {
		most = math.Min(most, whole/(1-grave))
	}
	if least <= m.Arc && m.Arc <= most {
		return nil
	}
	message := fmt.Sprintf("%s reaches %s deg from the node, wanted %s to %s deg for %s: ", m.Title(), fig(m.Arc), figures(least, 4), figures(most, 4), events(m.Event))
	share := 1 - m.Arc/whole
	if m.Arc < least {
		switch {
		case m.Arc < limit.Certain:
			message += fmt.Sprintf("whenever it calls, one comes, but it lets through all from there to %s deg and others as far as %s deg", fig(limit.Certain), fig(limit.Impossible))
		default:
			message += fmt.Sprintf("it lets through those from there to %s deg", fig(limit.Impossible))
		}
		message += fmt.Sprintf(", %s %% of them", figures(100*share, 2))
	} else {
		share = 1 - whole/m.Arc
		message += fmt.Sprintf("hardly one escapes it, but %s %% of its calls are in vain", figures(100*share, 2))
		if m.Arc > limit.Impossible {
			message += fmt.Sprintf(", for beyond %s deg none ever comes", fig(limit.Impossible))
		}
	}
	f := &Finding{Place: arcOf(m), Part: m.Title(), Message: message}
	if share >= grave {
		f.Weigh(Error)
	}
	return f
}

// arcOf is where the marker says how wide it is.
func arcOf(m *foretell.Marker) text.Place {
	if m.HalfAngle.Set() {
		return m.HalfAngle.Place()
	}
	return m.Length.Place()
}

// leaves adds what the drift of the marker's hands takes off what is sure.
func leaves(p *Pass, f *Finding, m *foretell.Marker) {
	if m.Node == nil {
		return
	}
	horizon, _ := horizonOf(p.Design)
	drift := math.Abs(m.Drift()) * horizon.Quo(quantity.TropicalYear).Float()
	if drift < 0.1 {
		return
	}
	left := sky.MeanLimit(m.Event).WithError(drift)
	f.See(targetOf(m.Node.Terms[0].Hand.Hand), "%s drifts by %s deg over %s, which leaves %s deg sure", m.Node, figures(drift, 3), years(horizon.Float()), figures(left.Certain, 4))
}
