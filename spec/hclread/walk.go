package hclread

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"wheelwork/spec/exact"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// walker turns what hclsyntax read into blocks and expressions.
type walker struct {
	src     string
	refused *refusal
	sorted  []*hclsyntax.Attribute // of the block that it is at
}

// spanOf is the place of a range.
func spanOf(r hcl.Range) text.Span { return span(r.Start.Byte, r.End.Byte) }

// block is the block with all that it holds.
func (w *walker) block(from *hclsyntax.Block) *block {
	b := &block{Block: syntax.Block{
		Kind: from.Type, KindAt: spanOf(from.TypeRange),
		At: spanOf(from.TypeRange).Join(spanOf(from.CloseBraceRange)),
	}}
	if len(from.Labels) > 0 {
		b.Label, b.LabelAt = from.Labels[0], spanOf(from.LabelRanges[0])
	}
	b.Attrs = make([]syntax.Attr, 0, len(from.Body.Attributes))
	for _, a := range w.inOrder(from.Body.Attributes) {
		b.attribute(a.Name, spanOf(a.NameRange), w.operand(a.Expr))
	}
	for _, inner := range from.Body.Blocks {
		b.hold(w.block(inner))
	}
	return b
}

// inOrder is attributes, which hclsyntax keeps in a map, in the order of the
// text, until it is called again.
func (w *walker) inOrder(attributes hclsyntax.Attributes) []*hclsyntax.Attribute {
	w.sorted = w.sorted[:0]
	for _, a := range attributes {
		w.sorted = append(w.sorted, a)
	}
	slices.SortFunc(w.sorted, func(x, y *hclsyntax.Attribute) int { return x.NameRange.Start.Byte - y.NameRange.Start.Byte })
	return w.sorted
}

// attribute adds an attribute.
func (b *block) attribute(name string, key text.Span, o operand) {
	if o.expr != nil {
		b.open = append(b.open, open{index: len(b.Attrs), expr: o.expr})
		b.deep = true
	}
	b.Attrs = append(b.Attrs, syntax.Attr{Name: name, Key: key, Value: o.value})
}

// hold adds a block within.
func (b *block) hold(inner *block) {
	b.within = append(b.within, inner)
	b.Blocks = append(b.Blocks, &inner.Block)
	b.deep = b.deep || inner.deep
}

// operand is what an expression is to the language. What it is not is refused.
func (w *walker) operand(e hclsyntax.Expression) operand {
	place := spanOf(e.Range())
	switch e := e.(type) {
	case *hclsyntax.LiteralValueExpr:
		return w.literal(e.Val, place)
	case *hclsyntax.TemplateExpr:
		return operand{value: syntax.Value{Kind: syntax.String, At: place, Text: unquote(w.src[place.Start:place.End])}}
	case *hclsyntax.TupleConsExpr:
		return w.list(e.Exprs, place)
	case *hclsyntax.ParenthesesExpr:
		return operand{expr: &expr{op: paren, at: place, x: w.operand(e.Expression).node()}}
	case *hclsyntax.ScopeTraversalExpr:
		return w.named(e.Traversal, place)
	case *hclsyntax.UnaryOpExpr:
		x := w.operand(e.Val)
		if e.Op != hclsyntax.OpNegate {
			w.refuse(spanOf(e.SymbolRange), "logic (!)", "")
		}
		if _, plain := e.Val.(*hclsyntax.LiteralValueExpr); plain && x.value.Kind == syntax.Number {
			x.value.Number, x.value.At = x.value.Number.Neg(), place
			return x
		}
		return operand{expr: &expr{op: negation, at: place, x: x.node()}}
	case *hclsyntax.BinaryOpExpr:
		x, y := w.operand(e.LHS).node(), w.operand(e.RHS).node()
		return operand{expr: &expr{op: w.operator(e), at: place, x: x, y: y}}
	}
	w.other(e)
	return operand{value: syntax.Value{At: place}}
}

// literal is true, false or a number, whose value is exact: it is read from
// its text.
func (w *walker) literal(v cty.Value, place text.Span) operand {
	written := w.src[place.Start:place.End]
	switch {
	case !v.IsKnown(): // hclsyntax could not read it and tells why
	case v.IsNull():
		w.refuse(place, "null", "leave the attribute out")
	case v.Type() == cty.Bool:
		return operand{value: syntax.Value{Kind: syntax.Bool, At: place, Bool: v.True()}}
	default:
		n, err := exact.Parse(written)
		if err == nil {
			return operand{value: syntax.Value{Kind: syntax.Number, At: place, Number: n}}
		}
		w.tell(place, err.Error(), "")
	}
	return operand{value: syntax.Value{At: place}}
}

// list is a literal if all its elements are.
func (w *walker) list(from []hclsyntax.Expression, place text.Span) operand {
	var values []syntax.Value
	var nodes []*expr // set once one of them is no literal
	if len(from) > 0 {
		values = make([]syntax.Value, 0, len(from))
	}
	for _, e := range from {
		x := w.operand(e)
		if x.expr == nil && nodes == nil {
			values = append(values, x.value)
			continue
		}
		if nodes == nil {
			for _, v := range values {
				nodes = append(nodes, operand{value: v}.node())
			}
		}
		nodes = append(nodes, x.node())
	}
	if nodes != nil {
		return operand{expr: &expr{op: listing, at: place, list: nodes}}
	}
	return operand{value: syntax.Value{Kind: syntax.List, At: place, List: values}}
}

// named is a named value, given.NAME.
func (w *walker) named(t hcl.Traversal, place text.Span) operand {
	root := t[0].(hcl.TraverseRoot)
	if root.Name != "given" {
		hint := "a named value is written given.NAME"
		if len(t) == 1 {
			hint = stringHint(root.Name)
		}
		w.tell(spanOf(root.SrcRange), short(root.Name)+" is no value", hint)
		return operand{value: syntax.Value{At: place}}
	}
	if len(t) > 1 {
		if name, ok := t[1].(hcl.TraverseAttr); ok {
			if len(t) > 2 {
				w.part(t[2])
			}
			return operand{expr: &expr{op: named, at: place, name: name.Name}}
		}
	}
	w.tell(spanOf(root.SrcRange), "given stands alone", "a named value is written given.NAME")
	return operand{value: syntax.Value{At: place}}
}

// unquote is what the string in quotes holds, in the Unicode form it is
// written in, which hclsyntax's own values do not keep.
func unquote(quoted string) string {
	inner := quoted[1 : len(quoted)-1]
	if !strings.ContainsAny(inner, `\$%`) {
		return strings.Clone(inner)
	}
	tokens, _ := hclsyntax.LexConfig([]byte(quoted), "", hcl.InitialPos)
	var out strings.Builder
	for _, t := range tokens {
		if t.Type == hclsyntax.TokenQuotedLit {
			s, _ := hclsyntax.ParseStringLiteralToken(t)
			out.WriteString(s)
		}
	}
	return out.String()
}
