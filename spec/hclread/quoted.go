package hclread

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// quoted reads the string that begins here. If it is not ok its problem is
// told, and the reader stands behind it or at the end of its line.
func (r *reader) quoted(what string) (s string, ok bool) {
	start := r.pos
	for i := start + 1; i < len(r.src); i++ {
		switch r.src[i] {
		case '"':
			r.pos = i + 1
			return r.src[start+1 : i], true
		case '\\', '$', '%':
			return r.escaped(start, i, what)
		case '\n':
			return "", r.unterminated(start, what)
		}
	}
	return "", r.unterminated(start, what)
}

// unterminated tells a string that does not end on its line, and goes past it:
// to the end of the line, or where the next line closes it, to there.
func (r *reader) unterminated(start int, what string) bool {
	r.pos = r.lineEndFrom(start)
	at := r.span(start, r.pos)
	next := min(len(r.src), r.pos+1)
	line := r.src[next:r.lineEndFrom(next)]
	if n := strings.IndexByte(line, '"'); n >= 0 && strings.Count(line, `"`)%2 == 1 && !strings.Contains(line[:n], "=") {
		r.problem(at, what+" goes on over the end of its line", `a line end within is written \n`)
		r.pos = next + n + 1
		return false
	}
	r.problem(at, what+" is not closed on its line", `a " is missing`)
	return false
}

// escaped reads the rest of a string that holds escapes, from the first at i.
func (r *reader) escaped(start, i int, what string) (string, bool) {
	out := []byte(r.src[start+1 : i])
	ok := true
	for i < len(r.src) {
		c := r.src[i]
		rest := r.src[i+1:]
		switch {
		case c == '"':
			r.pos = i + 1
			return string(out), ok
		case c == '\n':
			return "", r.unterminated(start, what)
		case (c == '$' || c == '%') && strings.HasPrefix(rest, string(c)+"{"):
			out = append(out, c, '{')
			i += 3
		case (c == '$' || c == '%') && strings.HasPrefix(rest, "{"):
			r.refuse(i, i+2, "a template", fmt.Sprintf("a named value stands without quotes; %c{ itself is written %c%c{", c, c, c))
			r.pos = start
			r.skipString()
			return "", false
		case c == '\\':
			b, size := escape(r.src[i:])
			if b == nil {
				r.problem(r.span(i, i+size), r.src[i:i+size]+" is no escape", `there are \n \r \t \" \\ \uXXXX \UXXXXXXXX`)
				ok = false
			}
			out = append(out, b...)
			i += size
		default:
			out = append(out, c)
			i++
		}
	}
	return "", r.unterminated(start, what)
}

// escape is the bytes that the escape at the start of s stands for, nil if it
// is none, and its length.
func escape(s string) (b []byte, size int) {
	if len(s) < 2 || s[1] == '\n' || s[1] == '\r' {
		return nil, 1
	}
	digits := 0
	switch s[1] {
	case 'n':
		return []byte{'\n'}, 2
	case 'r':
		return []byte{'\r'}, 2
	case 't':
		return []byte{'\t'}, 2
	case '"', '\\':
		return []byte{s[1]}, 2
	case 'u':
		digits = 4
	case 'U':
		digits = 8
	default:
		_, size := utf8.DecodeRuneInString(s[1:])
		return nil, 1 + size
	}
	n := 0
	for n < digits && 2+n < len(s) && strings.IndexByte("0123456789abcdefABCDEF", s[2+n]) >= 0 {
		n++
	}
	u, err := strconv.ParseUint(s[2:2+n], 16, 32)
	if n < digits || err != nil || utf8.RuneLen(rune(u)) < 0 {
		return nil, 2 + n
	}
	return utf8.AppendRune(nil, rune(u)), 2 + n
}
