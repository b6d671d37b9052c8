package spec

import (
	"fmt"
	"iter"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"wheelwork/spec/near"
	"wheelwork/spec/text"
)

const (
	// MostProblems bounds the problems told of one design.
	MostProblems = 200
	// mostCompared bounds the names that are gone through in search of those
	// that were meant: past it no more are offered.
	mostCompared = 400_000
)

// telling gathers what is wrong with a design.
type telling struct {
	list     []text.Problem
	more     bool // there was more than is in the list
	compared int
}

// tell adds a problem and returns it, for places that belong to it to be
// added. Once there are enough it does nothing.
func (t *telling) tell(at text.Place, hint, format string, args ...any) *text.Problem {
	if t.full() {
		t.more = true
		return new(text.Problem)
	}
	t.list = append(t.list, text.Problem{Place: at, Message: fmt.Sprintf(format, args...), Hint: hint})
	return &t.list[len(t.list)-1]
}

func (t *telling) full() bool { return len(t.list) >= MostProblems }

// told is all problems in the order of the text.
func (t *telling) told() []text.Problem {
	text.SortProblems(t.list)
	if len(t.list) > MostProblems {
		t.list, t.more = t.list[:MostProblems], true
	}
	for i := range t.list {
		p := &t.list[i]
		p.Message, p.Hint = printable(p.Message), printable(p.Hint)
	}
	if t.more {
		last := t.list[len(t.list)-1].Place
		t.list = append(t.list, text.Problem{Place: last, Message: fmt.Sprintf("more is wrong; %d problems at most are told at once", MostProblems)})
	}
	return t.list
}

// printable keeps text that is shown from breaking a line or steering a terminal.
func printable(s string) string {
	odd := func(u rune) bool { return !unicode.IsPrint(u) }
	if strings.IndexFunc(s, odd) < 0 {
		return s
	}
	return strings.Map(func(u rune) rune {
		if odd(u) {
			return utf8.RuneError
		}
		return u
	}, s)
}

// near offers the candidate that was most likely meant, "" if none was.
func (t *telling) near(word string, candidates iter.Seq[string]) string {
	if t.full() || t.compared >= mostCompared {
		return ""
	}
	return offer(near.Among(word, candidates, &t.compared))
}

// nearOf is near for a short list.
func (t *telling) nearOf(word string, candidates []string) string {
	return t.near(word, slices.Values(candidates))
}

// Nearest returns the candidate that a person most likely meant, "" if none is near.
func Nearest(word string, candidates []string) string { return near.Word(word, candidates) }

func offer(name string) string {
	if name == "" {
		return ""
	}
	return "did you mean " + strconv.Quote(name) + "?"
}

// see is one place that belongs to a problem.
func see(at text.Place, message string) []text.Related {
	return []text.Related{{Place: at, Message: message}}
}

// clip keeps messages short whatever the text.
func clip(s string) string {
	n := 0
	for i := range s {
		if n++; n > 40 {
			return s[:i] + "…"
		}
	}
	return s
}
