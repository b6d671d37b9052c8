// Package hclread reads spec files in the HCL notation into syntax trees.
//
// The language is the part of HCL that a spec needs: blocks with at most one
// label, attributes, strings, numbers, true and false, lists, and arithmetic
// over the named values of given blocks. Any other construct of HCL is refused
// by its name at its place. What is read reads the same in HCL's reference
// parser, with three things of our own: items of a block may share a line,
// where HCL wants a line for each; numbers are exact; and strings keep the
// Unicode form they are written in, as in TOML.
//
// The reader goes over the text once, by itself rather than through the
// reference parser. That parser reads one or two megabytes a second, recurses
// until the process dies on nested text, tells nothing past an unclosed
// bracket and has no exact numbers; an editor that reads at every keystroke
// can have none of that. The tests hold the two against each other.
package hclread

import (
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// The bounds of what is read; text beyond them is refused at its place.
const (
	// MaxBytes bounds a file.
	MaxBytes = 32 << 20
	// MaxDepth bounds how deep blocks and brackets nest.
	MaxDepth = 64
	// MaxOperators bounds the arithmetic signs in one value.
	MaxOperators = 200
	// MaxProblems bounds the problems told of one file.
	MaxProblems = 200
)

// Source is a file that was parsed but whose expressions are not evaluated
// yet, because named values are shared by all files of a design. It is not
// changed once parsed, and may be evaluated any number of times, also at once.
type Source struct {
	file     *text.File
	blocks   []*block
	given    []*block // no part of the tree
	uses     []syntax.Value
	comments []text.Span
}

// block is a block as written. Attributes whose value is an expression are
// Invalid in it until they are evaluated.
type block struct {
	syntax.Block
	open   []open
	within []*block
	deep   bool // it, or a block within, has open attributes
}

// open is an attribute whose value is an expression.
type open struct {
	index int // in Attrs
	expr  *expr
}

// Parse reads a file. The source is never nil: what could be read around the
// problems is in it. It takes time in proportion to the file.
func Parse(f *text.File) (*Source, []text.Problem) {
	r := &reader{file: f, source: &Source{file: f}}
	if len(f.Bytes) > MaxBytes {
		r.tellAt(text.Span{}, "the file is larger than 32 MB", "")
		return r.source, r.problems
	}
	if !r.encoding() {
		return r.source, r.problems
	}
	top := &block{}
	r.body(top)
	r.source.blocks = top.within
	r.source.comments = r.comments
	if len(top.within) == 0 && len(r.source.given) == 0 && len(r.problems) == 0 && len(r.comments) == 0 {
		r.tellAt(text.Span{}, "the file is empty", "a spec holds blocks, such as design { title = \"...\" }")
	}
	text.SortProblems(r.problems)
	return r.source, r.problems
}

// File is the file that was parsed.
func (s *Source) File() *text.File { return s.file }

// Uses are the strings of the design block's uses, each with its place. Only
// plain strings count: further files are found before named values are known.
func (s *Source) Uses() []syntax.Value { return s.uses }

// Comments are the places of all comments outside values that were refused,
// from their # or // to the end of the line, or from /* to */.
func (s *Source) Comments() []text.Span { return s.comments }

// noteUses keeps what a design block's uses lists.
func (r *reader) noteUses(b *block) {
	for i, e := range b.expressions() {
		if b.Attrs[i].Name != "uses" {
			continue
		}
		list := []*expr{e}
		if e.op == listing {
			list = e.list
		}
		for _, x := range list {
			switch {
			case x.op != literal:
				r.tellAt(x.at, "uses takes plain strings", "further files are found before named values are known")
			case x.value.Kind == syntax.List:
				r.source.uses = appendStrings(r.source.uses, x.value.List)
			default:
				r.source.uses = appendStrings(r.source.uses, []syntax.Value{x.value})
			}
		}
	}
}

func appendStrings(to, list []syntax.Value) []syntax.Value {
	for _, v := range list {
		if v.Kind == syntax.String && v.Text != "" {
			to = append(to, v)
		}
	}
	return to
}
