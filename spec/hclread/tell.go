package hclread

import (
	"cmp"
	"fmt"
	"slices"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"wheelwork/spec/text"
)

// notice is a problem. Of those of syntax only the first on a line is shown.
type notice struct {
	text.Problem
	syntax bool
}

// problem tells a fault of syntax: of several on a line, the first.
func (r *reader) problem(at text.Span, message, hint string) {
	r.astray = true
	if int(at.Start) < r.quiet {
		return
	}
	r.quiet = r.lineEndFrom(int(at.Start)) + 1
	r.add(notice{text.Problem{Place: text.Place{File: r.file, Span: at}, Message: message, Hint: hint}, true})
}

// tell tells what is wrong for itself, whatever else is.
func (r *reader) tell(at text.Span, message, hint string) {
	r.add(notice{text.Problem{Place: text.Place{File: r.file, Span: at}, Message: message, Hint: hint}, false})
}

func (r *reader) add(p notice) {
	if r.enough() {
		return
	}
	i := sort.Search(len(r.unread), func(i int) bool { return r.unread[i].End > p.Start })
	if i < len(r.unread) && r.unread[i].Start <= p.Start {
		return
	}
	r.problems = append(r.problems, p)
}

// enough reports whether no more can be told.
func (r *reader) enough() bool { return len(r.problems) >= MaxProblems }

// told is the problems in the order of the text.
func (r *reader) told() []text.Problem {
	slices.SortStableFunc(r.problems, func(a, b notice) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.End, b.End))
	})
	var list []text.Problem
	quiet := -1 // where the line ends on which a fault of syntax was told
	for _, p := range r.problems {
		if p.syntax {
			if int(p.Start) <= quiet {
				continue
			}
			quiet = r.lineEndFrom(int(p.Start))
		}
		list = append(list, p.Problem)
	}
	return list
}

func span(start, end int) text.Span { return text.Span{Start: int32(start), End: int32(end)} }

// of is the text of the place.
func (r *reader) of(at text.Span) string { return r.src[at.Start:at.End] }

// sign is the character at the offset, for messages.
func (r *reader) sign(pos int) (at text.Span, name string) {
	if pos >= len(r.src) {
		return span(pos, pos), "the end of the file"
	}
	if r.lineEnd(pos) {
		return span(pos, pos), "the end of the line"
	}
	if end := wordEnd(r.src, pos); end > pos {
		return span(pos, end), short(r.src[pos:end])
	}
	u, size := utf8.DecodeRuneInString(r.src[pos:])
	at = span(pos, pos+size)
	if !unicode.IsGraphic(u) || unicode.IsSpace(u) {
		return at, fmt.Sprintf("the character U+%04X", u)
	}
	return at, string(u)
}

// lineEnd reports whether a line ends at the offset.
func (r *reader) lineEnd(pos int) bool {
	return pos >= len(r.src) || r.src[pos] == '\n' || strings.HasPrefix(r.src[pos:], "\r\n")
}

// lineEndFrom is where the line of the offset ends, before its \r\n or \n.
func (r *reader) lineEndFrom(at int) int {
	n := strings.IndexByte(r.src[min(at, len(r.src)):], '\n')
	if n < 0 {
		return len(r.src)
	}
	if n > 0 && r.src[at+n-1] == '\r' {
		n--
	}
	return at + n
}

// short keeps text that is shown in messages to a length people read, and from
// steering a terminal.
func short(s string) string {
	n := 0
	for i := range s {
		if n++; n > 40 {
			s = s[:i] + "…"
			break
		}
	}
	return strings.Map(func(u rune) rune {
		if !unicode.IsPrint(u) {
			return utf8.RuneError
		}
		return u
	}, s)
}
