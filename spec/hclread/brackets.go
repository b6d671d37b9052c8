package hclread

import (
	"fmt"

	"wheelwork/spec/text"
)

// brackets are those that are open in a value.
type brackets struct {
	signs     [MaxDepth]byte
	at        [MaxDepth]int32
	operators [MaxDepth + 1]int32 // so far in the value or the element, within each
	n         int
	over      int // those that are open beyond what may be
}

func (b *brackets) clear() { b.n, b.over, b.operators[0] = 0, 0, 0 }

func (b *brackets) any() bool { return b.n > 0 }

// last is the innermost bracket, 0 if there is none.
func (b *brackets) last() byte {
	if b.n == 0 {
		return 0
	}
	return b.signs[b.n-1]
}

func (b *brackets) push(sign byte, at int) {
	if b.n == MaxDepth {
		b.over++
		return
	}
	b.signs[b.n], b.at[b.n] = sign, int32(at)
	b.n++
	b.operators[b.n] = 0
}

// close takes away the brackets that the sign closes: a } all up to the last
// {, another one the innermost that is no {. It reports whether it closes any.
func (b *brackets) close(sign byte) bool {
	if b.over > 0 {
		b.over--
		return true
	}
	if sign != '}' {
		if b.n == 0 || b.last() == '{' {
			return false
		}
		b.n--
		return true
	}
	for n := b.n; n > 0; n-- {
		if b.signs[n-1] == '{' {
			b.n = n - 1
			return true
		}
	}
	return false
}

// load is what has been passed of what costs hclsyntax memory. It recurses on
// brackets and signs, ten kilobytes each time, and where text is faulty even
// from brackets that were closed into the next.
type load struct{ words, signs int }

const (
	mostWords = 100_000
	mostSigns = 10_000
)

// beyond reports whether more has been passed since than hclsyntax is given at once.
func (l load) beyond(since load) bool {
	return l.words-since.words > mostWords || l.signs-since.signs > mostSigns
}

// operator counts the sign that stands here.
func (r *reader) operator(i int) {
	r.load.signs++
	open := &r.open
	if open.operators[open.n]++; open.operators[open.n] > MaxOperators {
		r.cut(i, tooMany)
	}
}

// cut keeps hclsyntax from what comes from here on in the value. Why is told
// once it is known that nothing before it is at fault.
func (r *reader) cut(i int, why string) {
	if it := &r.items[i]; it.bad {
		return
	}
	if r.cuts == nil {
		r.cuts = map[int]cut{}
	}
	at, _ := r.sign(r.pos)
	r.cuts[i] = cut{at, why}
	r.bad(i)
}

// cut is where a value goes beyond a bound.
type cut struct {
	at      text.Span
	message string
}

var (
	tooDeep = fmt.Sprintf("nested deeper than %d blocks and brackets", MaxDepth)
	tooLong = fmt.Sprintf("more than %d words or %d signs in one value", mostWords, mostSigns)
	tooMany = fmt.Sprintf("more than %d arithmetic signs in one value", MaxOperators)
)
