// Package text holds the bytes of spec files and the places in them. A place
// is a file and a byte range; lines and columns are made only at the edge, by
// File.Position and File.UTF16.
package text

import (
	"sort"
	"sync"
	"unicode/utf8"
)

// File is one spec file as it was read.
type File struct {
	// Name is how people are told of the file: the path as given on the
	// command line, or relative to the repository root.
	Name  string
	Bytes []byte

	once  sync.Once
	lines []int // byte offset at which each line starts
}

// NewFile returns a file of the given name and content.
func NewFile(name string, content []byte) *File {
	return &File{Name: name, Bytes: content}
}

// Span is a byte range [Start, End) within one file.
type Span struct{ Start, End int32 }

// Len is the number of bytes the span covers.
func (s Span) Len() int { return int(s.End - s.Start) }

// Covers reports whether t lies within s.
func (s Span) Covers(t Span) bool { return s.Start <= t.Start && t.End <= s.End }

// Join is the smallest span that covers both.
func (s Span) Join(t Span) Span {
	return Span{Start: min(s.Start, t.Start), End: max(s.End, t.End)}
}

// Place is a byte range in a named file. The zero Place is nowhere.
type Place struct {
	File *File
	Span
}

// Known reports whether the place is somewhere.
func (p Place) Known() bool { return p.File != nil }

// Text is the source text the place covers.
func (p Place) Text() string {
	if p.File == nil {
		return ""
	}
	return string(p.File.Bytes[p.Start:p.End])
}

// Position is a place as people count it: line and column from 1, the column
// in Unicode code points.
type Position struct{ Line, Column int }

// Position says where the byte offset stands. An offset past the end counts
// as the end.
func (f *File) Position(offset int32) Position {
	line, rest := f.line(offset)
	return Position{Line: line + 1, Column: utf8.RuneCount(rest) + 1}
}

// UTF16 says where the byte offset stands as editors count it: line and
// column from 0, the column in UTF-16 code units.
func (f *File) UTF16(offset int32) (line, column int) {
	line, rest := f.line(offset)
	for len(rest) > 0 {
		r, size := utf8.DecodeRune(rest)
		if r >= 0x10000 {
			column++
		}
		column++
		rest = rest[size:]
	}
	return line, column
}

// Line is the text of a line counted from 1, without its line end.
func (f *File) Line(n int) string {
	f.index()
	if n < 1 || n > len(f.lines) {
		return ""
	}
	start, end := f.lines[n-1], len(f.Bytes)
	if n < len(f.lines) {
		end = f.lines[n] - 1
	}
	if end > start && f.Bytes[end-1] == '\r' {
		end--
	}
	return string(f.Bytes[start:end])
}

// LineStart is the byte offset at which the line, counted from 1, starts.
func (f *File) LineStart(n int) int32 {
	f.index()
	switch {
	case n < 1:
		return 0
	case n > len(f.lines):
		return int32(len(f.Bytes))
	}
	return int32(f.lines[n-1])
}

// line finds the line, from 0, of an offset and the bytes of that line before it.
func (f *File) line(offset int32) (int, []byte) {
	f.index()
	at := min(max(int(offset), 0), len(f.Bytes))
	n := sort.SearchInts(f.lines, at+1) - 1
	return n, f.Bytes[f.lines[n]:at]
}

func (f *File) index() {
	f.once.Do(func() {
		f.lines = append(make([]int, 0, len(f.Bytes)/32+1), 0)
		for i, c := range f.Bytes {
			if c == '\n' {
				f.lines = append(f.lines, i+1)
			}
		}
	})
}
