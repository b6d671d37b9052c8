// Package tomlread reads TOML spec files into the trees of package syntax.
//
// Two libraries read the text. The parser of go-toml gives the place of every
// key and value in one fast pass, from which the tree is built; what it leaves
// open, such as whether a date exists or a number is in range, is judged by
// BurntSushi/toml, which decodes the same statements meanwhile. A file is
// valid only if both say so.
package tomlread

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

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

// Bounds of a file. They are far beyond any design, and keep the time and the
// memory that reading takes in proportion to the length of the file.
const (
	MaxBytes = 32 << 20 // length of a file
	MaxDepth = 16       // parts of a key and the tables and lists around it, together
	MaxName  = 128      // bytes in one part of a key

	maxSyntax = 20 // syntax errors after which reading stops
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
	src     string // the text; names and values are parts of it
	form    func(kind string) Form
	parser  unstable.Parser
	base    int32 // where in the text the parser's data starts
	checker checker

	tree     *syntax.Tree
	problems []text.Problem
	faulty   bool // the statement at hand has a problem

	root    table
	here    *table // the table that the last header opened
	section int32  // number of the header or inline table at hand
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
		from := r.skip(end, false)
		r.checker.begin(from)
		r.checker.fault()
		end = r.broken(err, from)
		if broken++; broken > maxSyntax {
			return end
		}
		r.restart(end)
	}
}

const byteOrderMark = "\xef\xbb\xbf"

// sound reports whether the bytes are text of a bearable length.
func (r *reader) sound() bool {
	b := r.file.Bytes
	if len(b) > MaxBytes {
		r.problem(text.Span{}, fmt.Sprintf("a file of more than %d MB", MaxBytes>>20), "")
		return false
	}
	if !utf8.Valid(b) {
		i := 0
		for c, size := utf8.DecodeRune(b); c != utf8.RuneError || size > 1; c, size = utf8.DecodeRune(b[i:]) {
			i += size
		}
		r.problem(text.Span{Start: int32(i), End: int32(i + 1)}, fmt.Sprintf("byte 0x%02x is not UTF-8", b[i]), "save the file as UTF-8")
		return false
	}
	if i := bytes.IndexByte(b, 0); i >= 0 {
		r.problem(text.Span{Start: int32(i), End: int32(i + 1)}, "a NUL byte", "save the file as UTF-8 text")
		return false
	}
	return true
}

func (r *reader) restart(at int32) {
	r.parser.Reset(r.file.Bytes[at:])
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
		r.keyValue(r.here, r.section, n)
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

// broken reports a syntax error in the statement at from and says where
// reading can go on, which is the length of the text if nowhere.
func (r *reader) broken(err error, from int32) int32 {
	end := int32(len(r.src))
	at := text.Span{Start: end, End: end}
	message := err.Error()
	var p *unstable.ParserError
	if errors.As(err, &p) {
		at = r.span(r.parser.Range(p.Highlight))
	}
	if at.Len() == 0 && at.End < end {
		at.End++
	}
	problem := text.Problem{Place: r.place(at), Message: message}
	atEnd := at.End == end
	if line := r.lineEnd(from); atEnd && line < at.Start {
		problem.Related = []text.Related{{
			Place:   r.place(text.Span{Start: from, End: line}),
			Message: "in what starts here",
		}}
	}
	r.problems = append(r.problems, problem)
	if from < end && r.src[from] == '[' {
		r.here = r.lost() // which table what follows belongs to is not known
	}
	// What was not closed reaches to the end, or into a line that starts anew.
	next := r.lineEnd(from) + 1
	if !atEnd {
		next = max(next, int32(strings.LastIndexByte(r.src[:at.Start], '\n')+1))
	}
	for ; next < end; next = r.lineEnd(next) + 1 {
		if startsAnew(r.src[next:r.lineEnd(next)]) {
			return next
		}
	}
	return end
}

// startsAnew reports whether a line looks like a header or a key with its
// value, not indented.
func startsAnew(line string) bool {
	rest := strings.TrimPrefix(strings.TrimPrefix(line, "["), "[")
	name := strings.TrimLeft(rest, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-.")
	if len(name) == len(rest) {
		return false
	}
	if len(rest) < len(line) {
		return strings.HasPrefix(name, "]")
	}
	return strings.HasPrefix(strings.TrimLeft(name, " \t"), "=")
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

func (r *reader) place(s text.Span) text.Place { return text.Place{File: r.file, Span: s} }

// problem reports a problem of the statement at hand.
func (r *reader) problem(at text.Span, message, hint string, related ...text.Related) {
	r.faulty = true
	r.problems = append(r.problems, text.Problem{Place: r.place(at), Message: message, Hint: hint, Related: related})
}
