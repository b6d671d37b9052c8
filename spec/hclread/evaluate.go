package hclread

import (
	"fmt"
	"math/big"

	"wheelwork/spec/exact"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// The bounds of what named values may grow to by naming each other.
const (
	// MaxBits bounds the numerator and the denominator of a result.
	MaxBits = 2048
	// MaxCopied bounds the values that named lists put into the trees.
	MaxCopied = 100_000
	// MaxChain bounds how many named values stand on one another in a chain.
	MaxChain = 100
)

// Evaluate makes one tree of each source, in their order. The given blocks of
// all sources form one scope. Trees share what no expression touches with
// their sources: neither may be changed.
func Evaluate(sources []*Source) ([]*syntax.Tree, []text.Problem) {
	s := newScope(sources)
	for _, name := range s.order {
		s.resolve(name)
	}
	trees := make([]*syntax.Tree, len(sources))
	for i, source := range sources {
		s.file = source.file
		tree := &syntax.Tree{File: source.file, Blocks: make([]*syntax.Block, len(source.blocks))}
		for j, b := range source.blocks {
			tree.Blocks[j] = s.bind(b)
		}
		trees[i] = tree
	}
	text.SortProblems(s.problems)
	return trees, s.problems
}

// bind is the block with its open attributes evaluated.
func (s *scope) bind(b *block) *syntax.Block {
	if !b.deep {
		return &b.Block
	}
	bound := b.Block
	if len(b.open) > 0 {
		bound.Attrs = append([]syntax.Attr(nil), b.Attrs...)
		for _, o := range b.open {
			bound.Attrs[o.index].Value = s.value(o.expr)
		}
	}
	bound.Blocks = make([]*syntax.Block, len(b.within))
	for i, w := range b.within {
		bound.Blocks[i] = s.bind(w)
	}
	return &bound
}

// value evaluates an expression of the current file. The value is Invalid if
// it has none; why is told.
func (s *scope) value(e *expr) syntax.Value {
	v := s.eval(e)
	v.At, v.Derived = e.at, e.op != literal
	return v
}

func (s *scope) eval(e *expr) syntax.Value {
	switch e.op {
	case literal:
		return e.value
	case named:
		return s.reference(e)
	case paren:
		return s.eval(e.x)
	case listing:
		list, whole := make([]syntax.Value, len(e.list)), true
		for i, x := range e.list {
			list[i] = s.value(x)
			whole = whole && list[i].Kind != syntax.Invalid
		}
		if !whole {
			return syntax.Value{}
		}
		return syntax.Value{Kind: syntax.List, List: list}
	case negation:
		x, ok := s.number(e.x, "-")
		if !ok {
			return syntax.Value{}
		}
		return syntax.Value{Kind: syntax.Number, Number: x.Neg()}
	}
	x, okx := s.number(e.x, string(rune(e.op)))
	y, oky := s.number(e.y, string(rune(e.op)))
	if !okx || !oky {
		return syntax.Value{}
	}
	n, ok := s.arithmetic(e, x, y)
	if !ok {
		return syntax.Value{}
	}
	return syntax.Value{Kind: syntax.Number, Number: n}
}

// number evaluates an operand of arithmetic.
func (s *scope) number(e *expr, sign string) (exact.Rat, bool) {
	v := s.eval(e)
	if v.Kind == syntax.Number {
		return v.Number, true
	}
	if v.Kind != syntax.Invalid {
		p := s.at(e.at, fmt.Sprintf("%s takes numbers, this is %s", sign, v.Kind.Noun()))
		if e.op == named {
			p.Related = s.givenHere(e.name)
		}
		s.tell(p)
	}
	return exact.Rat{}, false
}

// arithmetic computes x sign y. The remainder has the sign of x, as in HCL.
func (s *scope) arithmetic(e *expr, x, y exact.Rat) (n exact.Rat, ok bool) {
	switch e.op {
	case '+':
		n = x.Add(y)
	case '-':
		n = x.Sub(y)
	case '*':
		n = x.Mul(y)
	case '/', '%':
		if y.IsZero() {
			s.tell(s.at(e.y.at, "division by zero"))
			return n, false
		}
		n = x.Quo(y)
		if e.op == '%' {
			q := n.Big()
			whole := new(big.Rat).SetInt(new(big.Int).Quo(q.Num(), q.Denom()))
			n = x.Sub(exact.FromBig(whole).Mul(y))
		}
	}
	if b := n.Big(); b.Num().BitLen() > MaxBits || b.Denom().BitLen() > MaxBits {
		s.tell(s.at(e.at, fmt.Sprintf("a result of more than %d bits", MaxBits)))
		return n, false
	}
	return n, true
}
