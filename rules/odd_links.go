package rules

func init() {
	register(&Rule{
		Name:     "odd-links",
		Group:    Chains,
		Severity: Warning,
		Checks:   "a chain has an even number of links",
		Why:      "inner and outer links alternate, so an odd number closes only with an offset link, which bends and breaks first",
		Source:   "Ramsey and Tsubaki, makers' notes",
		Breaks:   func() string { return chainExample{small: 17, large: 34, chain: `size = "04C"; links = 85`}.text() },
		Keeps:    func() string { return chainExample{small: 17, large: 34, chain: `size = "04C"; links = 86`}.text() },
		Run:      oddLinks,
	})
}

func oddLinks(p *Pass) {
	list := Chainings(p.Facts)
	for i := range list {
		c := &list[i]
		if !c.Chain.Links.Set() || c.Chain.Links.N%2 == 0 {
			continue
		}
		f := p.Found(&c.Chain.Part, c.Chain.Links.Place(), "%s has %d links, an odd number: it needs an offset link", c.title(), c.Chain.Links.N)
		f.Part = c.title()
		c.even(p, f)
		p.Report(f)
	}
}
