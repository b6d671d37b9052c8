// Package change tells two versions of a design apart by what they do and
// measure, not by their text.
package change

import (
	"math"
	"strconv"
	"strings"

	"wheelwork/rules"
	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

// Figure is one thing that can be said of a part: what it is called, its value
// as people read it, and its unit.
type Figure struct {
	What, Value, Unit string
	// Exact is the value that two versions are compared by: the figure itself
	// where it is exact, else what is shown.
	Exact string
}

// Subject is a part, or the whole design, with its figures in a fixed order.
type Subject struct {
	Group   string // "hands", "meshes", "wheels", "chains", "eclipses"
	Name    string
	Train   string // the train it belongs to, "" if none is said
	Figures []Figure
}

// Groups are the groups in the order in which a design is read.
var Groups = []string{"hands", "meshes", "wheels", "chains", "eclipses"}

// Of lists all there is to say of a design.
func Of(f *rules.Facts) []Subject {
	var list []Subject
	for _, h := range f.Design.Hands {
		list = append(list, hand(f, h))
	}
	gearings := rules.Gearings(f)
	for i := range gearings {
		list = append(list, mesh(&gearings[i]))
	}
	for _, w := range f.Design.Wheels {
		list = append(list, wheel(f, w))
	}
	chains := rules.Chainings(f)
	for i := range chains {
		list = append(list, chain(&chains[i]))
	}
	return append(list, eclipses(f)...)
}

func (s *Subject) text(what, value string) {
	if value != "" {
		s.Figures = append(s.Figures, Figure{What: what, Value: value, Exact: value})
	}
}

// figure adds a measured figure, to so many decimals; what is not known is left out.
func (s *Subject) figure(what string, x float64, decimals int, unit string) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return
	}
	shown := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Contains(shown, ".") {
		shown = strings.TrimRight(strings.TrimRight(shown, "0"), ".")
	}
	if shown == "-0" {
		shown = "0"
	}
	s.Figures = append(s.Figures, Figure{What: what, Value: shown, Unit: unit, Exact: shown})
}

// exactly adds a figure that is compared exactly and shown to nine digits.
func (s *Subject) exactly(what string, x exact.Rat, unit string) {
	s.Figures = append(s.Figures, Figure{What: what, Value: strconv.FormatFloat(x.Float(), 'g', 9, 64), Unit: unit, Exact: x.Fraction()})
}

func hand(f *rules.Facts, h *spec.Hand) Subject {
	s := Subject{Group: "hands", Name: h.Name.Text}
	for _, j := range f.Train.Path(h.Arbor, h.Base) {
		if j.Mesh != nil && j.Mesh.Train.Set() {
			s.Train = j.Mesh.Train.Text
			break
		}
	}
	r := f.Train.Read(h)
	if r.Known {
		s.exactly("rate", r.Rate, "turns/d")
		if period, ok := r.Period(); ok {
			s.exactly("a turn in", period, "d")
		}
		s.text("sense", train.Sense(r.Rate))
	}
	if r.HasError {
		s.figure("error", r.PPM(), 3, "ppm")
	}
	if drift, ok := r.Drift(); ok {
		s.figure("drift", drift.Float(), 6, "deg/yr")
	}
	return s
}

func mesh(g *rules.Gearing) Subject {
	s := Subject{Group: "meshes", Name: g.Mesh.Label(), Train: g.Mesh.Train.Text}
	s.text("teeth", strconv.FormatInt(g.Mesh.A.Teeth.N, 10)+"/"+strconv.FormatInt(g.Mesh.B.Teeth.N, 10))
	m := g.Measure()
	s.figure("centre distance", m.Centre, 3, "mm")
	s.figure("wanted centre distance", m.Wanted, 3, "mm")
	s.figure("contact ratio", m.ContactRatio, 3, "")
	s.figure("backlash", m.Backlash, 3, "mm")
	return s
}

func wheel(f *rules.Facts, w *spec.Wheel) Subject {
	s := Subject{Group: "wheels", Name: w.Name.Text}
	s.text("teeth", strconv.FormatInt(w.Teeth.N, 10))
	if module, ok := rules.ModuleOf(w); ok {
		s.figure("module", module, 6, "mm")
	}
	if size, ok := rules.SizeOf(f, w); ok {
		s.figure("reference diameter", size.Reference, 3, "mm")
		s.figure("tip diameter", size.Tip, 3, "mm")
		s.figure("root diameter", size.Root, 3, "mm")
	}
	return s
}

func chain(c *rules.Chaining) Subject {
	s := Subject{Group: "chains", Name: c.Chain.Label(), Train: c.Chain.Train.Text}
	if c.Pitch > 0 {
		s.figure("pitch", c.Pitch, 4, "mm")
	}
	if c.Chain.Links.Set() {
		s.text("links", strconv.FormatInt(c.Chain.Links.N, 10))
	}
	if c.HasCourse {
		s.figure("length", c.Course.Length, 3, "pitches")
		for i, wrap := range c.Course.Wrap {
			s.figure("wrap on "+c.Chain.Over[i].Name.Text, wrap, 2, "deg")
		}
	}
	if centre, ok := c.Centre(); ok {
		s.figure("centre distance", centre, 3, "mm")
	}
	return s
}

// eclipses counts what each marker foretells over the design's horizon.
func eclipses(f *rules.Facts) []Subject {
	d := f.Design
	if len(d.Markers) == 0 || !d.Head.Epoch.Set() {
		return nil
	}
	model := foretell.Of(f.Train)
	if model.Phase == nil || len(model.Markers) == 0 {
		return nil
	}
	horizon := 100 * quantity.TropicalYear.Float()
	if d.Head.Horizon.Set() {
		horizon = d.Head.Horizon.Exact.Float()
	}
	from := foretell.DayOf(d.Head.Epoch)
	run, err := model.SetOn(from)
	if err != nil {
		return nil
	}
	watch, err := run.Watch(from, math.Min(from+horizon, sky.EndDay), foretell.Days)
	if err != nil {
		return nil
	}
	var list []Subject
	for _, m := range model.Markers {
		t := watch.Tally(m, nil)
		s := Subject{Group: "eclipses", Name: m.Name.Text}
		s.text("in the sky", strconv.Itoa(t.Sky))
		s.text("foretold", strconv.Itoa(t.Foretold))
		s.text("missed", strconv.Itoa(t.Missed))
		s.text("false", strconv.Itoa(t.False))
		list = append(list, s)
	}
	return list
}
