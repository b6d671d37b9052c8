package rules

import (
	"fmt"
	"math"

	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

type foretoldKey struct{}

// foretold is what the design can foretell.
func foretold(f *Facts) *foretell.Model {
	return Shared(f, foretoldKey{}, func(f *Facts) *foretell.Model { return foretell.Of(f.Train) })
}

// unread makes a rule stand aside for the markers that cannot be read.
func unread(p *Pass, m *foretell.Model) {
	for _, l := range m.Lacks {
		if l.Marker != nil {
			p.StandAside("%s", l)
		}
	}
}

// horizonOf is for how long the design should hold, in days, and whether it
// says so itself.
func horizonOf(d *spec.Design) (days exact.Rat, said bool) {
	if h := d.Head.Horizon; h.Set() {
		return h.Exact, true
	}
	return quantity.TropicalYear.Mul(exact.Int(100)), false
}

// events is the plural of what a marker foretells.
func events(ev sky.Event) string { return string(ev) + "s" }

// widen adds the remedy that makes a marker's arc the best for its event.
func widen(f *Finding, m *foretell.Marker) {
	best := sky.BestArc(m.Event)
	scale := best / m.Arc
	title := fmt.Sprintf("make the arc reach %s deg, which is wrong least often", fig(best))
	if at := m.HalfAngle; at.Set() {
		if edit, ok := Figure(at.At, tenths(at.Or(0)*scale), "deg"); ok {
			f.Mend(title, edit)
		}
		return
	}
	length := hundredths(m.Length.Or(0) * scale)
	if edit, ok := Figure(m.Length.At, length, "mm"); ok {
		f.Mend(fmt.Sprintf("%s: %s long", title, mm(length.Float())), edit)
	}
}

// tenths is a figure to a tenth.
func tenths(x float64) exact.Rat { return exact.Frac(int64(math.Round(x*10)), 10) }

// percent is a share for people.
func percent(part, whole int) string {
	if whole == 0 {
		return "0 %"
	}
	return figures(100*float64(part)/float64(whole), 2) + " %"
}
