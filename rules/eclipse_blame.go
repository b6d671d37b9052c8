package rules

import (
	"fmt"

	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec/quantity"
)

// blame names the one thing that, made right, leaves the fewest wrong.
func blame(p *Pass, f *Finding, watch *foretell.Watch, m *foretell.Marker, got foretell.Tally, astray bool) {
	var worst *foretell.Share
	split := watch.Split(m)
	for i := range split {
		s := &split[i]
		if s.Hand == nil && astray {
			continue
		}
		if left := s.Tally.WrongCalls(); left < got.WrongCalls() && (worst == nil || left < worst.Tally.WrongCalls()) {
			worst = s
		}
	}
	switch {
	case worst == nil:
		all := watch.Tally(m, foretell.Exact)
		f.Message += fmt.Sprintf("; no one hand is to blame: with all of them exact %d would be missed and %d in vain", all.Missed, all.False)
		for _, s := range split {
			if s.Hand != nil {
				tell(p, f, s.Hand)
			}
		}
	case worst.Hand == nil:
		f.Message += fmt.Sprintf("; the arc of %s deg is to blame: of %s deg it would leave %d missed and %d in vain", fig(m.Arc), fig(sky.BestArc(m.Event)), worst.Tally.Missed, worst.Tally.False)
		f.See(arcOf(m), "the arc")
		widen(f, m)
	default:
		f.Message += fmt.Sprintf("; %s is to blame: exact, it would leave %d missed and %d in vain", worst.Hand.Title(), worst.Tally.Missed, worst.Tally.False)
		tell(p, f, worst.Hand)
		for _, j := range p.Train.Path(worst.Hand.Arbor, worst.Hand.Base) {
			f.See(jointAt(j), "through %s, ratio %s", j.Name(), j.Ratio)
		}
	}
}

// tell adds where a hand says what it shows, and how far it is off that.
func tell(p *Pass, f *Finding, h *foretell.Hand) {
	r := p.Train.Read(h.Hand)
	entry, _ := sky.Lookup(h.Shows)
	want, _ := entry.Days.Float64()
	period, ok := r.Period()
	if !ok {
		f.See(targetOf(h.Hand), "%s stands still", h.Title())
		return
	}
	gain := 360 * quantity.TropicalYear.Float() * (1/period.Float() - 1/want)
	f.See(targetOf(h.Hand), "%s turns once in %s, the %s is %s: %s deg a year", h.Title(), days(period.Float()), h.Shows, days(want), signed(gain))
}
