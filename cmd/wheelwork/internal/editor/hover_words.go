package editor

import (
	"fmt"
	"strings"

	"wheelwork/cmd/wheelwork/internal/manual"
	"wheelwork/rules"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// kind tells what a block is.
func (h *hovering) kind(k *spec.BlockKind) {
	h.head("%s", k.Kind)
	h.say("%s", capital(k.Doc))
	hcl, toml := manual.Written(k)
	if h.in.toml() && toml != "" {
		hcl = toml
	}
	h.code(hcl)
}

// attribute tells an attribute's meaning, unit and default.
func (h *hovering) attribute(k *spec.BlockKind, a *spec.Attribute) {
	h.attributePage(k, a)
}

func (p *page) attributePage(k *spec.BlockKind, a *spec.Attribute) {
	p.head("%s: %s", p.titledPlain(a.Name), manual.Holds(a))
	p.say("%s", capital(a.Doc))
	switch {
	case a.Required:
		p.say("Every %s needs it.", k.Kind)
	case a.Default != "":
		p.say("It is %s unless given.", a.Default)
	}
	if units := quantity.Units(a.Dimension); len(units) > 0 && a.Dimension != quantity.Plain {
		var names []string
		for _, u := range units {
			names = append(names, u.Name)
		}
		p.say("A figure without a unit is in %s; in quotes it may carry one: %s.", a.Dimension.Base(), strings.Join(names, ", "))
	}
}

// titledPlain is a word of the language within a title.
func (p *page) titledPlain(word string) string {
	if p.markdown {
		return strings.ReplaceAll(word, "_", `\_`)
	}
	return word
}

// value tells a figure that is computed or has a unit of its own.
func (h *hovering) value(k *spec.BlockKind, a *spec.Attribute, v *syntax.Value) (text.Span, bool) {
	if v.Kind == syntax.List {
		for i := range v.List {
			if v.List[i].At != v.At && touches(v.List[i].At, h.offset) {
				return h.value(k, a, &v.List[i])
			}
		}
	}
	var x exact.Rat
	unit := a.Dimension.Base()
	switch {
	case v.Kind == syntax.Number:
		x = v.Number
		if a.Holds == spec.APeriod {
			unit = "d"
		}
	case v.Kind == syntax.String && (a.Holds == spec.ANumber || a.Holds == spec.ANumbers || a.Holds == spec.APoint):
		var err error
		if x, err = quantity.Parse(v.Text, a.Dimension); err != nil {
			return text.Span{}, false
		}
	case v.Kind == syntax.String && a.Holds == spec.APeriod:
		var err error
		if x, err = quantity.Parse(v.Text, quantity.Time); err != nil {
			return text.Span{}, false
		}
		unit = "d"
	default:
		return text.Span{}, false
	}
	h.head("%s = %s", h.titledPlain(a.Name), strings.TrimSpace(decimal(x)+" "+unit))
	h.say("%s", capital(a.Doc))
	return v.At, true
}

// bounds tells of the bounds of a rule.
func (h *hovering) bounds(b *syntax.Block) (text.Span, bool) {
	inner := b.Blocks
	name := func(one *syntax.Block) string { return one.Kind }
	if b.Label != "" {
		inner = []*syntax.Block{b}
		name = func(*syntax.Block) string { return b.Label }
	}
	for _, one := range inner {
		r := rules.Named(name(one))
		if r == nil {
			continue
		}
		for i := range one.Attrs {
			a := &one.Attrs[i]
			if !touches(a.Key, h.offset) {
				continue
			}
			if a.Name == "severity" {
				h.head("severity")
				h.say("What a finding of %s weighs: %s. It is %s unless given.", h.name(r.Name), strings.Join(rules.Severities, ", "), r.Severity)
				return a.Key, true
			}
			for _, t := range r.Thresholds {
				if t.Name == a.Name {
					h.head("%s", h.titledPlain(t.Name))
					h.say("%s. It is %s unless given.", capital(t.Doc), t.Default)
					return a.Key, true
				}
			}
		}
	}
	return text.Span{}, false
}

// period tells an entry of the catalogue.
func (h *hovering) period(name string) bool {
	p, ok := sky.Lookup(name)
	if !ok {
		return false
	}
	h.head("%s", p.Name)
	h.periodPage(&p)
	return true
}

func (p *page) periodPage(e *sky.Period) {
	days := strings.TrimRight(e.Days.FloatString(10), "0")
	way := "counter-clockwise seen from the north"
	if e.Retrograde {
		way = "clockwise seen from the north"
	}
	p.say("%s d, %s", strings.TrimSuffix(days, "."), way)
	p.say("%s", capital(e.About))
	if len(e.Also) > 0 {
		p.say("Also: %s", strings.Join(e.Also, ", "))
	}
	p.say("Source: %s", e.Source)
}

// given tells where a named value comes from.
func (h *hovering) given(name string) bool {
	for _, n := range h.lens.index().all {
		if n.symbol != (symbol{values, name}) || !n.def {
			continue
		}
		line := n.file.text.LineOf(n.span.Start)
		h.head("given.%s", h.titledPlain(name))
		h.code(strings.TrimSpace(string(n.file.Bytes[n.span.Start:n.file.text.End(line)])))
		return true
	}
	return false
}

// train tells what belongs to a train.
func (h *hovering) train(d *spec.Design, name string) bool {
	var joints []string
	for _, m := range d.Meshes {
		if m.Train.Text == name && m.A != nil && m.B != nil {
			joints = append(joints, fmt.Sprintf("mesh %s: %d to %d teeth", h.name(m.Label()), m.A.Teeth.N, m.B.Teeth.N))
		}
	}
	for _, c := range d.Chains {
		if c.Train.Text == name {
			joints = append(joints, "chain "+h.name(c.Label()))
		}
	}
	h.head("%s", h.titled("train", name))
	h.list(joints...)
	return true
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
