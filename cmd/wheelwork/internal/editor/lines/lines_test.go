package lines

import (
	"testing"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// The examples of the protocol (LSP 3.17, "Position"): in a𐐀b, the b stands at
// 3 in UTF-16 and at 5 in UTF-8; line ends are \n, \r\n and \r.
func TestPositions(t *testing.T) {
	text := New([]byte("a𐐀b\r\nsecond\rthird\n"))
	require.Equal(t, 4, text.Count())
	for _, c := range []struct {
		offset int32
		utf16  lsp.Position
		utf8   lsp.Position
	}{
		{0, lsp.Position{}, lsp.Position{}},
		{1, lsp.Position{Character: 1}, lsp.Position{Character: 1}},
		{5, lsp.Position{Character: 3}, lsp.Position{Character: 5}},
		{6, lsp.Position{Character: 4}, lsp.Position{Character: 6}},
		{8, lsp.Position{Line: 1}, lsp.Position{Line: 1}},
		{14, lsp.Position{Line: 1, Character: 6}, lsp.Position{Line: 1, Character: 6}},
		{15, lsp.Position{Line: 2}, lsp.Position{Line: 2}},
		{21, lsp.Position{Line: 3}, lsp.Position{Line: 3}},
	} {
		assert.Equal(t, c.utf16, Encoding(lsp.UTF16).Position(text, c.offset), "offset %d", c.offset)
		assert.Equal(t, c.utf8, Encoding(lsp.UTF8).Position(text, c.offset), "offset %d", c.offset)
		assert.Equal(t, c.offset, Encoding(lsp.UTF16).Offset(text, c.utf16))
		assert.Equal(t, c.offset, Encoding(lsp.UTF8).Offset(text, c.utf8))
	}
}

// What lies outside counts as the nearest place inside.
func TestOutside(t *testing.T) {
	text := New([]byte("a𐐀b\r\nlast"))
	for _, e := range []Encoding{lsp.UTF8, lsp.UTF16} {
		assert.EqualValues(t, 6, e.Offset(text, lsp.Position{Character: 1 << 31}), "the end of the line")
		assert.EqualValues(t, len(text.Bytes), e.Offset(text, lsp.Position{Line: 9, Character: 2}))
		assert.EqualValues(t, 1, e.Offset(text, lsp.Position{Character: 2}), "within the letter")
		assert.EqualValues(t, 0, e.Offset(text, lsp.Position{Character: -4}))
		assert.Zero(t, e.Offset(text, lsp.Position{Line: -1}))
		assert.Equal(t, e.Position(text, 6), e.Position(text, 7), "within the line end")
		assert.Equal(t, lsp.Position{Line: 1, Character: 4}, e.Position(text, 99))
		assert.Equal(t, e.Range(text, 1, 5), e.Range(text, 2, 3), "a letter that is cut")
	}
}

// FuzzPositions holds UTF-16 positions against the standard library's count.
func FuzzPositions(f *testing.F) {
	f.Add("a𐐀b\r\nsecond\rthird\n", 5)
	f.Add("\ufeffdesign {}\n", 3)
	f.Fuzz(func(t *testing.T, s string, at int) {
		at = max(0, min(at, len(s)))
		if !utf8.ValidString(s) || at < len(s) && !utf8.RuneStart(s[at]) {
			t.Skip() // JSON brings neither
		}
		text := New([]byte(s))
		line := text.LineOf(int32(at))
		assert.LessOrEqual(t, text.Start(line), int32(at))
		if line+1 < text.Count() {
			assert.Less(t, int32(at), text.Start(line+1))
		}
		for _, e := range []Encoding{lsp.UTF8, lsp.UTF16} {
			p := e.Position(text, int32(at))
			back := e.Offset(text, p)
			assert.LessOrEqual(t, back, int32(at))
			assert.Equal(t, p, e.Position(text, back), "the same place")
		}
		p := Encoding(lsp.UTF16).Position(text, int32(at))
		b := text.Bytes[text.Start(line):min(int32(at), text.End(line))]
		assert.Equal(t, len(utf16.Encode([]rune(string(b)))), p.Character)
	})
}
