package measure

import (
	"math"

	"wheelwork/rules"
	"wheelwork/rules/chain"
)

// Chain is what can be measured of a chain. Lists are of its sprockets in its
// order; a span goes from a sprocket to the next.
type Chain struct {
	Name      string    `json:"name"`
	Train     string    `json:"train,omitempty"`
	Size      string    `json:"size,omitempty"`
	Pitch     *float64  `json:"pitch,omitempty"`
	Sprockets []string  `json:"sprockets"`
	Teeth     []int64   `json:"teeth"`
	Diameters []float64 `json:"pitch_diameters,omitempty"`
	Links     *int64    `json:"links,omitempty"`
	// Exact is how many links lie taut.
	Exact  *float64  `json:"exact_links,omitempty"`
	Centre *float64  `json:"centre_distance,omitempty"` // of a chain over two
	Wrap   []float64 `json:"wrap_deg,omitempty"`
	Spans  []float64 `json:"spans,omitempty"`
	// Sag is what all links over the exact number let the longest span hang.
	Sag            *float64 `json:"sag,omitempty"`
	CannotMeasured string   `json:"unmeasured,omitempty"` // why its course could not be
}

func chainOf(c *rules.Chaining) Chain {
	one := Chain{Name: c.Chain.Label(), Train: c.Chain.Train.Text, Size: c.Chain.Size.Text, CannotMeasured: c.Lacks}
	if c.Pitch > 0 {
		one.Pitch = known(c.Pitch)
	}
	var diameters []float64
	for _, s := range c.Chain.Over {
		one.Sprockets = append(one.Sprockets, s.Name.Text)
		one.Teeth = append(one.Teeth, s.Teeth.N)
		d, err := chain.PitchDiameter(c.Pitch, int(s.Teeth.N))
		if err != nil {
			d = math.NaN()
		}
		diameters = append(diameters, d)
	}
	one.Diameters = all(diameters)
	if c.Chain.Links.Set() {
		links := c.Chain.Links.N
		one.Links = &links
	}
	if centre, ok := c.Centre(); ok {
		one.Centre = known(centre)
	}
	switch {
	case c.HasCourse:
		one.Exact = known(c.Course.Length)
		one.Wrap, one.Spans = all(c.Course.Wrap), all(c.Course.Span)
		one.Sag = sag(c)
	case c.Fault != nil:
		one.CannotMeasured = c.Fault.Error()
	}
	return one
}

// sag is how deep the longest span hangs with the links there are.
func sag(c *rules.Chaining) *float64 {
	longest := 0.0
	for _, s := range c.Course.Span {
		longest = max(longest, s)
	}
	extra := (float64(c.Chain.Links.N) - c.Course.Length) * c.Pitch
	if !c.Chain.Links.Set() || extra < 0 || longest <= 0 {
		return nil
	}
	deep, err := chain.Sag(longest, extra)
	if err != nil {
		return nil
	}
	return known(deep)
}
