package editor

import (
	"fmt"
	"math"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// turning says what a rate is: its period, sense and turns a day.
func turning(rate exact.Rat) string {
	if rate.IsZero() {
		return "stands still"
	}
	period := rate.Abs().Inv().Float()
	return fmt.Sprintf("turns once in %s, %s, %s turns a day", figure.Days(&period), train.Sense(rate), figure.Rate(rate.Fraction()))
}

// rateOf says how an arbor turns against the frame.
func (h *hovering) rateOf(a *spec.Arbor) string {
	if a == nil || h.facts == nil {
		return ""
	}
	rate, ok := h.facts.Train.ArborRate(a)
	if !ok || !h.facts.Train.Timed() {
		return ""
	}
	return turning(rate) + ", against the frame"
}

// lengths are several of them in mm, what is not known left out.
func mm(x float64) string {
	if math.IsNaN(x) {
		return ""
	}
	return figure.Significant(math.Round(x*1000)/1000, 9) + " mm"
}

// aged says that what is shown is of before.
func (h *hovering) aged() {
	if h.past {
		h.say("As of the last text without problems.")
	}
}

func (h *hovering) arbor(a *spec.Arbor) bool {
	if a == nil {
		return false
	}
	h.head("%s", h.titled(a.Kind, a.Name.Text))
	h.list("carried by "+h.name(a.CarrierName()), h.rateOf(a))
	if h.facts == nil {
		return true
	}
	var on []string
	d := h.facts.Design
	for _, m := range a.Arms {
		on = append(on, "arm "+h.name(m.Name.Text))
	}
	for _, w := range d.Wheels {
		if w.Arbor == a {
			on = append(on, fmt.Sprintf("wheel %s, %d teeth", h.name(w.Name.Text), w.Teeth.N))
		}
	}
	for _, s := range d.Sprockets {
		if s.Arbor == a {
			on = append(on, fmt.Sprintf("sprocket %s, %d teeth", h.name(s.Name.Text), s.Teeth.N))
		}
	}
	for _, x := range d.Hands {
		if x.Arbor == a {
			on = append(on, "hand "+h.name(x.Name.Text))
		}
	}
	h.list(on...)
	h.aged()
	return true
}

func (h *hovering) arm(m *spec.Arm) bool {
	if m == nil {
		return false
	}
	h.head("%s", h.titled("arm", m.Name.Text))
	reach := ""
	if m.Reach.Set() {
		reach = "reach " + mm(m.Reach.Exact.Float())
	}
	h.list("on "+h.name(m.On.Text), reach, h.rateOf(m.Arbor))
	h.aged()
	return true
}

func (h *hovering) wheel(w *spec.Wheel) bool {
	h.head("%s: %d teeth, %s", h.titled("wheel", w.Name.Text), w.Teeth.N, w.Shape.Or("spur"))
	module := ""
	if m, ok := rules.ModuleOf(w); ok {
		module = "module " + mm(m)
	}
	if h.facts == nil {
		h.list("on "+h.name(w.On.Text), module)
		return true
	}
	sizes := ""
	if s, ok := rules.SizeOf(h.facts, w); ok {
		sizes = fmt.Sprintf("reference circle %s, tip circle %s, root circle %s", mm(s.Reference), mm(s.Tip), mm(s.Root))
	}
	h.list("on "+h.name(w.On.Text), module, sizes, h.rateOf(w.Arbor))
	var mates []string
	list := rules.Gearings(h.facts)
	for i := range list {
		g := &list[i]
		if mate := other(g.Mesh, w); mate != nil {
			mates = append(mates, h.mate(g, w, mate))
		}
	}
	h.list(mates...)
	h.aged()
	return true
}

// other is the wheel that another one meshes, nil if it is not in the mesh.
func other(m *spec.Mesh, w *spec.Wheel) *spec.Wheel {
	switch w {
	case m.A:
		return m.B
	case m.B:
		return m.A
	}
	return nil
}

func (h *hovering) mate(g *rules.Gearing, w, mate *spec.Wheel) string {
	s := fmt.Sprintf("meshes %s, %d teeth: %s turns for one of it", h.name(mate.Name.Text), mate.Teeth.N, exact.Frac(mate.Teeth.N, w.Teeth.N))
	return s + h.measures(g)
}

// measures is what can be measured of a mesh.
func (h *hovering) measures(g *rules.Gearing) string {
	m := g.Measure()
	s := ""
	if !math.IsNaN(m.Centre) {
		s += "; centres " + mm(m.Centre) + " apart"
	}
	if !math.IsNaN(m.Wanted) && m.Wanted > 0 {
		s += ", wanted " + mm(m.Wanted)
	}
	if !math.IsNaN(m.ContactRatio) {
		s += "; contact ratio " + figure.Significant(m.ContactRatio, 4)
	}
	if !math.IsNaN(m.Backlash) {
		s += "; backlash " + mm(m.Backlash)
	}
	return s
}

func (h *hovering) mesh(m *spec.Mesh) bool {
	if h.facts == nil || m.A == nil || m.B == nil {
		return false
	}
	list := rules.Gearings(h.facts)
	for i := range list {
		if g := &list[i]; g.Mesh == m {
			h.head("%s", h.titled("mesh", m.Label()))
			h.say("%d to %d teeth%s", m.A.Teeth.N, m.B.Teeth.N, h.measures(g))
			return true
		}
	}
	return false
}

func (h *hovering) sprocket(s *spec.Sprocket) bool {
	if s == nil {
		return false
	}
	h.head("%s: %d teeth", h.titled("sprocket", s.Name.Text), s.Teeth.N)
	h.list("on "+h.name(s.On.Text), h.rateOf(s.Arbor))
	if h.facts != nil {
		list := rules.Chainings(h.facts)
		for i := range list {
			for _, over := range list[i].Chain.Over {
				if over == s {
					h.list("chain " + h.name(list[i].Chain.Label()) + course(&list[i]))
				}
			}
		}
	}
	h.aged()
	return true
}

// course is what can be measured of a chain.
func course(c *rules.Chaining) string {
	s := ""
	if c.Pitch > 0 {
		s += ", pitch " + mm(c.Pitch)
	}
	if c.Chain.Links.Set() {
		s += fmt.Sprintf(", %d links", c.Chain.Links.N)
	}
	if c.HasCourse {
		s += ", lies taut with " + figure.Significant(c.Course.Length, 6) + " links"
	}
	if centre, ok := c.Centre(); ok {
		s += ", centres " + mm(centre) + " apart"
	}
	return s
}

func (h *hovering) chain(c *spec.Chain) bool {
	if h.facts == nil {
		return false
	}
	list := rules.Chainings(h.facts)
	for i := range list {
		if list[i].Chain == c {
			h.head("%s", h.titled("chain", c.Label()))
			h.say("%d sprockets%s", len(c.Over), course(&list[i]))
			h.aged()
			return true
		}
	}
	return false
}

func (h *hovering) hand(x *spec.Hand) bool {
	if x == nil {
		return false
	}
	h.head("%s", h.titled("hand", x.Name.Text))
	h.list("on "+h.name(x.On.Text)+", read against "+h.name(x.Against.Or(spec.Frame)), h.reading(x))
	h.aged()
	return true
}

// reading is what a hand does beside what it should.
func (h *hovering) reading(x *spec.Hand) string {
	if h.facts == nil {
		return ""
	}
	r := h.facts.Train.Read(x)
	s := "what it does is not known"
	if r.Known {
		s = turning(r.Rate)
	}
	if r.HasWanted {
		wanted := r.Wanted.Float()
		s += "\n- wanted " + figure.Days(&wanted)
		if e := x.Shows.Entry + x.Period.Entry; e != "" {
			s += " (" + e + ")"
		}
	}
	if r.HasError {
		ppm := r.PPM()
		s += "\n- off by " + figure.PPM(&ppm)
		if x.Within.Set() {
			s += ", allowed " + x.Within.Place().Text()
		}
	}
	if d, ok := r.Drift(); ok {
		f := d.Float()
		s += "\n- drifts by " + figure.Signed(&f, "deg/yr")
		if !d.IsZero() {
			years := d.Abs().Inv().Float()
			s += ", a degree in " + figure.Years(&years)
		}
	}
	if d, ok := r.Lost(); ok && !d.IsZero() {
		years := d.Abs().Inv().Float()
		s += ", a day in " + figure.Years(&years)
	}
	return s
}
