package rules

import (
	"wheelwork/rules/chain"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "chain-hunting",
		Group:    Chains,
		Severity: Note,
		Checks:   "a sprocket's teeth and the chain's links share no factor",
		Why:      "where they share one, the same teeth meet the same links over and over, and both wear unevenly",
		Formula:  "the same pair meets again after links / gcd(teeth, links) turns of the sprocket",
		Source:   "odd sprocket teeth with even links, coprime where possible: two makers' notes",
		Thresholds: []Threshold{
			{Name: "common_factor", Dimension: quantity.Plain, Default: "1", Doc: "the greatest common factor let pass"},
		},
		Breaks: func() string { return chainExample{small: 18, large: 33, chain: `size = "04C"; links = 86`}.text() },
		Keeps:  func() string { return chainExample{small: 17, large: 33, chain: `size = "04C"; links = 86`}.text() },
		Run:    chainHunting,
	})
}

func chainHunting(p *Pass) {
	most := p.Limit("common_factor")
	list := Chainings(p.Facts)
	for i := range list {
		c := &list[i]
		if !c.Chain.Links.Set() {
			continue
		}
		for j, s := range c.Chain.Over {
			gcd, turns, err := chain.HuntingTurns(int(s.Teeth.N), int(c.Chain.Links.N))
			if err != nil || float64(gcd) <= most {
				continue
			}
			f := p.Found(&c.Chain.Part, c.Chain.Sprockets.List[j].Place(), "%d teeth of %s and %d links share the factor %d: the same two meet again after %s instead of %d", s.Teeth.N, s.Title(), c.Chain.Links.N, gcd, counted(turns, "turn"), c.Chain.Links.N)
			f.Part = c.title()
			f.See(s.Teeth.Place(), "the teeth").See(c.Chain.Links.Place(), "the links")
			p.Report(f)
		}
	}
}
