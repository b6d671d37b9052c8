package rules

import (
	"math"

	"wheelwork/rules/chain"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "link-count",
		Group:    Chains,
		Severity: Error,
		Checks:   "a chain has as many links as its sprockets' places ask for: enough to close, and not so many that it hangs",
		Why:      "a chain too short cannot be closed, or bends its arbors; one too long hangs into other parts and jumps off",
		Formula:  "L = 2 C cos b + (z1 + z2) / 2 + (z2 - z1) b / 180, sin b = (R2 - R1) / C, all in pitches, for two sprockets; the course by tangents for more. Sag s on a span S takes up 8 s^2 / (3 S)",
		Source:   "computed from the formula, agrees with Shigley eq. 17-34 (from memory); slack of 4 % of the span in ordinary drives (HKK, Diamond Chain), the bound of twice that is common practice",
		Thresholds: []Threshold{
			{Name: "slack", Dimension: quantity.Plain, Default: "0.08", Doc: "the greatest sag, as a part of the span"},
			{Name: "short", Dimension: quantity.Plain, Default: "0.01", Doc: "how many pitches too short it may be: what positions lose in rounding"},
		},
		Breaks: func() string {
			return chainExample{small: 17, large: 34, distance: "191.1", chain: `size = "04C"; links = 84`}.text()
		},
		Keeps: func() string {
			return chainExample{small: 17, large: 34, distance: "191.1", chain: `size = "04C"; links = 86`}.text()
		},
		Run: linkCount,
	})
}

func linkCount(p *Pass) {
	var lacking lack
	list := Chainings(p.Facts)
	for i := range list {
		c := &list[i]
		switch {
		case c.Lacks != "":
			lacking.of(c.Lacks, c.Chain.Label())
		case !c.Chain.Links.Set():
			lacking.of("a chain gives no links", c.Chain.Label())
		case c.HasCourse:
			linksOf(p, c)
		}
	}
	lacking.tell(p)
}

func linksOf(p *Pass, c *Chaining) {
	links, taut := float64(c.Chain.Links.N), c.Course.Length
	if taut-links > p.Limit("short") {
		f := p.Found(&c.Chain.Part, c.Chain.Links.Place(), "%s of %s is %s too short: its sprockets ask for %s", c.title(), counted(int(links), "link"), mm((taut-links)*c.Pitch), tautLinks(taut))
		c.told(p, f)
		return
	}
	span := 0.0
	for _, s := range c.Course.Span {
		span = max(span, s)
	}
	most := p.Limit("slack") * span
	room, err := chain.SagLength(span, most)
	extra := (links - taut) * c.Pitch
	if err != nil || extra <= room {
		return
	}
	f := p.Found(&c.Chain.Part, c.Chain.Links.Place(), "%s of %s has %s to spare: its sprockets ask for %s", c.title(), counted(int(links), "link"), mm(extra), tautLinks(taut))
	if sag, err := chain.Sag(span, extra); err == nil {
		f.Message += ", so that a span of " + mm(math.Round(span*10)/10) + " hangs down by " + mm(math.Round(sag*10)/10) + ", more than " + mm(math.Round(most*10)/10)
	}
	c.told(p, f)
}

// told adds what every finding on a chain's length shows.
func (c *Chaining) told(p *Pass, f *Finding) {
	f.Part = c.title()
	for _, s := range c.Chain.Over {
		f.See(s.Teeth.Place(), "%s, %d teeth", s.Title(), s.Teeth.N)
	}
	c.even(p, f)
	p.Report(f)
}

// tautLinks is a length in links for people.
func tautLinks(links float64) string { return figures(math.Round(links*1000)/1000, 9) + " links" }
