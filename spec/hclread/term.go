package hclread

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"wheelwork/spec/exact"
	"wheelwork/spec/syntax"
)

// term reads a literal, a named value, a list or a parenthesis.
func (r *reader) term() (operand, bool) {
	start := r.pos
	switch c := r.peek(0); {
	case c == '"':
		s, ok := r.quoted("a string")
		return operand{value: syntax.Value{Kind: syntax.String, At: r.span(start, r.pos), Text: s}}, ok
	case digit(c):
		return r.number()
	case c == '[':
		if w := wordEnd(r.src, r.pos+1); r.src[r.pos+1:w] == "for" {
			r.pos++
			r.brackets++
			return operand{}, r.refuse(r.pos, w, "a for expression", "write the values out")
		}
		return r.listOf()
	case c == '(':
		return r.parenthesis()
	case startsWord(r.src, r.pos):
		return r.named()
	}
	return operand{}, r.noTerm()
}

// number reads a number as HCL has it: digits, a point between digits, an
// exponent. Its value is exact.
func (r *reader) number() (operand, bool) {
	start, i := r.pos, r.pos
	plain := int64(0)
	for ; i < len(r.src) && digit(r.src[i]); i++ {
		if i-start < 18 {
			plain = plain*10 + int64(r.src[i]-'0')
		}
	}
	whole := i-start <= 18
scan:
	for i < len(r.src) {
		c := r.src[i]
		switch {
		case wordByte[c] && c != '-', c == '.':
			i++
		case (c == '-' || c == '+') && (r.src[i-1] == 'e' || r.src[i-1] == 'E') && i+1 < len(r.src) && digit(r.src[i+1]):
			i++
		default:
			break scan
		}
		whole = false
	}
	if i < len(r.src) && r.src[i] >= utf8.RuneSelf {
		// A sign or a letter of a unit, as in 20° or 5µm.
		if u, _ := utf8.DecodeRuneInString(r.src[i:]); !unicode.IsSpace(u) {
			end := strings.IndexFunc(r.src[i:], func(u rune) bool { return u < utf8.RuneSelf && !wordByte[u] || unicode.IsSpace(u) })
			if end < 0 {
				end = len(r.src) - i
			}
			i += end
			whole = false
		}
	}
	r.pos = i
	at := r.span(start, i)
	if whole {
		return operand{value: syntax.Value{Kind: syntax.Number, At: at, Number: exact.Int(plain)}}, true
	}
	written := r.src[start:i]
	n, err := exact.Parse(written)
	switch {
	case err == exact.ErrTooLong:
		r.problem(at, err.Error(), "")
		return operand{}, false
	case err != nil || strings.Contains(written, "_"):
		hint := ""
		digits := strings.TrimRightFunc(written, func(u rune) bool { return u != '_' && u != '.' && (u > '9' || u < '0') })
		if _, err := exact.Parse(digits); err == nil && digits != written && !strings.HasSuffix(strings.ToLower(written), "e") {
			hint = fmt.Sprintf("a quantity with its unit is a string: %q", short(written))
		}
		r.problem(at, short(written)+" is not a number", hint)
		return operand{}, false
	}
	return operand{value: syntax.Value{Kind: syntax.Number, At: at, Number: n}}, true
}

// named reads true, false, or a named value as given.NAME.
func (r *reader) named() (operand, bool) {
	start := r.pos
	w := r.word()
	switch w {
	case "true", "false":
		return operand{value: syntax.Value{Kind: syntax.Bool, At: r.span(start, r.pos), Bool: w == "true"}}, true
	case "null":
		return operand{}, r.refuse(start, r.pos, "null", "leave the attribute out")
	}
	end := r.pos
	r.blanks()
	switch {
	case r.peek(0) == '(' || r.has("::"):
		return operand{}, r.refuse(start, end, "a function call", "")
	case w != "given":
		hint := fmt.Sprintf("a string is written %q, a named value given.%s", short(w), short(w))
		if r.peek(0) == '.' {
			hint = "a named value is written given.NAME"
		}
		r.problem(r.span(start, end), short(w)+" is no value", hint)
		return operand{}, false
	case r.peek(0) != '.':
		r.problem(r.span(start, end), "given stands alone", "a named value is written given.NAME")
		return operand{}, false
	}
	r.pos++
	r.blanks()
	name := r.word()
	if name == "" {
		if r.peek(0) == '*' {
			return operand{}, r.refuse(r.pos, r.pos+1, "a splat", "")
		}
		r.problem(r.span(start, end+1), "given. lacks the name of a named value", "")
		return operand{}, false
	}
	return operand{expr: &expr{op: named, at: r.span(start, r.pos), name: name}}, true
}
