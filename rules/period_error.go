package rules

import (
	"fmt"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "period-error",
		Group:    Motion,
		Severity: Error,
		Checks:   "every hand keeps the period it should show within its stated tolerance, and none that should turn stands still",
		Why:      "a tooth too many in one wheel shifts every hand behind it, and a dial that is off from the first day cannot be mended by setting it",
		Formula:  "error = period of the hand / period wanted - 1; over a span, (rate - rate wanted) x span in degrees, (1 - rate x period wanted) x span in days",
		Source:   "periods of the catalogue, each with its own source; the tolerance is the design's own",
		Breaks:   func() string { return periodExample(31) },
		Keeps:    func() string { return periodExample(30) },
		Run:      periodError,
	})
}

func periodExample(teeth int) string {
	return fmt.Sprintf(`
design { title = "Date ring" }
arbor "day" {}
arbor "ring" {}
wheel "first" {
  on    = "day"
  teeth = 10
}
wheel "second" {
  on    = "ring"
  teeth = %d
}
mesh { wheels = ["first", "second"] }
clock {
  on     = "day"
  period = "solar day"
}
hand "thirds" {
  on     = "ring"
  period = "3 d"
  within = "100 ppm"
}
`, teeth)
}

func periodError(p *Pass) {
	for _, h := range p.Design.Hands {
		r := p.Train.Read(h)
		if r.Known && r.Rate.IsZero() && r.HasWanted {
			stopped(p, h, r)
			continue
		}
		if !h.Within.Set() {
			continue
		}
		off, ok := r.Off(h.Within.Measure, h.Within.Span)
		if !ok {
			if h.Shows.Set() || h.Period.Set() || h.Ratio.Set() {
				p.StandAside("the period of hand %q is not known: %s", h.Name.Text, noPeriod(p, r))
			} else {
				p.StandAside("hand %q has a tolerance but neither shows, period nor ratio", h.Name.Text)
			}
			continue
		}
		if off.Abs().Cmp(h.Within.Amount) <= 0 {
			continue
		}
		f := p.Found(&h.Part, targetOf(h), "%s %s, wanted %s: off by %s, more than its %s", h.Title(), turns(r), wanted(r, h), amount(h.Within.Measure, off.Float(), h.Within.Span.Float()), h.Within.Place().Text())
		f.See(h.Within.Place(), "the tolerance")
		for _, j := range p.Train.Path(h.Arbor, h.Base) {
			f.See(j.Part.Head, "through %s, ratio %s", j.Name(), j.Ratio)
		}
		p.Report(f)
	}
}

// stopped reports a hand that should turn and stands still.
func stopped(p *Pass, h *spec.Hand, r train.Reading) {
	f := p.Found(&h.Part, targetOf(h), "%s stands still against %s, wanted %s", h.Title(), baseName(h), wanted(r, h))
	for _, j := range p.Train.Path(h.Arbor, h.Base) {
		f.See(j.Part.Head, "through %s, ratio %s", j.Name(), j.Ratio)
	}
	p.Report(f)
}

// baseName is what a hand is read against.
func baseName(h *spec.Hand) string { return h.Against.Or("the " + spec.Frame) }

// targetOf is where the hand says what it should show.
func targetOf(h *spec.Hand) text.Place {
	switch {
	case h.Shows.Set():
		return h.Shows.Place()
	case h.Period.Set():
		return h.Period.Place()
	case h.Ratio.Set():
		return h.Ratio.Place()
	}
	return h.Head
}

// noPeriod says for want of what a hand's period is not known.
func noPeriod(p *Pass, r train.Reading) string {
	switch {
	case !p.Train.Timed() && r.Hand.Ratio.Set():
		return "nothing ties it to the hand its ratio refers to"
	case !p.Train.Timed():
		return "neither a clock nor a drive settles the time"
	case !r.Known:
		return "nothing turns it"
	}
	return "it stands still"
}

// turns says what a hand does.
func turns(r train.Reading) string {
	if period, ok := r.Period(); ok {
		return "turns once in " + days(period.Float())
	}
	if r.Known {
		return "stands still"
	}
	return "turns"
}

func wanted(r train.Reading, h *spec.Hand) string {
	if h.Ratio.Set() {
		return fmt.Sprintf("%s turns for one of hand %q", h.Ratio.Exact, h.Of.Text)
	}
	s := days(r.Wanted.Float())
	if e := h.Shows.Entry + h.Period.Entry; e != "" {
		s += " (" + e + ")"
	}
	return s
}

// amount says an error in the measure of a tolerance.
func amount(m quantity.Measure, off, span float64) string {
	switch m {
	case quantity.AngleOver:
		return fmt.Sprintf("%+.3g deg in %s", off, years(span))
	case quantity.TimeOver:
		return fmt.Sprintf("%+.3g d in %s", off, years(span))
	}
	return ppm(off)
}
