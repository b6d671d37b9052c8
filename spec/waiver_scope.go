package spec

import (
	"bytes"
	"sort"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// scopes finds what the comments of a file stand beside or above.
type scopes struct {
	file     *text.File
	blocks   []*syntax.Block
	comments []text.Span // in the order of the text
	// next is, by comment, where the first text after it begins that is no comment.
	next []int32
}

func newScopes(f *gathered, comments []text.Span) *scopes {
	s := &scopes{file: f.file, blocks: f.tree.Blocks, comments: comments, next: make([]int32, len(comments))}
	b := f.file.Bytes
	for i := len(comments) - 1; i >= 0; i-- {
		after := b[comments[i].End:]
		at := comments[i].End + int32(len(after)-len(bytes.TrimLeft(after, " \t\r\n")))
		if i+1 < len(comments) && comments[i+1].Start <= at {
			at = s.next[i+1]
		}
		s.next[i] = at
	}
	return s
}

// of is the scope of a comment: its line if anything else stands on it before
// the comment, else the line of what comes next, with the block or attribute
// that begins there.
func (s *scopes) of(comment int) text.Span {
	c := s.comments[comment]
	n := s.file.Position(c.Start).Line
	before := s.file.Bytes[s.file.LineStart(n):c.Start]
	if only := bytes.TrimLeft(before, " \t"); len(only) == 0 || s.isComment(c.Start-int32(len(only)), c.Start) {
		n = s.file.Position(s.next[comment]).Line
	}
	line := text.Span{Start: s.file.LineStart(n), End: s.file.LineStart(n + 1)}
	return widen(line, s.blocks)
}

// isComment reports whether a comment begins at start and none but blanks and
// comments follow up to end.
func (s *scopes) isComment(start, end int32) bool {
	i := sort.Search(len(s.comments), func(i int) bool { return s.comments[i].Start >= start })
	return i < len(s.comments) && s.comments[i].Start == start && s.next[i] >= end
}

// widen makes a line on which blocks or attributes begin into the whole of them.
func widen(line text.Span, blocks []*syntax.Block) text.Span {
	first := sort.Search(len(blocks), func(i int) bool { return blocks[i].At.Start >= line.Start })
	wide := line
	for _, b := range blocks[first:] {
		if b.At.Start >= line.End {
			break
		}
		wide = wide.Join(b.At)
	}
	if wide == line && first > 0 && blocks[first-1].At.End > line.Start {
		return widenIn(line, blocks[first-1])
	}
	return wide
}

func widenIn(line text.Span, b *syntax.Block) text.Span {
	for i := range b.Attrs {
		if a := &b.Attrs[i]; line.Start <= a.Key.Start && a.Key.Start < line.End {
			line = line.Join(a.Value.At)
		}
	}
	return widen(line, b.Blocks)
}
