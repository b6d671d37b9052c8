// Package hclread reads spec files in the HCL notation into syntax trees.
//
// The language is the part of HCL that a spec needs: blocks with at most one
// label, attributes, strings, numbers, true and false, lists, and arithmetic
// over the named values of given blocks. Any other construct of HCL is refused
// by its name at its place.
//
// HCL's own parser, hclsyntax, reads the text. Before it one pass goes over
// the bytes (body.go, value.go) and finds where items begin and end. It refuses
// what hclsyntax would recurse on until the process dies, sets items that
// share a line, which HCL wants on lines of their own, apart by line ends that
// take the place of blanks, and resynchronises where brackets do not balance.
// Then whole blocks go to hclsyntax, a few at a time and on all cores
// (parse.go). What it refuses is read again item by item (pieces.go), so that
// a fault hides nothing but itself.
//
// Three things differ from HCL: items of a block may share a line; numbers are
// exact, read from their text; and strings keep the Unicode form they are
// written in, as in TOML.
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
	// MaxOperators bounds the arithmetic signs in one value that is no list, or
	// in one element of a list.
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
	s, problems, _ := parse(f, nil)
	return s, problems
}

// parse is Parse, with blocks that were read before from the same text. It
// returns for each block without a problem its text and what was read.
func parse(f *text.File, before map[string]*block) (*Source, []text.Problem, map[string]*block) {
	r := &reader{file: f, top: -1}
	s := &Source{file: f}
	if len(f.Bytes) > MaxBytes {
		r.tell(text.Span{}, "the file is larger than 32 MB", "")
		return s, r.told(), nil
	}
	if !r.encoding() {
		return s, r.told(), nil
	}
	r.body(-1)
	blocks := r.blocks(before)
	r.quiet = 0
	for _, b := range blocks {
		if b.Kind == "given" {
			s.given = append(s.given, b)
			continue
		}
		if b.Kind == "design" {
			s.uses = append(s.uses, r.uses(b)...)
		}
		s.blocks = append(s.blocks, b)
	}
	s.comments = r.comments
	if len(r.items) == 0 && len(r.problems) == 0 && len(r.comments) == 0 {
		r.tell(text.Span{}, "the file is empty", "a spec holds blocks, such as design { title = \"...\" }")
	}
	return s, r.told(), r.sound
}

// File is the file that was parsed.
func (s *Source) File() *text.File { return s.file }

// Uses are the strings of the design block's uses, each with its place. Only
// plain strings count: further files are found before named values are known.
func (s *Source) Uses() []syntax.Value { return s.uses }

// Comments are the places of all comments, from their # or // to the end of the
// line, or from /* to */.
func (s *Source) Comments() []text.Span { return s.comments }

// uses is what a design block's uses lists.
func (r *reader) uses(b *block) (found []syntax.Value) {
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
				r.problem(x.at, "uses takes plain strings", "further files are found before named values are known")
			case x.value.Kind == syntax.List:
				found = appendStrings(found, x.value.List)
			default:
				found = appendStrings(found, []syntax.Value{x.value})
			}
		}
	}
	return found
}

func appendStrings(to, list []syntax.Value) []syntax.Value {
	for _, v := range list {
		if v.Kind == syntax.String && v.Text != "" {
			to = append(to, v)
		}
	}
	return to
}
