package rules

import (
	"math"

	"wheelwork/rules/chain"
	"wheelwork/spec"
)

func init() {
	register(&Rule{
		Name:     "unequal-chain",
		Group:    Chains,
		Severity: Error,
		Checks:   "a chain's size is one of ISO 606, and all chains over one sprocket have one pitch",
		Why:      "a sprocket is cut for one pitch: a chain of another climbs its teeth and jumps",
		Source:   "ISO 606 (from memory; rows read in makers' tables are marked in the package)",
		Breaks:   func() string { return chainExample{small: 17, large: 34, chain: `size = "04D"`}.text() },
		Keeps:    func() string { return chainExample{small: 17, large: 34, chain: `size = "04C"`}.text() },
		Run:      unequalChain,
	})
}

// samePitch is how far two pitches may differ in mm and be one, rounded.
const samePitch = 0.005

func unequalChain(p *Pass) {
	list := Chainings(p.Facts)
	over := map[*spec.Sprocket]*Chaining{}
	for i := range list {
		c := &list[i]
		part := c.Chain
		if part.Size.Set() && !c.Sized {
			f := p.Found(&part.Part, part.Size.Place(), "no chain of ISO 606 has the size %q", part.Size.Text)
			f.Part = c.title()
			if near := spec.Nearest(part.Size.Text, chainSizes()); near != "" {
				f.Message += "; did you mean \"" + near + "\"?"
				if edit, ok := Replace(part.Size.At, `"`+near+`"`); ok {
					f.Mend("take size "+near, edit)
				}
			}
			p.Report(f)
		}
		if c.Pitch == 0 {
			continue
		}
		for _, s := range part.Over {
			first := over[s]
			if first == nil {
				over[s] = c
				continue
			}
			if math.Abs(first.Pitch-c.Pitch) <= samePitch {
				continue
			}
			f := p.Found(&part.Part, c.pitchPlace(), "%s has a pitch of %s and %s over the same %s one of %s", c.title(), mm(c.Pitch), first.title(), s.Title(), mm(first.Pitch))
			f.Part = c.title()
			f.See(first.pitchPlace(), "the other chain").See(s.Head, "the sprocket")
			p.Report(f)
		}
	}
}

func chainSizes() []string {
	var names []string
	for _, s := range chain.Sizes() {
		names = append(names, s.Name)
	}
	return names
}
