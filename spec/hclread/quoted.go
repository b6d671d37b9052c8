package hclread

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"wheelwork/spec/text"
)

// quoted goes past the string that begins here, to the end of its line at the
// latest, and reports whether it is one. Templates are no part of the
// language; hclsyntax would recurse on them.
func (r *reader) quoted(i int, what string) bool {
	start := r.pos
	escaped := start // the last byte that cannot begin an escape
	for at := start + 1; at < len(r.src); at++ {
		switch c := r.src[at]; c {
		case '"':
			r.pos = at + 1
			return true
		case '\n':
			return r.unterminated(i, start, what)
		case '\\':
			size, ok := escape(r.src[at:])
			if !ok {
				r.fault(i, span(at, at+size), short(r.src[at:at+size])+" is no escape", `there are \n \r \t \" \\ \uXXXX \UXXXXXXXX`)
			}
			at += size - 1
			escaped = at
		case '$', '%':
			if at+1 == len(r.src) || r.src[at+1] != '{' {
				continue
			}
			if r.src[at-1] == c && at-1 > escaped {
				continue // $${ stands for ${
			}
			r.refuse(i, span(at, at+2), "a template",
				fmt.Sprintf("a named value stands without quotes; %c{ itself is written %c%c{", c, c, c))
			r.skipString()
			return false
		}
	}
	return r.unterminated(i, start, what)
}

// escape is the length of the escape at the start of s, and whether it is one.
func escape(s string) (size int, ok bool) {
	digits := 0
	switch {
	case len(s) < 2 || s[1] == '\n' || s[1] == '\r':
		return 1, true // the string is not closed on its line
	case s[1] == 'u':
		digits = 4
	case s[1] == 'U':
		digits = 8
	default:
		_, size := utf8.DecodeRuneInString(s[1:])
		return 1 + size, strings.IndexByte(`nrt"\`, s[1]) >= 0
	}
	for size = 2; size < 2+digits && size < len(s) && strings.IndexByte("0123456789abcdefABCDEF", s[size]) >= 0; {
		size++
	}
	u, err := strconv.ParseUint(s[2:size], 16, 32)
	return size, err == nil && size == 2+digits && utf8.ValidRune(rune(u))
}

// unterminated tells a string that does not end on its line, and goes past it:
// to the end of the line, or where the next line closes it, to there.
func (r *reader) unterminated(i, start int, what string) bool {
	r.pos = r.lineEndFrom(start)
	at := span(start, r.pos)
	next := min(len(r.src), r.pos+1)
	line := r.src[next:r.lineEndFrom(next)]
	if n := strings.IndexByte(line, '"'); n >= 0 && strings.Count(line, `"`)%2 == 1 && !strings.Contains(line[:n], "=") {
		r.fault(i, at, what+" goes on over the end of its line", `a line end within is written \n`)
		r.pos = next + n + 1
		return false
	}
	r.fault(i, at, what+" is not closed on its line", `a " is missing`)
	return false
}

// skipString goes past a string that holds templates with strings in them. It
// ends with its line at the latest.
func (r *reader) skipString() {
	var modes [2 * MaxDepth]byte // what is open: " a string, $ a template, { a brace
	n := 0
	for !r.lineEnd(r.pos) {
		c := r.peek(0)
		inString := n > 0 && modes[n-1] == '"'
		var push byte
		switch {
		case inString && c == '"', !inString && c == '}':
			n--
		case inString && c == '\\' && !r.lineEnd(r.pos+1):
			r.pos++
		case inString && (r.has("$${") || r.has("%%{")):
			r.pos += 2
		case inString && (r.has("${") || r.has("%{")):
			r.pos++
			push = '$'
		case !inString && (c == '"' || c == '{'):
			push = c
		}
		r.pos++
		if push != 0 {
			if n == len(modes) {
				r.pos = r.lineEndFrom(r.pos)
				return
			}
			modes[n] = push
			n++
		}
		if n == 0 {
			return
		}
	}
}

// heredoc refuses the heredoc that begins here, with which hclsyntax reads on
// in another mode, and goes past it.
func (r *reader) heredoc(i int) {
	line := r.lineEndFrom(r.pos)
	r.refuse(i, span(r.pos, line), "a heredoc", "a string stands in quotes on one line")
	at := r.pos + 2
	if at < len(r.src) && r.src[at] == '-' {
		at++
	}
	end := wordEnd(r.src, at)
	marker := r.src[at:end]
	if marker == "" || end != line {
		r.pos += 2
		return
	}
	r.pos = line
	for at := line; at < len(r.src); {
		at += strings.IndexByte(r.src[at:], '\n') + 1
		next := r.lineEndFrom(at)
		if r.lookahead -= next - at + 1; r.lookahead < 0 {
			return
		}
		if strings.TrimSpace(r.src[at:next]) == marker {
			r.pos = next
			return
		}
		at = next
	}
}

// refuse tells that a construct of HCL is no part of the language.
func (r *reader) refuse(i int, at text.Span, what, hint string) {
	r.fault(i, at, foreign(what), hint)
}
