package text

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPositions(t *testing.T) {
	type place struct {
		before                   string // the text up to the place
		line, column             int    // as people count
		editorLine, editorColumn int
	}
	for name, c := range map[string]struct {
		text   string
		places []place
	}{
		"plain": {"teeth = 31\nface = 2\n", []place{
			{"", 1, 1, 0, 0},
			{"teeth = ", 1, 9, 0, 8},
			{"teeth = 31", 1, 11, 0, 10},
			{"teeth = 31\n", 2, 1, 1, 0},
			{"teeth = 31\nface = 2\n", 3, 1, 2, 0},
		}},
		"no line end": {"a", []place{{"a", 1, 2, 0, 1}}},
		"empty":       {"", []place{{"", 1, 1, 0, 0}}},
		"tabs count as one": {"\t\tz = 4", []place{
			{"\t\t", 1, 3, 0, 2},
		}},
		"two and three bytes": {"größe = \"½ €\"", []place{
			{"gr", 1, 3, 0, 2},
			{"grö", 1, 4, 0, 3},
			{"größe = \"½ €", 1, 13, 0, 12},
		}},
		"a pair in UTF-16": {"\"🌙\" = 1\n", []place{
			{"\"", 1, 2, 0, 1},
			{"\"🌙", 1, 3, 0, 3},
			{"\"🌙\" = ", 1, 7, 0, 7},
		}},
		"carriage returns": {"a = 1\r\nb = 2\r\n", []place{
			{"a = 1", 1, 6, 0, 5},
			{"a = 1\r\n", 2, 1, 1, 0},
			{"a = 1\r\nb = ", 2, 5, 1, 4},
		}},
		"byte order mark": {"\ufeffa = 1\nb = 2", []place{
			{"\ufeff", 1, 1, 0, 0},
			{"\ufeffa", 1, 2, 0, 1},
			{"\ufeffa = 1\nb", 2, 2, 1, 1},
		}},
		"bytes that are no UTF-8": {"\xff\xfe = 1", []place{
			{"\xff\xfe", 1, 3, 0, 2},
		}},
	} {
		t.Run(name, func(t *testing.T) {
			f := NewFile("x", []byte(c.text))
			for _, p := range c.places {
				at := int32(len(p.before))
				assert.Equal(t, Position{p.line, p.column}, f.Position(at), "%q", p.before)
				line, column := f.UTF16(at)
				assert.Equal(t, [2]int{p.editorLine, p.editorColumn}, [2]int{line, column}, "%q", p.before)
				assert.Equal(t, at, f.Offset(line, column), "%q", p.before)
			}
		})
	}
}

func TestOffsetsBesideTheText(t *testing.T) {
	f := NewFile("x", []byte("\ufeffab\r\n🌙\ncd"))
	assert.Equal(t, Position{1, 1}, f.Position(-1))
	assert.Equal(t, Position{1, 1}, f.Position(1), "within the byte order mark")
	assert.Equal(t, Position{1, 3}, f.Position(6), "between carriage return and line feed")
	assert.Equal(t, Position{3, 3}, f.Position(1000))
	assert.EqualValues(t, 0, f.Offset(-1, 3))
	assert.EqualValues(t, 5, f.Offset(0, 99), "past the end of the line")
	assert.EqualValues(t, 7, f.Offset(1, 1), "between the halves of a pair")
	assert.EqualValues(t, len(f.Bytes), f.Offset(9, 0))
}

func TestLines(t *testing.T) {
	f := NewFile("x", []byte("\ufeffone\r\n\ntwo\n"))
	assert.Equal(t, 4, f.Lines())
	for n, want := range []string{"", "one", "", "two", "", ""} {
		assert.Equal(t, want, f.Line(n), "line %d", n)
	}
	assert.EqualValues(t, 3, f.LineStart(1))
	assert.EqualValues(t, 9, f.LineStart(3))
	assert.EqualValues(t, 13, f.LineStart(5))
}

// The reference goes through the text character by character.
func TestPositionsAgreeWithASlowReference(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	pieces := []string{"a", " ", "\t", "\n", "\r\n", "ö", "€", "🌙", "\"", "=", "\ufeff"}
	for range 300 {
		var s strings.Builder
		for range rng.IntN(60) {
			s.WriteString(pieces[rng.IntN(len(pieces))])
		}
		all := s.String()
		f := NewFile("x", []byte(all))
		body := strings.TrimPrefix(all, "\ufeff")
		skipped := len(all) - len(body)
		lines := strings.Split(body, "\n")
		assert.Equal(t, len(lines), f.Lines())
		at := skipped
		for n, line := range lines {
			told := strings.TrimSuffix(line, "\r")
			require.Equal(t, told, f.Line(n+1))
			for i := range told + "." {
				before := told[:i]
				offset := int32(at + i)
				require.Equal(t, Position{n + 1, len([]rune(before)) + 1}, f.Position(offset), "%q at %d", all, offset)
				editorLine, column := f.UTF16(offset)
				require.Equal(t, n, editorLine)
				require.Equal(t, len(utf16.Encode([]rune(before))), column)
				require.Equal(t, offset, f.Offset(editorLine, column))
			}
			at += len(line) + 1
		}
	}
}

func TestSpans(t *testing.T) {
	a, b := Span{2, 6}, Span{4, 9}
	assert.Equal(t, Span{2, 9}, a.Join(b))
	assert.Equal(t, 4, a.Len())
	assert.True(t, a.Covers(Span{3, 6}))
	assert.False(t, a.Covers(b))
	f := NewFile("x", []byte("teeth = 31"))
	assert.Equal(t, "31", Place{f, Span{8, 10}}.Text())
	assert.Empty(t, Place{}.Text())
	assert.False(t, Place{}.Known())
}
