package hclread

import (
	"fmt"
	"strings"

	"wheelwork/spec/near"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// scope is the named values of all files of a design.
type scope struct {
	names    map[string]*entry
	order    []string // of the text
	chain    []string // being resolved
	file     *text.File
	copied   int
	sought   int
	problems []text.Problem
}

// entry is one named value.
type entry struct {
	file  *text.File
	key   text.Span
	expr  *expr
	state state
	value syntax.Value
	size  int // values within it
}

type state uint8

const (
	unresolved state = iota
	resolving
	resolved
)

// newScope collects the named values. The first of a doubled name holds.
func newScope(sources []*Source) *scope {
	s := &scope{names: map[string]*entry{}}
	for _, source := range sources {
		s.file = source.file
		for _, b := range source.given {
			for i, e := range b.expressions() {
				s.add(b.Attrs[i].Name, &entry{file: source.file, key: b.Attrs[i].Key, expr: e})
			}
		}
	}
	return s
}

func (s *scope) add(name string, e *entry) {
	if first := s.names[name]; first != nil {
		p := s.at(e.key, "given."+short(name)+" is given twice")
		p.Related = []text.Related{{Place: first.place(), Message: "first here"}}
		s.tell(p)
		return
	}
	s.names[name] = e
	s.order = append(s.order, name)
}

func (e *entry) place() text.Place { return text.Place{File: e.file, Span: e.key} }

func (s *scope) at(span text.Span, message string) text.Problem {
	return text.Problem{Place: text.Place{File: s.file, Span: span}, Message: message}
}

func (s *scope) tell(p text.Problem) {
	if len(s.problems) < MaxProblems {
		s.problems = append(s.problems, p)
	}
}

func (s *scope) givenHere(name string) []text.Related {
	return []text.Related{{Place: s.names[name].place(), Message: "given here"}}
}

// resolve evaluates a named value once.
func (s *scope) resolve(name string) *entry {
	e := s.names[name]
	if e.state != unresolved {
		return e
	}
	e.state = resolving
	file := s.file
	s.file = e.file
	s.chain = append(s.chain, name)
	v := s.value(e.expr)
	s.chain = s.chain[:len(s.chain)-1]
	s.file = file
	// A circle found within has settled it already.
	if e.state == resolving {
		e.state, e.value, e.size = resolved, v, size(v)
	}
	return e
}

// reference is the named value that e refers to. Its parts have their place
// where it is named.
func (s *scope) reference(e *expr) syntax.Value {
	target := s.names[e.name]
	if target == nil {
		p := s.at(e.at, "there is no given."+short(e.name))
		p.Hint = s.near(e.name)
		s.tell(p)
		return syntax.Value{}
	}
	if target.state == resolving {
		s.circle(e)
		return syntax.Value{}
	}
	if target.state == unresolved && len(s.chain) >= MaxChain {
		s.tell(s.at(e.at, fmt.Sprintf("more than %d named values in a chain", MaxChain)))
		return syntax.Value{}
	}
	s.resolve(e.name)
	if target.value.Kind == syntax.List {
		if s.copied += target.size; s.copied > MaxCopied {
			p := s.at(e.at, fmt.Sprintf("named lists grow to more than %d values", MaxCopied))
			p.Related = s.givenHere(e.name)
			s.tell(p)
			return syntax.Value{}
		}
	}
	return moved(target.value, e.at)
}

// circle tells named values that stand on themselves, and settles them.
func (s *scope) circle(e *expr) {
	from := len(s.chain) - 1
	for s.chain[from] != e.name {
		from--
	}
	p := s.at(e.at, "")
	var path []string
	for i, name := range s.chain[from:] {
		member := s.names[name]
		member.state, member.value = resolved, syntax.Value{}
		if i < 8 {
			path = append(path, short(name))
			p.Related = append(p.Related, text.Related{Place: member.place(), Message: "given here"})
		}
	}
	if len(path) < len(s.chain)-from {
		path = append(path, "...")
	}
	p.Message = "named values in a circle: " + strings.Join(append(path, short(e.name)), " → ")
	s.tell(p)
}

// The bounds of the search for what was meant.
const (
	maxSought     = 32
	maxCandidates = 2000
)

// near offers the name that was probably meant.
func (s *scope) near(name string) string {
	if head, _, dashed := strings.Cut(name, "-"); dashed && s.names[head] != nil {
		return "blanks belong round the sign: given." + short(head) + " - ..."
	}
	if s.sought++; s.sought > maxSought {
		return ""
	}
	best := near.Word(name, s.order[:min(len(s.order), maxCandidates)])
	if best == "" {
		return ""
	}
	return "did you mean given." + best + "?"
}

// moved is the value with its place, and those of its parts, at the span.
func moved(v syntax.Value, at text.Span) syntax.Value {
	v.At, v.Derived = at, true
	if v.Kind == syntax.List {
		list := make([]syntax.Value, len(v.List))
		for i, x := range v.List {
			list[i] = moved(x, at)
		}
		v.List = list
	}
	return v
}

// size is how many values a value holds, itself among them.
func size(v syntax.Value) int {
	n := 1
	for _, x := range v.List {
		n += size(x)
	}
	return n
}
