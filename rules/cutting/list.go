// Package cutting lists what a design asks of the workshop: blanks to turn,
// teeth to cut, holes to bore, chains to close.
package cutting

import (
	"math"
	"sort"

	"wheelwork/rules"
	"wheelwork/rules/chain"
	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

// List is all there is to cut and to buy. Lengths are mm; a figure that the
// spec does not give is NaN and a word "".
type List struct {
	Wheels    []Wheel
	Sprockets []Sprocket
	Chains    []Chain
	Cutters   []Cutter // totals, by form, module and range
	Stock     []Stock  // totals, by material and thickness
}

// Wheel is a toothed part.
type Wheel struct {
	Name, Shape, Form, Material string
	Teeth                       int64
	Module                      float64
	Blank                       float64 // diameter to turn; of a ring the bore of its teeth
	Depth                       float64 // of the cut
	Face, Bore                  float64
	// Cutter is the one at hand, or the one of the usual sets in words; AtHand
	// tells which. It is "" where no form cutter cuts the part.
	Cutter string
	AtHand bool
	// Indexing is how the dividing head is turned, "" where it cannot or there
	// is none.
	Indexing string
	Remark   string
}

// Sprocket is a chain wheel.
type Sprocket struct {
	Name, Chain, Indexing string
	Teeth                 int64
	Pitch, Reference      float64 // of the chain; of the circle through the pins
	TipLeast, TipMost     float64
	Root, Width, Bore     float64
}

// Chain is a chain to close.
type Chain struct {
	Name, Size    string
	Pitch, Length float64
	Links         int64 // 0 where the spec does not say
	Sprockets     []string
}

// Cutter is how much one cutter has to do.
type Cutter struct {
	Name         string
	AtHand       bool
	Wheels, Gaps int64 // wheels, and tooth gaps in all
}

// Stock is how many blanks are needed of one material and thickness.
type Stock struct {
	Material string
	Face     float64
	Blanks   int64
	Largest  float64 // diameter of the largest
}

// Of lists what the design asks for, in the order of the text.
func Of(f *rules.Facts) List {
	var l List
	head, divides := rules.HeadOf(f.Design)
	index := func(teeth int64) string {
		if divides {
			if x, ok := head.Index(teeth); ok {
				return rules.Indexed(x)
			}
		}
		return ""
	}
	for _, w := range f.Design.Wheels {
		l.Wheels = append(l.Wheels, wheel(f, w, index))
	}
	chains := rules.Chainings(f)
	for i := range chains {
		l.chain(&chains[i], index)
	}
	l.totals()
	return l
}

func wheel(f *rules.Facts, w *spec.Wheel, index func(int64) string) Wheel {
	nan := math.NaN()
	one := Wheel{
		Name: w.Name.Text, Shape: w.Shape.Or("spur"), Form: w.Form.Or("involute"), Material: w.Material.Text,
		Teeth: w.Teeth.N, Module: nan, Blank: nan, Depth: nan, Face: w.Face.Or(nan), Bore: boreOf(w),
	}
	if module, ok := rules.ModuleOf(w); ok {
		one.Module = module
	}
	if size, ok := rules.SizeOf(f, w); ok {
		one.Blank, one.Depth = size.Tip, math.Abs(size.Tip-size.Root)/2
	}
	if w.Is("worm") {
		one.Remark = starts(w.Teeth.N) + ", cut as a screw"
		return one
	}
	one.Indexing = index(w.Teeth.N)
	if one.Indexing == "" {
		one.Remark = "the dividing head does not index it"
		if f.Design.Dividing == nil {
			one.Remark = ""
		}
	}
	cut, by, lacks := rules.CutOf(f, w)
	switch {
	case !by:
		one.Remark = join(one.Remark, map[string]string{"ring": "the teeth inside are shaped or broached", "crown": "the teeth stand on the face"}[one.Shape])
	case lacks != "":
		one.Remark = join(one.Remark, lacks)
	default:
		one.Cutter, one.AtHand = cutter(f, cut)
		if one.Cutter == "" {
			one.Remark = join(one.Remark, "no standard cutter")
		}
	}
	return one
}

func starts(n int64) string {
	if n == 1 {
		return "one start"
	}
	return itoa(n) + " starts"
}

// cutter names the cutter at hand, or that of the usual sets.
func cutter(f *rules.Facts, cut rules.Cut) (name string, atHand bool) {
	if c := rules.CutterFor(f, cut); c != nil {
		return c.Form + " " + figure(c.Module) + ", " + c.Range() + " teeth", true
	}
	if c, _, ok := rules.StandardCutter(cut); ok {
		to := itoa(int64(c.To))
		if c.To >= spec.MostTeeth || c.To == tooth.RackTeeth {
			to = "rack"
		}
		return cut.Form + " " + figure(cut.Module) + ", " + itoa(int64(c.From)) + "-" + to + " teeth", false
	}
	return "", false
}

// boreOf is the wheel's bore, or the diameter of its arbor.
func boreOf(w *spec.Wheel) float64 {
	switch {
	case w.Bore.Set():
		return w.Bore.Exact.Float()
	case w.Arbor != nil && w.Arbor.Diameter.Set():
		return w.Arbor.Diameter.Exact.Float()
	}
	return math.NaN()
}

func (l *List) chain(c *rules.Chaining, index func(int64) string) {
	nan := math.NaN()
	one := Chain{Name: c.Chain.Label(), Size: c.Size.Name, Pitch: nan, Length: nan, Links: c.Chain.Links.N}
	if c.Pitch > 0 {
		one.Pitch = c.Pitch
		if one.Links > 0 {
			one.Length = c.Pitch * float64(one.Links)
		}
	}
	for _, s := range c.Chain.Over {
		one.Sprockets = append(one.Sprockets, s.Name.Text)
		p := Sprocket{Name: s.Name.Text, Chain: one.Name, Teeth: s.Teeth.N, Indexing: index(s.Teeth.N), Pitch: one.Pitch, Reference: nan, TipLeast: nan, TipMost: nan, Root: nan, Width: nan, Bore: nan}
		if s.Arbor != nil && s.Arbor.Diameter.Set() {
			p.Bore = s.Arbor.Diameter.Exact.Float()
		}
		if c.Pitch > 0 {
			if d, err := chain.PitchDiameter(c.Pitch, int(s.Teeth.N)); err == nil {
				p.Reference = d
			}
		}
		if c.Sized {
			if least, most, err := chain.TipDiameters(c.Pitch, int(s.Teeth.N), c.Size.Roller); err == nil {
				p.TipLeast, p.TipMost = least, most
			}
			if root, err := chain.RootDiameter(c.Pitch, int(s.Teeth.N), c.Size.Roller); err == nil {
				p.Root = root
			}
			if width, err := chain.ToothWidth(c.Pitch, c.Size.InnerWidth); err == nil {
				p.Width = width
			}
		}
		l.Sprockets = append(l.Sprockets, p)
	}
	l.Chains = append(l.Chains, one)
}

// totals sums up the cutters and the blanks.
func (l *List) totals() {
	cutters := map[string]*Cutter{}
	type piece struct {
		material string
		face     float64
	}
	stock := map[piece]*Stock{}
	for _, w := range l.Wheels {
		if w.Cutter != "" {
			c := cutters[w.Cutter]
			if c == nil {
				c = &Cutter{Name: w.Cutter, AtHand: w.AtHand}
				cutters[w.Cutter] = c
			}
			c.Wheels++
			c.Gaps += w.Teeth
		}
		if w.Shape == "ring" || math.IsNaN(w.Blank) || math.IsNaN(w.Face) {
			continue // the outside of a ring is not said
		}
		p := piece{w.Material, w.Face}
		s := stock[p]
		if s == nil {
			s = &Stock{Material: w.Material, Face: w.Face}
			stock[p] = s
		}
		s.Blanks++
		s.Largest = math.Max(s.Largest, w.Blank)
	}
	for _, c := range cutters {
		l.Cutters = append(l.Cutters, *c)
	}
	sort.Slice(l.Cutters, func(i, j int) bool { return l.Cutters[i].Name < l.Cutters[j].Name })
	for _, s := range stock {
		l.Stock = append(l.Stock, *s)
	}
	sort.Slice(l.Stock, func(i, j int) bool {
		a, b := l.Stock[i], l.Stock[j]
		return a.Material < b.Material || a.Material == b.Material && a.Face < b.Face
	})
}
