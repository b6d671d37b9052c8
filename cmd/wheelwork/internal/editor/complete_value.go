package editor

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/rules"
	"wheelwork/rules/chain"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/folder"
	"wheelwork/spec/quantity"
)

// value offers what an attribute may hold.
func (c *completing) value() {
	b, key := c.at.Block, c.at.Key.Text
	if !c.toml && !c.at.InString {
		c.given()
	}
	switch {
	case b == nil:
		return
	case b.Within != nil && b.Within.Kind.Text == "bounds" || b.Kind.Text == "bounds":
		if key == "severity" {
			c.words(rules.Severities)
		}
		return
	}
	k := spec.KindOf(b.Kind.Text)
	if k == nil {
		return
	}
	a := k.Attribute(key)
	if a == nil {
		return
	}
	if c.afterGiven() {
		return // only a named value goes on from here
	}
	switch a.Holds {
	case spec.AChoice:
		c.words(a.Choices)
	case spec.AFlag:
		for _, w := range []string{"true", "false"} {
			c.add(item{label: w, kind: lsp.CompleteKeyword})
		}
	case spec.AName, spec.ANames:
		c.references(a)
	case spec.APeriod:
		c.periods()
		c.units(quantity.Time)
	case spec.ATolerance:
		c.tolerance()
	case spec.ANumber, spec.ANumbers, spec.APoint:
		c.units(a.Dimension)
	}
	switch {
	case a.Name == "train", a.Name == "material":
		c.texts(k, a)
	case a.Name == "uses":
		c.files()
	case a.Name == "size" && k.Kind == "chain", a.Name == "chains":
		for _, s := range chain.Sizes() {
			c.add(item{label: s.Name, inserted: c.named(s.Name), detail: "pitch " + mm(s.Pitch) + ", roller " + mm(s.Roller), kind: lsp.CompleteValue})
		}
	}
}

func (c *completing) words(list []string) {
	for _, w := range list {
		c.add(item{label: w, inserted: c.named(w), kind: lsp.CompleteKeyword})
	}
}

// references offers the names that an attribute may refer to.
func (c *completing) references(a *spec.Attribute) {
	c.design(func(m *model) {
		d := m.design
		arbors := func() {
			for _, x := range d.Arbors {
				c.name(x.Name.Text, x.Kind+", carried by "+x.CarrierName())
			}
		}
		arms := func() {
			for _, x := range d.Arms {
				c.name(x.Name.Text, "arm on "+x.On.Text)
			}
		}
		switch a.Refers {
		case spec.ToArbor:
			arbors()
		case spec.ToCarrier:
			arms()
			c.name(spec.Frame, "what stands still")
		case spec.ToBody:
			arms()
			arbors()
			c.name(spec.Frame, "what stands still")
		case spec.ToWheel:
			for _, x := range d.Wheels {
				c.name(x.Name.Text, wheelDetail(x))
			}
		case spec.ToSprocket:
			for _, x := range d.Sprockets {
				c.name(x.Name.Text, teeth(x.Teeth.N)+" on "+x.On.Text)
			}
		case spec.ToHand:
			for _, x := range d.Hands {
				c.name(x.Name.Text, "hand on "+x.On.Text)
			}
		case spec.ToPart:
			for _, n := range m.index().all {
				if n.def && n.how != asWord {
					c.part(m, &n)
				}
			}
		}
	})
}

// name offers a name, but not that of the block itself being written.
func (c *completing) name(s, detail string) {
	if s != "" {
		c.add(item{label: s, inserted: c.named(s), detail: detail, kind: lsp.CompleteReference})
	}
}

// part offers a part as kind.name.
func (c *completing) part(m *model, n *mention) {
	for _, kind := range spec.StageKinds {
		if setOf(kind) == n.set && m.design.PartNamed(kind, n.name) != nil {
			c.name(kind+"."+n.name, "")
		}
	}
}

func wheelDetail(w *spec.Wheel) string {
	s := teeth(w.Teeth.N)
	if m, ok := rules.ModuleOf(w); ok {
		s += ", module " + mm(m)
	}
	return s + ", on " + w.On.Text
}

func teeth(n int64) string { return fmt.Sprintf("%d teeth", n) }

// texts offers what the attribute says elsewhere in the design.
func (c *completing) texts(k *spec.BlockKind, a *spec.Attribute) {
	c.design(func(m *model) {
		for _, f := range m.files {
			for _, b := range f.tree.Blocks {
				v := b.Find(a.Name)
				if v == nil || spec.KindOf(b.Kind) == nil || spec.KindOf(b.Kind).Attribute(a.Name) == nil {
					continue
				}
				own := f.path == c.q.doc.path && v.Value.At.Start <= c.at.Start && c.at.End <= v.Value.At.End
				if s := v.Value.Text; s != "" && !own {
					c.add(item{label: s, inserted: c.named(s), detail: a.Name, kind: lsp.CompleteValue})
				}
			}
		}
	})
}

