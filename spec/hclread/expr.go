package hclread

import (
	"fmt"

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

func (o operand) at() text.Span {
	if o.expr != nil {
		return o.expr.at
	}
	return o.value.At
}

func (o operand) node() *expr {
	if o.expr != nil {
		return o.expr
	}
	return &expr{at: o.value.At, value: o.value}
}

// sum reads terms joined by + and -.
func (r *reader) sum() (operand, bool) {
	x, ok := r.product()
	for ok {
		c := r.peek(0)
		if c != '+' && c != '-' {
			return x, r.noFurtherOperator()
		}
		x, ok = r.binary(x, r.product)
	}
	return x, false
}

// product reads factors joined by *, / and %.
func (r *reader) product() (operand, bool) {
	x, ok := r.factor()
	for ok {
		c := r.peek(0)
		if c != '*' && c != '/' && c != '%' || r.has("**") || r.has("//") {
			return x, true
		}
		x, ok = r.binary(x, r.factor)
	}
	return x, false
}

// binary reads the sign that stands here and the operand after it.
func (r *reader) binary(x operand, next func() (operand, bool)) (operand, bool) {
	sign := op(r.peek(0))
	if !r.operator(r.pos) {
		return x, false
	}
	r.pos++
	y, ok := next()
	if !ok {
		return x, false
	}
	return operand{expr: &expr{op: sign, at: x.at().Join(y.at()), x: x.node(), y: y.node()}}, true
}

// operator counts the sign at the offset.
func (r *reader) operator(at int) bool {
	r.operators++
	if r.operators > MaxOperators {
		r.problem(r.span(at, at+1), fmt.Sprintf("more than %d arithmetic signs in one value", MaxOperators), "")
		return false
	}
	return true
}

// factor reads a term with the minus signs before it, and the blanks after.
func (r *reader) factor() (operand, bool) {
	r.blanks()
	first, last, signs := r.pos, r.pos, 0
	for r.peek(0) == '-' {
		if !r.operator(r.pos) {
			return operand{}, false
		}
		last = r.pos
		signs++
		r.pos++
		r.blanks()
	}
	x, ok := r.term()
	if !ok {
		return x, false
	}
	if r.blanks(); !r.noPart() {
		return x, false
	}
	if signs == 0 {
		return x, true
	}
	if x.expr == nil && x.value.Kind == syntax.Number {
		x.value.Number = x.value.Number.Neg()
		x.value.At = r.span(last, int(x.value.At.End))
		if signs == 1 {
			return x, true
		}
		last, signs = first, signs-1
	}
	n := x.node()
	for i := range signs {
		from := first
		if i == 0 {
			from = last
		}
		n = &expr{op: negation, at: r.span(from, int(n.at.End)), x: n}
	}
	return operand{expr: n}, true
}

// enter opens the bracket that stands here.
func (r *reader) enter() bool {
	if r.depth+r.brackets >= MaxDepth {
		r.tooDeep(r.span(r.pos, r.pos+1))
		return false
	}
	r.pos++
	r.brackets++
	return true
}

func (r *reader) tooDeep(at text.Span) {
	r.problem(at, fmt.Sprintf("nested deeper than %d blocks and brackets", MaxDepth), "")
}

// parenthesis reads an expression in parentheses.
func (r *reader) parenthesis() (operand, bool) {
	start := r.pos
	if !r.enter() {
		return operand{}, false
	}
	x, ok := r.sum()
	if !ok {
		return x, false
	}
	if r.peek(0) != ')' {
		return x, r.unclosed(start, "parenthesis", ")")
	}
	r.pos++
	r.brackets--
	return operand{expr: &expr{op: paren, at: r.span(start, r.pos), x: x.node()}}, true
}

// listOf reads a list from its [.
func (r *reader) listOf() (operand, bool) {
	start, mark := r.pos, len(r.values.pile)
	defer func() { r.values.pile = r.values.pile[:mark] }()
	if !r.enter() {
		return operand{}, false
	}
	var list []*expr // set once one of them is no literal
	for {
		r.gap()
		if r.peek(0) == ']' {
			break
		}
		if r.itemHere() {
			return operand{}, r.unclosed(start, "list", "]")
		}
		o, ok := r.sum()
		if !ok {
			return o, false
		}
		switch {
		case list == nil && o.expr == nil:
			r.values.pile = append(r.values.pile, o.value)
		case list == nil:
			for _, v := range r.values.pile[mark:] {
				list = append(list, operand{value: v}.node())
			}
			fallthrough
		default:
			list = append(list, o.node())
		}
		r.gap()
		if r.peek(0) == ',' {
			r.pos++
		} else if r.peek(0) != ']' {
			return o, r.unclosed(start, "list", "]")
		}
	}
	r.pos++
	r.brackets--
	at := r.span(start, r.pos)
	if list != nil {
		return operand{expr: &expr{op: listing, at: at, list: list}}, true
	}
	return operand{value: syntax.Value{Kind: syntax.List, At: at, List: r.values.take(mark)}}, true
}
