package tomlread

import (
	"fmt"
	"unicode/utf8"

	"wheelwork/spec/text"
)

var tooDeep = fmt.Sprintf("nested deeper than %d", MaxDepth)

// problem reports a problem of the statement at hand.
func (r *reader) problem(at text.Span, message, hint string, related ...text.Related) {
	r.faulty = true
	r.tell(text.Problem{Place: r.place(at), Message: message, Hint: hint, Related: related})
}

// tell reports a problem, if there are not too many already. Each table of a
// list has that of the list, which is told once.
func (r *reader) tell(p text.Problem) {
	n := len(r.problems)
	p.Span = clip(r.src, p.Span)
	if n < MaxProblems && (n == 0 || r.problems[n-1].Span != p.Span || r.problems[n-1].Message != p.Message) {
		r.problems = append(r.problems, p)
	}
}

func (r *reader) place(s text.Span) text.Place { return text.Place{File: r.file, Span: s} }

// finish puts the problems in order, with those that the decoder found, and
// leaves out those of lines that are no text.
func (r *reader) finish(faults []text.Problem) {
	found := append(r.problems, faults...)
	text.SortProblems(found)
	r.problems = r.encodings
	unread := r.unread
	for _, p := range found {
		for len(unread) > 0 && unread[0].End <= p.Start {
			unread = unread[1:]
		}
		if len(unread) == 0 || p.Start < unread[0].Start {
			r.tell(p)
		}
	}
	if len(r.encodings) > 0 {
		text.SortProblems(r.problems)
	}
}

// short keeps a name short whatever the text, and shorten a message.
func short(name string) string      { return cut(name, 40) }
func shorten(message string) string { return cut(message, 160) }

func cut(s string, most int) string {
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most]) + "…"
}

// clip keeps places short: what is too long to be read is too long to be shown.
func clip(src string, s text.Span) text.Span {
	const most = 200
	if s.Len() > most {
		s.End = s.Start + most
		for s.End > s.Start+1 && !utf8.RuneStart(src[s.End]) {
			s.End--
		}
	}
	return s
}
