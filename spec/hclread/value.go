package hclread

import (
	"fmt"
	"strings"

	"wheelwork/spec/syntax"
)

// attribute reads a value after its = and goes past it whatever it is. A value
// that could not be read is Invalid and its problem told.
func (r *reader) attribute() (syntax.Value, *expr) {
	sign := r.pos
	r.blanks()
	start := r.pos
	r.brackets, r.operators, r.resynced = 0, 0, false
	o, ok := r.sum()
	if ok && r.valueEnd(o) {
		return o.value, o.expr
	}
	if !r.resynced {
		r.skip()
	}
	r.brackets = 0
	text := strings.TrimRight(r.src[start:max(start, r.pos)], " \t\r\n")
	if text == "" {
		start = sign
	}
	return syntax.Value{At: r.span(start, start+len(text))}, nil
}

// valueEnd makes sure that nothing of the value is left.
func (r *reader) valueEnd(o operand) bool {
	r.blanks()
	switch {
	case r.peek(0) == ',' && digit(r.src[r.pos-1]) && digit(r.peek(1)):
		r.problem(r.span(r.pos, r.pos+1), "a decimal has a point, not a comma", "")
		return false
	case r.itemEnd():
		return true
	case o.expr == nil && o.value.Kind == syntax.Number && startsWord(r.src, r.pos) && !r.itemHere():
		end := wordEnd(r.src, r.pos)
		r.problem(r.span(r.pos, end), "a unit stands within a string",
			fmt.Sprintf("write %q", short(r.src[o.value.At.Start:end])))
		return false
	case startsWord(r.src, r.pos) && int(o.at().End) < r.pos:
		return true
	}
	at, sign := r.sign()
	r.problem(at, "the value ends before "+sign, "")
	return false
}

// itemHere reports whether the next item, or the end of the block, stands here.
func (r *reader) itemHere() bool {
	if r.ended() || r.peek(0) == '}' {
		return true
	}
	end := wordEnd(r.src, r.pos)
	if end == r.pos {
		return false
	}
	after := strings.TrimLeft(r.src[end:min(len(r.src), end+256)], " \t")
	return headerAt(r.src, r.pos) ||
		strings.HasPrefix(after, "=") && !strings.HasPrefix(after, "==") && !strings.HasPrefix(after, "=>")
}

// unclosed tells why a bracket does not go on here.
func (r *reader) unclosed(open int, what, closer string) bool {
	if r.itemHere() {
		r.problem(r.span(open, open+1), "the "+what+" is not closed", "a "+closer+" is missing")
		r.resynced = true
		return false
	}
	at, sign := r.sign()
	if closer == "]" && sign != ")" {
		r.problem(at, "a comma is missing before "+sign, "")
	} else {
		r.problem(at, closer+" is needed, not "+sign, "")
	}
	return false
}
