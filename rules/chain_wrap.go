package rules

import (
	"wheelwork/rules/chain"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "chain-wrap",
		Group:    Chains,
		Severity: Warning,
		Checks:   "a chain lies round enough of every sprocket",
		Why:      "on a short arc few teeth share the pull, and a chain with some slack jumps over them",
		Formula:  "wrap = 180 deg - 2 b on the smaller sprocket, sin b = (R2 - R1) / C; by tangents for more than two",
		Source:   "120 deg, and 90 deg where tension is well kept (Diamond Chain)",
		Thresholds: []Threshold{
			{Name: "least", Dimension: quantity.Angle, Default: "120 deg", Doc: "the least wrap"},
			{Name: "tensioned", Dimension: quantity.Angle, Default: "90 deg", Doc: "the least where the tension is well kept: less is an error"},
		},
		Breaks: func() string {
			return chainExample{small: 11, large: 77, distance: "130", chain: `size = "04C"`}.text()
		},
		Keeps: func() string {
			return chainExample{small: 11, large: 77, distance: "134", chain: `size = "04C"`}.text()
		},
		Run: chainWrap,
	})
}

func chainWrap(p *Pass) {
	var lacking lack
	list := Chainings(p.Facts)
	least, tensioned := p.Limit("least"), p.Limit("tensioned")
	for i := range list {
		c := &list[i]
		if c.Lacks != "" {
			lacking.of(c.Lacks, c.Chain.Label())
		}
		if !c.HasCourse {
			continue
		}
		for j, wrap := range c.Course.Wrap {
			if wrap >= least {
				continue
			}
			s := c.Chain.Over[j]
			f := p.Found(&c.Chain.Part, c.Chain.Sprockets.List[j].Place(), "%s lies round only %s deg of %s, wanted %s deg", c.title(), toHundredth(wrap), s.Title(), fig(least))
			f.Part = c.title()
			f.See(s.Teeth.Place(), "%d teeth", s.Teeth.N)
			if z1, z2 := c.teeth(); len(c.Places) == 2 && !c.Chain.Crossed.On {
				if centre, err := chain.CentreForWrap(z1, z2, least); err == nil {
					f.Message += ": from " + mm(centre*c.Pitch) + " apart the sprockets have it"
				}
			}
			if wrap < tensioned {
				f.Weigh(Error)
			}
			p.Report(f)
		}
	}
	lacking.tell(p)
}
