package hclread

import (
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// expr is an expression that is more than a literal. Its depth is bounded:
// MaxDepth brackets and MaxOperators signs.
type expr struct {
	op    op
	at    text.Span
	value syntax.Value // of a literal
	name  string       // of a named value
	x, y  *expr        // operands; x alone of a negation or a parenthesis
	list  []*expr      // of a list
}

// op is what an expression does: an arithmetic sign, or one of the following.
type op byte

const (
	literal  op = 0
	named    op = 'g'
	negation op = 'n'
	paren    op = '('
	listing  op = '['
)

// operand is what was read: a literal, or an expression if expr is set.
type operand struct {
	value syntax.Value
	expr  *expr
}

func (o operand) node() *expr {
	if o.expr != nil {
		return o.expr
	}
	return &expr{at: o.value.At, value: o.value}
}

// expressions are those of the block's attributes, literals among them.
func (b *block) expressions() []*expr {
	list := make([]*expr, len(b.Attrs))
	for _, o := range b.open {
		list[o.index] = o.expr
	}
	for i := range list {
		if list[i] == nil {
			list[i] = operand{value: b.Attrs[i].Value}.node()
		}
	}
	return list
}
