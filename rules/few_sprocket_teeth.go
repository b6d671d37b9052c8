package rules

import (
	"wheelwork/rules/chain"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "few-sprocket-teeth",
		Group:    Chains,
		Severity: Warning,
		Checks:   "a sprocket has teeth enough to run evenly, and not so many that a worn chain climbs it",
		Why:      "the chain bends by 360 deg / z at every tooth and its speed swells and falls with the polygon: with few teeth it knocks, wears and shakes the train",
		Formula:  "the chain's speed varies by 1 - cos(180 deg / z)",
		Source:   "12 teeth for slow drives, 17 for medium (Diamond Chain); more than 13, at most 120 (Tsubaki); 9 the absolute minimum (handbooks, from memory)",
		Thresholds: []Threshold{
			{Name: "fewest", Dimension: quantity.Plain, Default: "9", Doc: "the absolute minimum: fewer is an error"},
			{Name: "slow", Dimension: quantity.Plain, Default: "12", Doc: "the least for slow drives: fewer is a warning"},
			{Name: "smooth", Dimension: quantity.Plain, Default: "17", Doc: "the least for smooth running: fewer is a note"},
			{Name: "most", Dimension: quantity.Plain, Default: "120", Doc: "the most: more is a note"},
		},
		Breaks: func() string { return chainExample{small: 10, large: 34, chain: `size = "04C"`}.text() },
		Keeps:  func() string { return chainExample{small: 17, large: 34, chain: `size = "04C"`}.text() },
		Run:    fewSprocketTeeth,
	})
}

func fewSprocketTeeth(p *Pass) {
	fewest, slow, smooth, most := p.Limit("fewest"), p.Limit("slow"), p.Limit("smooth"), p.Limit("most")
	for _, s := range p.Design.Sprockets {
		if !s.Teeth.Set() {
			continue
		}
		z := float64(s.Teeth.N)
		if z > most {
			p.Report(p.Found(&s.Part, s.Teeth.Place(), "%d teeth are more than %s: a worn chain climbs them", s.Teeth.N, fig(most)).Weigh(Note))
			continue
		}
		severity, bound, what := Off, 0.0, ""
		switch {
		case z < fewest:
			severity, bound, what = Error, fewest, "the absolute minimum"
		case z < slow:
			severity, bound, what = Warning, slow, "the least for slow drives"
		case z < smooth:
			severity, bound, what = Note, smooth, "the least for smooth running"
		default:
			continue
		}
		f := p.Found(&s.Part, s.Teeth.Place(), "%d teeth are fewer than %s, %s", s.Teeth.N, fig(bound), what)
		if drop, _, err := chain.ChordalRipple(int(s.Teeth.N)); err == nil {
			f.Message += ": the chain's speed varies by " + toHundredth(100*drop) + " %"
		}
		p.Report(f.Weigh(severity))
	}
}
