// Package lines turns byte offsets into the positions of the Language Server
// Protocol and back. Lines end as the protocol says: with a line feed, a
// carriage return, or both; and every character counts, a byte order mark too.
package lines

import (
	"bytes"
	"sort"
	"unicode/utf8"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// Text is a text that does not change, with the starts of its lines.
type Text struct {
	Bytes  []byte
	starts []int32
}

// New finds the lines of a text.
func New(content []byte) *Text {
	t := &Text{Bytes: content, starts: make([]int32, 1, bytes.Count(content, []byte{'\n'})+1)}
	plain := bytes.IndexByte(content, '\r') < 0
	for at := 0; ; {
		var n int
		if plain {
			n = bytes.IndexByte(content[at:], '\n')
		} else {
			n = bytes.IndexAny(content[at:], "\r\n")
		}
		if n < 0 {
			return t
		}
		at += n + 1
		if content[at-1] == '\r' && at < len(content) && content[at] == '\n' {
			at++
		}
		t.starts = append(t.starts, int32(at))
	}
}

// Count is how many lines there are; the last may be empty.
func (t *Text) Count() int { return len(t.starts) }

// Start is the offset at which a line starts.
func (t *Text) Start(line int) int32 { return t.starts[line] }

// End is the offset at which the text of a line ends, before its line end.
func (t *Text) End(line int) int32 {
	if line+1 == len(t.starts) {
		return int32(len(t.Bytes))
	}
	end := t.starts[line+1] - 1
	if t.Bytes[end] == '\n' && end > t.starts[line] && t.Bytes[end-1] == '\r' {
		end--
	}
	return end
}

// LineOf is the line an offset lies on.
func (t *Text) LineOf(offset int32) int {
	return sort.Search(len(t.starts), func(i int) bool { return t.starts[i] > offset }) - 1
}

// Encoding is how characters are counted.
type Encoding string

// Position is where an offset stands. One within a character counts as its
// start, one within a line end as the end of the line, and one past the end of
// the text as that.
func (e Encoding) Position(t *Text, offset int32) lsp.Position {
	offset = min(max(offset, 0), int32(len(t.Bytes)))
	for offset > 0 && int(offset) < len(t.Bytes) && !utf8.RuneStart(t.Bytes[offset]) {
		offset--
	}
	line := t.LineOf(offset)
	start := t.starts[line]
	before := t.Bytes[start:min(offset, t.End(line))]
	if e == lsp.UTF8 {
		return lsp.Position{Line: line, Character: len(before)}
	}
	return lsp.Position{Line: line, Character: units(before)}
}

// Offset is the byte offset of a position. A character past the end of its
// line counts as the end, a line past the last as the end of the text, and a
// place within a character as its start.
func (e Encoding) Offset(t *Text, p lsp.Position) int32 {
	switch {
	case p.Line < 0:
		return 0
	case p.Line >= len(t.starts):
		return int32(len(t.Bytes))
	}
	at, end := t.starts[p.Line], t.End(p.Line)
	if e == lsp.UTF8 {
		to := min(int64(at)+int64(max(p.Character, 0)), int64(end))
		at = int32(to)
		for at > t.starts[p.Line] && at < end && !utf8.RuneStart(t.Bytes[at]) {
			at--
		}
		return at
	}
	for left := p.Character; at < end && left > 0; {
		size, n := next(t.Bytes[at:end])
		if left -= n; left < 0 {
			break
		}
		at += int32(size)
	}
	return at
}

// Range is the positions of the bytes from start to end, of characters that
// they cut the whole.
func (e Encoding) Range(t *Text, start, end int32) lsp.Range {
	for end > start && int(end) < len(t.Bytes) && !utf8.RuneStart(t.Bytes[end]) {
		end++
	}
	return lsp.Range{Start: e.Position(t, start), End: e.Position(t, end)}
}

// units counts the UTF-16 code units of a text.
func units(b []byte) int {
	n := 0
	for len(b) > 0 {
		size, u := next(b)
		n += u
		b = b[size:]
	}
	return n
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
