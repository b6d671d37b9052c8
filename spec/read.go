package spec

import (
	"fmt"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// reading fills a design from the trees of its files.
type reading struct {
	design   *Design
	file     *text.File
	own      bool // whether the file is the design's own, not one it uses
	problems []text.Problem
}

// part is a block of the model.
type part interface{ part() *Part }

// tree adds one file's blocks to the design.
func (r *reading) tree(t *syntax.Tree, own bool) {
	r.file, r.own = t.File, own
	seen := map[string]*syntax.Block{}
	for _, b := range t.Blocks {
		kind := KindOf(b.Kind)
		if kind == nil {
			var kinds []string
			for _, k := range language {
				kinds = append(kinds, k.Kind)
			}
			r.problem(b.KindAt, fmt.Sprintf("unknown block %q", clip(b.Kind)), near(b.Kind, kinds))
			continue
		}
		if kind.Kind == "given" {
			r.problem(b.KindAt, "named values (given) are part of the HCL notation only", "")
			continue
		}
		if kind.Form == tomlread.Single {
			if first := seen[b.Kind]; first != nil {
				r.doubled(b.KindAt, b.Kind, text.Place{File: r.file, Span: first.KindAt})
				continue
			}
			seen[b.Kind] = b
		}
		if !r.shape(kind, b) {
			continue
		}
		if kind.Form == tomlread.Grouped {
			r.bounds(b)
			continue
		}
		r.block(kind, b)
	}
}

// shape tells a label that is missing or too many and blocks where none belong.
func (r *reading) shape(kind *BlockKind, b *syntax.Block) bool {
	switch {
	case kind.Form == tomlread.Labelled && b.LabelAt.Len() == 0:
		r.problem(b.KindAt, fmt.Sprintf("%s needs a name", kind.Kind), fmt.Sprintf("write %s \"name\"", kind.Kind))
		return false
	case kind.Form == tomlread.Labelled && b.Label == "":
		r.problem(b.LabelAt, fmt.Sprintf("the name of a %s must not be empty", kind.Kind), "")
		return false
	case kind.Form != tomlread.Labelled && kind.Form != tomlread.Grouped && b.LabelAt.Len() > 0:
		r.problem(b.LabelAt, fmt.Sprintf("%s takes no name", kind.Kind), "")
	}
	if kind.Form != tomlread.Grouped {
		for _, inner := range b.Blocks {
			r.problem(inner.KindAt, fmt.Sprintf("%s holds no blocks", kind.Kind), near(inner.Kind, attributeNames(kind)))
		}
	}
	return true
}

// single reports whether a block that must stand once in a design is already there.
func (r *reading) single(kind string) (first *Part, held bool) {
	d := r.design
	switch {
	case kind == "design" && !r.own:
		return nil, true // a used file may be a design by itself; its heading is not this one's
	case kind == "clock" && d.Clock != nil:
		return &d.Clock.Part, true
	case kind == "stock" && d.Stock != nil:
		return &d.Stock.Part, true
	case kind == "dividing" && d.Dividing != nil:
		return &d.Dividing.Part, true
	}
	return nil, false
}

func (r *reading) block(kind *BlockKind, b *syntax.Block) {
	if kind.Form == tomlread.Single {
		if first, held := r.single(kind.Kind); held {
			if first != nil {
				r.doubled(b.KindAt, kind.Kind, first.Head)
			}
			return
		}
	}
	into := kind.add(r.design)
	p := into.(part).part()
	p.Kind = kind.Kind
	p.At = text.Place{File: r.file, Span: b.At}
	head := b.KindAt
	if b.LabelAt.Len() > 0 {
		head = head.Join(b.LabelAt)
		p.Name = Name{At: At{File: r.file, Key: b.KindAt, Val: b.LabelAt}, Text: b.Label}
	}
	p.Head = text.Place{File: r.file, Span: head}

	for i := range b.Attrs {
		a := &b.Attrs[i]
		row := kind.Attribute(a.Name)
		if row == nil {
			r.problem(a.Key, fmt.Sprintf("%s has no attribute %q", kind.Kind, clip(a.Name)), near(a.Name, attributeNames(kind)))
			continue
		}
		at := At{File: r.file, Key: a.Key, Val: a.Value.At, Derived: a.Value.Derived}
		row.field(into).set(r, row, at, a.Value)
	}
	for i := range kind.Attributes {
		if row := &kind.Attributes[i]; row.Required && b.Find(row.Name) == nil {
			r.problem(head, fmt.Sprintf("%s needs %s: %s", p.Title(), row.Name, row.Doc), near2(b, row.Name))
		}
	}
}

// near2 offers the misspelt attribute that was probably meant for a missing one.
func near2(b *syntax.Block, missing string) string {
	for i := range b.Attrs {
		if Nearest(b.Attrs[i].Name, []string{missing}) != "" {
			return fmt.Sprintf("is %q meant for it?", clip(b.Attrs[i].Name))
		}
	}
	return ""
}

// bounds keeps the blocks for the rules, which know what they mean. The first
// word on a threshold holds: a design's own file comes before those it uses.
func (r *reading) bounds(b *syntax.Block) {
	for i := range b.Attrs {
		r.problem(b.Attrs[i].Key, "bounds holds a block for each rule", "write bounds { rule-name { severity = \"note\" } }")
	}
	if b.LabelAt.Len() > 0 {
		r.rule(b, b.Label, b.LabelAt)
		return
	}
	for _, inner := range b.Blocks {
		r.rule(inner, inner.Kind, inner.KindAt)
	}
}

func (r *reading) rule(b *syntax.Block, name string, nameAt text.Span) {
	one := &Bounds{
		Rule: Name{At: At{File: r.file, Key: nameAt, Val: nameAt}, Text: name},
		At:   text.Place{File: r.file, Span: b.At},
	}
	for i := range b.Attrs {
		a := &b.Attrs[i]
		bound := Bound{Key: a.Name, At: At{File: r.file, Key: a.Key, Val: a.Value.At, Derived: a.Value.Derived}}
		switch a.Value.Kind {
		case syntax.Number:
			bound.Value = Number{At: bound.At, Exact: a.Value.Number}
		case syntax.String:
			bound.Value = Name{At: bound.At, Text: a.Value.Text}
		case syntax.Bool:
			bound.Value = Flag{At: bound.At, On: a.Value.Bool}
		case syntax.List:
			r.problem(a.Value.At, "a bound is one value, not a list", "")
			continue
		case syntax.Invalid:
			continue
		}
		one.Values = append(one.Values, bound)
	}
	r.design.Bounds = append(r.design.Bounds, one)
}

func (r *reading) problem(at text.Span, message, hint string) {
	r.problems = append(r.problems, text.Problem{Place: text.Place{File: r.file, Span: at}, Message: message, Hint: hint})
}

func (r *reading) doubled(at text.Span, what string, first text.Place) {
	r.problems = append(r.problems, text.Problem{
		Place:   text.Place{File: r.file, Span: at},
		Message: what + " is given twice",
		Related: []text.Related{{Place: first, Message: "first here"}},
	})
}

func attributeNames(k *BlockKind) []string {
	names := make([]string, len(k.Attributes))
	for i := range k.Attributes {
		names[i] = k.Attributes[i].Name
	}
	return names
}

// clip keeps messages short whatever the text.
func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
