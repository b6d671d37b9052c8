package rules

import (
	"math"
	"strconv"

	"wheelwork/rules/chain"
	"wheelwork/spec"
	"wheelwork/spec/text"
)

// Chaining is one chain as geometry: what its rules and measurements stand on.
type Chaining struct {
	Chain *spec.Chain
	// Size is the standard chain its size names, if Sized.
	Size  chain.Size
	Sized bool
	// Pitch is in mm, if it is more than 0.
	Pitch float64
	// Places are its sprockets in the plan of the first one's carrier, if Placed.
	Places []chain.Place
	Placed bool
	// Course is how it lies over them, taut, if HasCourse.
	Course    chain.Course
	HasCourse bool
	// Fault says why a chain of which all is known cannot lie so.
	Fault error
	// Lacks says for want of what the course is not known.
	Lacks string
}

type chainingsKey struct{}

// Chainings returns every chain of the design as geometry, in the order of the text.
func Chainings(f *Facts) []Chaining {
	return Shared(f, chainingsKey{}, func(f *Facts) []Chaining {
		list := make([]Chaining, 0, len(f.Design.Chains))
		for _, c := range f.Design.Chains {
			if len(c.Over) > 1 {
				list = append(list, chainingOf(f, c))
			}
		}
		return list
	})
}

func chainingOf(f *Facts, c *spec.Chain) Chaining {
	one := Chaining{Chain: c}
	if c.Size.Set() {
		one.Size, one.Sized = chain.Lookup(c.Size.Text)
	}
	switch {
	case one.Sized:
		one.Pitch = one.Size.Pitch
	case c.Pitch.Set():
		one.Pitch = c.Pitch.Exact.Float()
	default:
		one.Lacks = "a chain has no pitch"
		return one
	}
	for i, s := range c.Over {
		place := chain.Place{Teeth: int(s.Teeth.N), Outside: c.Crossed.On && i > 0}
		if i > 0 {
			x, y, ok := f.Train.Offset(c.Over[0].Arbor, s.Arbor)
			if !ok {
				one.Lacks = "the positions of a chain's sprockets are not given"
				return one
			}
			place.X, place.Y = x, y
		}
		one.Places = append(one.Places, place)
	}
	one.Placed = true
	one.Course, one.Fault = chain.Loop(one.Pitch, one.Places)
	one.HasCourse = one.Fault == nil
	return one
}

// Centre is the distance in mm between the two sprockets of a chain that runs
// over two; ok is false for any other.
func (c *Chaining) Centre() (mm float64, ok bool) {
	if !c.Placed || len(c.Places) != 2 {
		return 0, false
	}
	return math.Hypot(c.Places[1].X, c.Places[1].Y), true
}

// CentreFor is the distance in mm at which a chain over two sprockets lies taut
// with so many links.
func (c *Chaining) CentreFor(links float64) (float64, error) {
	z1, z2 := c.teeth()
	find := chain.Centre
	if c.Chain.Crossed.On {
		find = chain.CrossedCentre
	}
	pitches, err := find(z1, z2, links)
	return pitches * c.Pitch, err
}

// teeth are those of the two sprockets of a chain that runs over two.
func (c *Chaining) teeth() (int, int) {
	return int(c.Chain.Over[0].Teeth.N), int(c.Chain.Over[1].Teeth.N)
}

// SprocketTip is the greatest diameter in mm over a sprocket's teeth for a
// standard chain; of another, the pitch circle and half a pitch more.
func (c *Chaining) SprocketTip(s *spec.Sprocket) (float64, error) {
	if c.Sized {
		_, greatest, err := chain.TipDiameters(c.Pitch, int(s.Teeth.N), c.Size.Roller)
		return greatest, err
	}
	d, err := chain.PitchDiameter(c.Pitch, int(s.Teeth.N))
	return d + c.Pitch/2, err
}

// title is how messages call the chain.
func (c *Chaining) title() string { return "chain " + c.Chain.Label() }

// even adds the remedy of an even number of links: the number that needs the
// least change, with the sprockets moved so that it lies with the sag of a
// fiftieth of its span. Where the sprockets cannot be moved, the number alone.
func (c *Chaining) even(p *Pass, f *Finding) {
	if !c.Chain.Links.Set() {
		return
	}
	length := float64(c.Chain.Links.N)
	if c.HasCourse {
		length = c.Course.Length
	}
	links, err := chain.EvenLinks(length)
	if err != nil {
		return
	}
	edit, ok := Replace(c.Chain.Links.At, strconv.Itoa(links))
	if !ok {
		return
	}
	if _, two := c.Centre(); two && c.HasCourse {
		if centre, err := c.CentreFor(float64(links)); err == nil {
			f.See(c.Chain.Links.Place(), "%d links lie taut at %s between the sprockets", links, mm(centre))
			if c.move(p, f, links, centre, edit) {
				return
			}
		}
	}
	if c.HasCourse && float64(links) < c.Course.Length {
		links += 2
		edit, _ = Replace(c.Chain.Links.At, strconv.Itoa(links))
	}
	if int64(links) != c.Chain.Links.N {
		f.Mend("take "+strconv.Itoa(links)+" links", edit)
	}
}

// sagShare is the sag a remedy leaves, as a part of the span: what a vertical
// or reversing drive should have, the least of the makers' figures.
const sagShare = chain.SlackTight

// move adds the remedy that sets both the links and the distance.
func (c *Chaining) move(p *Pass, f *Finding, links int, centre float64, edit Edit) bool {
	// The two spans share what is let in, so half of it goes to each.
	slack, err := chain.SagLength(centre, sagShare*centre)
	if err != nil {
		return false
	}
	a, b := c.Chain.Over[1].Arbor, c.Chain.Over[0].Arbor
	shared := Shared(p.Facts, coaxialKey{}, func(f *Facts) coaxial { return coaxialArbors(f.Design) })
	if len(a.Arms) > 0 || shared[mustStand(a)] > 1 {
		a, b = b, a
	}
	if shared[mustStand(a)] > 1 {
		return false // others share the axis and would have to move with it
	}
	before := len(f.Remedies)
	if !move(p, f, a, b, centre-slack/2) || len(f.Remedies) == before {
		return false
	}
	last := &f.Remedies[len(f.Remedies)-1]
	if int64(links) != c.Chain.Links.N {
		last.Title = "take " + strconv.Itoa(links) + " links and " + last.Title
		last.Edits = append(last.Edits, edit)
	}
	return true
}

func mustStand(a *spec.Arbor) standing {
	s, _ := standingOf(a)
	return s
}

// pitchPlace is where the chain says its pitch.
func (c *Chaining) pitchPlace() text.Place {
	if c.Chain.Size.Set() {
		return c.Chain.Size.Place()
	}
	return c.Chain.Pitch.Place()
}

// toHundredth is a figure for people, to a hundredth.
func toHundredth(x float64) string { return fig(math.Round(x*100) / 100) }
