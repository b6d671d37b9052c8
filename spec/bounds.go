package spec

import (
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// bounds keeps the blocks for the rules, which know what they mean. The first
// word on a threshold holds: a design's own file comes before those it uses.
func (r *reading) bounds(b *syntax.Block) {
	if b.LabelAt.Len() > 0 { // bounds "rule-name" { ... }
		r.rule(b, b.Label, b.LabelAt)
		return
	}
	for i := range b.Attrs {
		r.problem(b.Attrs[i].Key, "write bounds { rule-name { severity = \"note\" } }", "bounds holds a block for each rule")
	}
	for _, inner := range b.Blocks {
		if inner.LabelAt.Len() > 0 {
			r.problem(inner.LabelAt, "", "the bounds of a rule take no name")
		}
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
			r.problem(a.Value.At, "", "a bound is one value, not a list")
			continue
		case syntax.Invalid:
			continue
		}
		one.Values = append(one.Values, bound)
	}
	for _, inner := range b.Blocks {
		r.problem(inner.KindAt, "", "the bounds of a rule hold no blocks")
	}
	r.design.Bounds = append(r.design.Bounds, one)
}
