package hclread

import (
	"strings"
	"unicode/utf8"

	"wheelwork/spec/exact"
	"wheelwork/spec/text"
)

// value goes past the value of an item: to the end of the line outside all
// brackets, or to where the block ends or its next item begins. It bounds what
// hclsyntax recurses on or takes long for.
func (r *reader) value(i int) {
	start := r.pos
	r.items[i].inner = int32(start)
	end := start // of what belongs to the value
	open := &r.open
	open.clear()
	before := r.load
scan:
	for !r.ended() {
		if r.load.beyond(before) {
			r.cut(i, tooLong)
		}
		switch c := r.src[r.pos]; {
		case c == ' ' || c == '\t' || c == '\r':
			r.pos++
			continue
		case c == '\n':
			if !open.any() && (end > start || !r.valueBelow(i)) {
				break scan
			}
			r.pos++
			if r.atHeader() {
				break scan
			}
			continue
		case r.commentHere():
			r.comment()
			continue
		case c == '"':
			r.quoted(i, "a string")
		case startsWord(r.src, r.pos):
			if r.pos > end && open.last() != '{' && r.itemHere() {
				break scan
			}
			r.word()
		case digit(c):
			r.number(i)
		case c == '(' || c == '[' || c == '{':
			if c == '[' && end > start && endsOperand(r.src[end-1]) {
				r.operator(i) // an index
			}
			if r.depth+open.n >= MaxDepth {
				r.cut(i, tooDeep)
			}
			open.push(c, r.pos)
			r.load.signs++
			r.pos++
		case c == '}':
			if !open.close(c) {
				break scan
			}
			r.pos++
		case c == ')' || c == ']':
			open.close(c)
			r.pos++
		case r.has("<<"):
			r.heredoc(i)
		case strings.IndexByte("+-*/%!?<>=&|^~.", c) >= 0:
			r.operator(i)
			r.pos++
		case c == ',':
			open.operators[open.n] = 0
			r.pos++
		case c < utf8.RuneSelf:
			r.pos++
		default:
			_, size := utf8.DecodeRuneInString(r.src[r.pos:])
			r.pos += size
		}
		r.load.words++
		end = r.pos
	}
	r.items[i].at.End = int32(end)
	switch {
	case open.n > 0:
		r.unclosed(i)
	case end == start:
		at, sign := r.missing(end)
		r.fault(i, at, "a value is needed before "+sign, "")
	}
}

// missing is the place of a value that is missing at the offset, behind what
// lacks it, and names what follows instead.
func (r *reader) missing(pos int) (at text.Span, sign string) {
	next := pos
	for next < len(r.src) && (r.src[next] == ' ' || r.src[next] == '\t') {
		next++
	}
	at, sign = r.sign(next)
	if comment := sign == "#" || sign == "/"; comment || r.lineEnd(next) {
		if comment {
			sign = "the end of the line"
		}
		at = span(pos-1, pos) // point at what lacks its value
	}
	return at, sign
}

// endsOperand reports whether an operand may end in the byte.
func endsOperand(c byte) bool {
	return wordByte[c] || c >= utf8.RuneSelf || strings.IndexByte(`"])}*`, c) >= 0
}

// unclosed tells the innermost bracket that is not closed.
func (r *reader) unclosed(i int) {
	open := &r.open
	at := text.Span{Start: open.at[open.n-1], End: open.at[open.n-1] + 1}
	switch open.last() {
	case '(':
		r.fault(i, at, "the parenthesis is not closed", "a ) is missing")
	case '[':
		r.fault(i, at, "the list is not closed", "a ] is missing")
	default:
		r.refuse(i, at, object, objectHint)
	}
}

// number goes past a number. Its digits are bounded.
func (r *reader) number(i int) {
	start := r.pos
	for r.pos++; !r.ended(); r.pos++ {
		c, last := r.src[r.pos], r.src[r.pos-1]
		exponent := (c == '-' || c == '+') && (last == 'e' || last == 'E') && digit(r.peek(1))
		if c != '.' && !exponent && (c == '-' || !wordByte[c]) {
			break
		}
	}
	if r.pos-start > 4*exact.MaxDigits {
		r.fault(i, span(start, r.pos), exact.ErrTooLong.Error(), "")
	}
}

// itemHere reports whether the word here begins the next item: no value has
// the sign = or a { behind a word, outside the braces of objects.
func (r *reader) itemHere() bool {
	after := strings.TrimLeft(r.src[wordEnd(r.src, r.pos):], " \t")
	return headerAt(r.src, r.pos) ||
		strings.HasPrefix(after, "=") && !strings.HasPrefix(after, "==") && !strings.HasPrefix(after, "=>")
}

// valueBelow tells a value that begins on a line below that of its name, and
// goes to it.
func (r *reader) valueBelow(i int) bool {
	if r.items[i].bad {
		return false
	}
	pos, comments := r.pos, len(r.comments)
	r.gap()
	if c := r.peek(0); c == '"' || c == '[' || c == '(' || c == '-' || digit(c) {
		at, _ := r.sign(r.pos)
		r.fault(i, at, "a value begins on the line of its name", "")
		return true
	}
	r.pos, r.comments = pos, r.comments[:comments]
	return false
}

// valueAt is the place of an item's value.
func (r *reader) valueAt(it *item) text.Span {
	written := strings.TrimLeft(r.src[it.inner:max(it.inner, it.at.End)], " \t\r\n")
	return span(int(it.at.End)-len(written), int(it.at.End))
}
