package cutting

import (
	"wheelwork/rules"
	"wheelwork/rules/chain"
	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

// Sprocket is one chain wheel.
type Sprocket struct {
	Name, On string
	Teeth    int64
	Size     string  // of the chain that runs over it
	Pitch    float64 // pin to pin
	Diameter float64 // of the circle through the pins
	// Least and Outside are the least and the greatest diameter over the teeth,
	// Root that of the gaps' bottoms, Width the teeth's, of a standard chain.
	Least, Outside, Root, Width float64
	// Index is how the dividing head is turned from tooth to tooth, if Indexed.
	Index   tooth.Indexing
	Indexed bool
	Bore    float64 // its arbor's diameter
}

// Chain is one chain.
type Chain struct {
	Name      string
	Size      string
	Pitch     float64
	Links     int64
	Length    float64
	Sprockets []string
	Note      string
}

func (l *List) chains(f *rules.Facts, w *workshop) {
	over := map[*spec.Sprocket]*rules.Chaining{}
	list := rules.Chainings(f)
	for i := range list {
		c := &list[i]
		one := Chain{Name: c.Chain.Label(), Size: c.Chain.Size.Text, Pitch: c.Pitch, Links: c.Chain.Links.N}
		one.Length = float64(one.Links) * one.Pitch
		for _, s := range c.Chain.Over {
			one.Sprockets = append(one.Sprockets, s.Name.Text)
			if over[s] == nil {
				over[s] = c
			}
		}
		switch {
		case c.Sized && c.Size.Bush:
			one.Note = "its sprockets meet bushes, there are no rollers"
		case !c.Chain.Links.Set():
			one.Note = "the spec does not say its links"
		}
		if one.Links%2 == 1 {
			one.Note = "an odd number of links wants an offset link"
		}
		l.Chains = append(l.Chains, one)
	}
	for _, s := range f.Design.Sprockets {
		l.Sprockets = append(l.Sprockets, w.sprocket(s, over[s]))
	}
}

func (w *workshop) sprocket(s *spec.Sprocket, c *rules.Chaining) Sprocket {
	one := Sprocket{Name: s.Name.Text, On: s.On.Text, Teeth: s.Teeth.N}
	if s.Arbor != nil {
		one.Bore = s.Arbor.Diameter.Or(0)
	}
	if w.dividing {
		one.Index, one.Indexed = w.divide.Index(s.Teeth.N)
	}
	if c == nil || c.Pitch == 0 {
		return one
	}
	one.Size, one.Pitch = c.Chain.Size.Text, c.Pitch
	z := int(s.Teeth.N)
	one.Diameter, _ = chain.PitchDiameter(c.Pitch, z)
	if c.Sized {
		one.Least, one.Outside, _ = chain.TipDiameters(c.Pitch, z, c.Size.Roller)
		one.Root, _ = chain.RootDiameter(c.Pitch, z, c.Size.Roller)
		one.Width, _ = chain.ToothWidth(c.Pitch, c.Size.InnerWidth)
	}
	return one
}

// Indexing is how the dividing head is turned from tooth to tooth, in words.
func (s *Sprocket) Indexing() string { return indexing(s.Index, s.Indexed) }

func indexing(x tooth.Indexing, can bool) string {
	if !can {
		return ""
	}
	return rules.Indexed(x)
}
