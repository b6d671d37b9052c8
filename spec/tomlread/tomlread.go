// Package tomlread reads TOML spec files into the trees of package syntax.
//
// Two libraries read the text. The parser of go-toml gives the place of every
// key and value in one fast pass, from which the tree is built; what it leaves
// open, such as whether a date exists or a number is in range, is judged by
// BurntSushi/toml, which decodes the same statements meanwhile. A file is
// valid only if both say so.
package tomlread

import (
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// Form says how blocks of a kind are written.
type Form uint8

// The forms.
const (
	Unknown  Form = iota // no such kind
	Single               // [design]
	Labelled             // [wheel.fixed]
	Repeated             // [[mesh]]
	Grouped              // [bounds.hunting-tooth]: one block with blocks inside
)

// The bounds of what is read; text beyond them is refused at its place.
const (
	// MaxBytes bounds a file.
	MaxBytes = 32 << 20
	// MaxDepth bounds how deep tables and lists nest; each part of a header
	// or of a key before the last is a table.
	MaxDepth = 16
	// MaxName bounds the bytes of the name of a table, all its parts together.
	MaxName = 256
	// MaxProblems bounds the problems told of one file.
	MaxProblems = 200

	maxBroken = 20 // syntax errors after which reading stops
)

// Parse reads a file. The tree holds all that could be read, also if there are
// problems; of a block that is written in the wrong way it may hold nothing.
// The problems are in the order of the text.
//
// form tells how the blocks of a kind are written. Blocks of an unknown kind
// are passed on as written, for the caller to report.
func Parse(f *text.File, form func(kind string) Form) (*syntax.Tree, []text.Problem) {
	return new(Reader).Parse(f, form)
}

// reader reads one file.
type reader struct {
	file    *text.File
	bytes   []byte // the text, without what is none
	src     string // the same; names and values are parts of it
	form    func(kind string) Form
	parser  unstable.Parser
	base    int32 // where in the text the parser's data starts
	checker checker

	tree      *syntax.Tree
	problems  []text.Problem
	faulty    bool           // the statement at hand has a problem
	encodings []text.Problem // bytes that are no text
	unread    []text.Span    // their lines

	root    table
	here    *table // the table that the last header opened
	section int32  // number of that header
	store   store
}

// read takes in all statements and says where the last one ends.
func (r *reader) read() int32 {
	end := int32(0) // of the statement before
	if strings.HasPrefix(r.src, byteOrderMark) {
		end = int32(len(byteOrderMark))
	}
	r.root.role, r.here = rootRole, &r.root
	r.checker.from = end
	r.checker.starts = make([]int32, 0, min(strings.Count(r.src, "\n"), len(r.src)/8)+1)
	r.store.entries = make([]entry, 0, strings.Count(r.src, "\n[")+8)
	r.restart(end)
	for broken := 1; ; {
		if r.parser.NextExpression() {
			end = r.statement(r.parser.Expression())
			continue
		}
		err := r.parser.Error()
		if err == nil {
			r.nameless()
			return int32(len(r.src))
		}
		end = r.broken(err, end)
		if broken++; broken > maxBroken {
			return end
		}
		r.restart(end)
	}
}

func (r *reader) restart(at int32) {
	r.parser.Reset(r.bytes[at:])
	r.base = at
}

// statement takes in a header or a key with its value, and says where it ends.
func (r *reader) statement(n *unstable.Node) int32 {
	r.faulty = false
	var whole text.Span
	switch n.Kind {
	case unstable.KeyValue:
		whole = r.span(n.Raw)
		r.checker.begin(whole.Start)
		r.keyValue(r.here, n)
	case unstable.Table, unstable.ArrayTable:
		whole = r.headerSpan(n)
		r.checker.begin(whole.Start)
		r.header(n, whole)
	}
	if r.faulty {
		r.checker.fault()
	}
	return whole.End
}

// lineEnd is the offset of the line feed at or after an offset, or the end.
func (r *reader) lineEnd(at int32) int32 {
	for int(at) < len(r.src) && r.src[at] != '\n' {
		at++
	}
	return at
}

// skip goes past blanks, line ends and comments, and past commas if asked.
func (r *reader) skip(at int32, commas bool) int32 {
	for int(at) < len(r.src) {
		switch r.src[at] {
		case ' ', '\t', '\r', '\n':
			at++
		case ',':
			if !commas {
				return at
			}
			at++
		case '#':
			at = r.lineEnd(at)
		default:
			return at
		}
	}
	return at
}

// headerSpan is `[a.b]` with its brackets, of which the parser keeps only the keys.
func (r *reader) headerSpan(n *unstable.Node) text.Span {
	first := n.Child()
	last := first
	for last.Next() != nil {
		last = last.Next()
	}
	s := text.Span{Start: r.span(first.Raw).Start, End: r.span(last.Raw).End}
	brackets := int32(1)
	if n.Kind == unstable.ArrayTable {
		brackets = 2
	}
	for s.Start--; r.src[s.Start] != '['; s.Start-- {
	}
	for ; r.src[s.End] != ']'; s.End++ {
	}
	return text.Span{Start: s.Start - brackets + 1, End: s.End + brackets}
}

func (r *reader) span(raw unstable.Range) text.Span {
	start := r.base + int32(raw.Offset)
	return text.Span{Start: start, End: start + int32(raw.Length)}
}
