package rules

import (
	"math"

	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "chain-span",
		Group:    Chains,
		Severity: Error,
		Checks:   "the sprockets of a chain clear one another and stand neither too near nor too far apart",
		Why:      "sprockets that touch jam; a short chain bends the same links too often, a long one whips and hangs",
		Formula:  "C > (da1 + da2) / 2; C in pitches of the chain",
		Source:   "30 to 50 pitches, about 20 under a pulsating load (HKK); up to 80 (from memory)",
		Thresholds: []Threshold{
			{Name: "near", Dimension: quantity.Plain, Default: "20", Doc: "the least centre distance in pitches: less is a note"},
			{Name: "far", Dimension: quantity.Plain, Default: "80", Doc: "the greatest centre distance in pitches: more is a warning"},
		},
		Breaks: func() string { return chainExample{small: 17, large: 34, distance: "55", chain: `size = "04C"`}.text() },
		Keeps: func() string {
			return chainExample{small: 17, large: 34, distance: "191", chain: `size = "04C"`}.text()
		},
		Run: chainSpan,
	})
}

func chainSpan(p *Pass) {
	var lacking lack
	list := Chainings(p.Facts)
	near, far := p.Limit("near"), p.Limit("far")
	for i := range list {
		c := &list[i]
		if c.Lacks != "" {
			lacking.of(c.Lacks, c.Chain.Label())
			continue
		}
		if !c.Placed || clashOf(p, c) {
			continue
		}
		if c.Fault != nil {
			f := p.Found(&c.Chain.Part, c.Chain.Sprockets.Place(), "%s cannot lie so: %v", c.title(), c.Fault)
			f.Part = c.title()
			p.Report(f)
			continue
		}
		centre, two := c.Centre()
		if !two {
			continue
		}
		pitches := centre / c.Pitch
		f := p.Found(&c.Chain.Part, c.Chain.Sprockets.Place(), "the sprockets of %s stand %s apart, %s pitches", c.title(), mm(centre), toHundredth(pitches))
		f.Part = c.title()
		switch {
		case pitches < near:
			f.Message += ": fewer than " + fig(near) + " bend the same links too often"
			p.Report(f.Weigh(Note))
		case pitches > far:
			f.Message += ": more than " + fig(far) + " whip and hang, without a tensioner or a guide"
			p.Report(f.Weigh(Warning))
		}
	}
	lacking.tell(p)
}

// clashOf reports sprockets of one chain that run into one another.
func clashOf(p *Pass, c *Chaining) bool {
	clash := false
	for i, a := range c.Places {
		for j := i + 1; j < len(c.Places); j++ {
			b := c.Places[j]
			tipA, errA := c.SprocketTip(c.Chain.Over[i])
			tipB, errB := c.SprocketTip(c.Chain.Over[j])
			apart := math.Hypot(a.X-b.X, a.Y-b.Y)
			if errA != nil || errB != nil || apart > (tipA+tipB)/2 {
				continue
			}
			f := p.Found(&c.Chain.Part, c.Chain.Sprockets.List[j].Place(), "the sprockets of %s run into one another: %s apart, wanted more than %s", c.title(), mm(apart), mm((tipA+tipB)/2))
			f.Part = c.title()
			f.See(c.Chain.Over[i].Teeth.Place(), "%s, at most %s across", c.Chain.Over[i].Title(), mm(tipA))
			f.See(c.Chain.Over[j].Teeth.Place(), "%s, at most %s across", c.Chain.Over[j].Title(), mm(tipB))
			p.Report(f)
			clash = true
		}
	}
	return clash
}