func (c *completing) periods() {
	for _, p := range sky.Periods() {
		page := &page{markdown: c.q.view.markdown}
		page.periodPage(&p)
		days, _ := p.Days.Float64()
		for i, s := range append([]string{p.Name}, p.Also...) {
			c.add(item{label: s, inserted: c.named(s), detail: figure.Days(&days), doc: page.String(), kind: lsp.CompleteConstant, first: i == 0})
		}
	}
}

// files offers spec files that a design may use.
func (c *completing) files() {
	dir := filepath.Dir(c.q.doc.named)
	prefix := ""
	if c.at.InString {
		prefix = path.Dir(string(c.q.doc.text.Bytes[c.at.Start:c.at.End]) + "x")
	}
	entries, err := os.ReadDir(filepath.Join(dir, filepath.FromSlash(prefix)))
	if err != nil {
		return
	}
	for _, e := range entries {
		name := path.Join(prefix, e.Name())
		switch {
		case strings.HasPrefix(e.Name(), "."):
		case e.IsDir():
			c.add(item{label: name + "/", inserted: c.named(name + "/"), kind: lsp.CompleteFile})
		case folder.IsSpec(name) && filepath.Join(dir, filepath.FromSlash(name)) != c.q.doc.named:
			c.add(item{label: name, inserted: c.named(name), kind: lsp.CompleteFile, first: true})
		}
	}
}

// unfinished is the letters behind a figure within quotes; ok is false where
// there is no figure.
func (c *completing) unfinished() (letters string, ok bool) {
	if !c.at.InString {
		return "", false
	}
	before := string(c.q.doc.text.Bytes[c.at.Start:c.at.End])
	digits := strings.TrimRight(before, " abcdefghijklmnopqrstuvwxyzNµ°%")
	return before[len(digits):], digits != "" && strings.ContainsAny(digits, "0123456789")
}

// units offers the units of a figure within quotes.
func (c *completing) units(d quantity.Dimension) {
	unit, ok := c.unfinished()
	if !ok {
		return
	}
	c.after(unit)
	for _, u := range quantity.Units(d) {
		c.unit(u.Name, u.Meaning)
	}
}

// after leaves what is written before the unit as it is.
func (c *completing) after(unit string) {
	c.at.Start = c.at.End - int32(len(strings.TrimLeft(unit, " ")))
}

func (c *completing) unit(name, meaning string) {
	inserted := name
	if at := c.at.Start; at > 0 && c.q.doc.text.Bytes[at-1] != ' ' {
		inserted = " " + name
	}
	c.add(item{label: name, inserted: inserted, detail: meaning, kind: lsp.CompleteUnit})
}

// tolerance offers the units of a tolerance: of its amount, or of its span.
func (c *completing) tolerance() {
	unit, ok := c.unfinished()
	if !ok {
		return
	}
	whole := string(c.q.doc.text.Bytes[c.at.Start:c.at.End])
	c.after(unit)
	if strings.Contains(whole, " in ") {
		for _, u := range quantity.Units(quantity.Time) {
			c.unit(u.Name, u.Meaning)
		}
		return
	}
	c.unit("ppm", "parts in a million of the period")
	c.unit("%", "per cent of the period")
	for _, d := range []quantity.Dimension{quantity.Angle, quantity.Time} {
		for _, u := range quantity.Units(d) {
			c.unit(u.Name+" in ", u.Meaning+", in a span of time")
		}
	}
}

// afterGiven reports whether "given." stands before what is being written.
func (c *completing) afterGiven() bool {
	before := strings.TrimRight(string(c.q.doc.text.Bytes[max(0, c.at.Start-40):c.at.Start]), " \t")
	return !c.toml && !c.at.InString && strings.HasSuffix(before, ".") && strings.HasSuffix(strings.TrimRight(before[:len(before)-1], " \t"), "given")
}

// given offers the named values.
func (c *completing) given() {
	prefix := "given."
	if c.afterGiven() {
		prefix = ""
	}
	offered := func(name, detail string) {
		c.add(item{label: prefix + name, detail: detail, kind: lsp.CompleteVariable})
	}
	var own []string
	for _, b := range c.outline.Blocks {
		if b.Kind.Text == values && b.Within == nil {
			for _, e := range b.Entries {
				if e.Key != c.at.Key {
					own = append(own, e.Key.Text)
					offered(e.Key.Text, strings.TrimSpace(string(c.q.doc.text.Bytes[e.Start:e.End])))
				}
			}
		}
	}
	c.design(func(m *model) {
		for _, n := range m.index().all {
			if n.set == values && n.def && n.file.path != c.q.doc.path && !slices.Contains(own, n.name) {
				line := n.file.text.LineOf(n.span.Start)
				_, value, _ := strings.Cut(string(n.file.Bytes[n.span.End:n.file.text.End(line)]), "=")
				offered(n.name, strings.TrimSpace(value))
			}
		}
	})
}
