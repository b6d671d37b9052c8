// Package text holds the bytes of spec files and the places in them. A place
// is a file and a byte range; lines and columns are made only at the edge, by
// File.Position and File.UTF16.
package text

import (
	"bytes"
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
	lines []int // byte offset at which the text of each line starts
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
// in Unicode code points. A byte order mark counts as nothing.
type Position struct{ Line, Column int }

// Position says where the byte offset stands. An offset past the end counts
// as the end, one on a line end as the end of the line.
func (f *File) Position(offset int32) Position {
	line, rest := f.line(offset)
	return Position{Line: line + 1, Column: utf8.RuneCount(rest) + 1}
}

// UTF16 says where the byte offset stands as editors count it: line and
// column from 0, the column in UTF-16 code units.
func (f *File) UTF16(offset int32) (line, column int) {
	line, rest := f.line(offset)
	for len(rest) > 0 {
		size, units := next(rest)
		column += units
		rest = rest[size:]
	}
	return line, column
}

// Offset is the byte offset of a place as editors count it. A column past the
// end of its line counts as the end, one within a character as its start.
func (f *File) Offset(line, column int) int32 {
	f.index()
	switch {
	case line < 0:
		return 0
	case line >= len(f.lines):
		return int32(len(f.Bytes))
	}
	at, end := f.bounds(line)
	for at < end {
		size, units := next(f.Bytes[at:end])
		if column -= units; column < 0 {
			break
		}
		at += size
	}
	return int32(at)
}

// next is the length of the first character in bytes and in UTF-16 code units.
func next(b []byte) (size, units int) {
	if b[0] < utf8.RuneSelf {
		return 1, 1
	}
	r, size := utf8.DecodeRune(b)
	if r >= 0x10000 {
		return size, 2
	}
	return size, 1
}

// Lines is how many lines the file has; the last may be empty.
func (f *File) Lines() int {
	f.index()
	return len(f.lines)
}

// Line is the text of a line counted from 1, without its line end.
func (f *File) Line(n int) string {
	f.index()
	if n < 1 || n > len(f.lines) {
		return ""
	}
	start, end := f.bounds(n - 1)
	return string(f.Bytes[start:end])
}

// LineStart is the byte offset at which the text of the line, counted from 1,
// starts: of the first behind a byte order mark.
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

// bounds are the offsets between which the text of a line, from 0, stands.
func (f *File) bounds(line int) (start, end int) {
	start, end = f.lines[line], len(f.Bytes)
	if line+1 < len(f.lines) {
		end = f.lines[line+1] - 1
	}
	if end > start && f.Bytes[end-1] == '\r' {
		end--
	}
	return start, end
}

// line finds the line, from 0, of an offset and the text of that line before it.
func (f *File) line(offset int32) (int, []byte) {
	f.index()
	at := max(int(offset), f.lines[0])
	n := sort.SearchInts(f.lines, at+1) - 1
	start, end := f.bounds(n)
	return n, f.Bytes[start:min(at, end)]
}

var byteOrderMark = []byte("\xef\xbb\xbf")

func (f *File) index() {
	f.once.Do(func() {
		at := 0
		if bytes.HasPrefix(f.Bytes, byteOrderMark) {
			at = len(byteOrderMark)
		}
		f.lines = append(make([]int, 0, bytes.Count(f.Bytes, []byte{'\n'})+1), at)
		for {
			n := bytes.IndexByte(f.Bytes[at:], '\n')
			if n < 0 {
				return
			}
			at += n + 1
			f.lines = append(f.lines, at)
		}
	})
}
