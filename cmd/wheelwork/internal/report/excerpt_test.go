package report

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/spec/text"
)

func TestExcerpt(t *testing.T) {
	for _, c := range []struct {
		name, source, place string
		line, mark          string
	}{
		{"a value", "wheel \"a\" {\n  teeth = 31\n}\n", "31", "teeth = 31", "        ^^"},
		{"tabs", "\t\tteeth\t= 31 # x", "31", "teeth    = 31 # x", "           ^^"},
		{"wide runes", "name = \"月\" # 31", "31", "name = \"月\" # 31", "              ^^"},
		{"a wide rune marked", "name = \"月\"", "\"月\"", "name = \"月\"", "       ^^^^"},
		{"a combining accent", "name = \"e\u0301\" # 31", "31", "name = \"e\u0301\" # 31", "             ^^"},
		{"several lines", "arm \"a\" {\n  z = 1\n}", "arm \"a\" {\n  z = 1\n}", "arm \"a\" {", "^^^^^^^^^"},
		{"a line end of two", "teeth = 31\r\nz = 1\r\n", "31\r\nz", "teeth = 31", "        ^^"},
		{"control characters", "name = \"\x1b[31m\" # 31", "# 31", "name = \"�[31m\" # 31", "               ^^^^"},
		{"bytes that are no text", "name = \"\xff\" # x", "# x", "name = \"�\" # x", "           ^^^"},
		{"a blank line", "a = 1\n   \nb = 2", "   ", "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			line, mark := excerpt(at(t, c.source, c.place))
			assert.Equal(t, c.line, line)
			assert.Equal(t, c.mark, mark)
		})
	}
}

func TestExcerptOfAnEmptyPlace(t *testing.T) {
	f := text.NewFile("x", []byte("teeth = \n"))
	line, mark := excerpt(text.Place{File: f, Span: text.Span{Start: 8, End: 8}})
	assert.Equal(t, "teeth =", line)
	assert.Equal(t, "        ^", mark)

	line, mark = excerpt(text.Place{File: text.NewFile("x", nil)})
	assert.Empty(t, line+mark)
}

// A long line is cut so that the place is seen.
func TestExcerptOfALongLine(t *testing.T) {
	for _, before := range []int{0, 60, 200, 5000} {
		source := strings.Repeat("a, ", before) + "HERE" + strings.Repeat(", z", 3000)
		line, mark := excerpt(at(t, source, "HERE"))
		require.LessOrEqual(t, terminal.Width(line), mostWidth+1)
		runes := []rune(line)
		start := strings.Index(mark, "^")
		assert.Equal(t, "HERE", string(runes[start:start+4]), "%s\n%s", line, mark)
		assert.Equal(t, "^^^^", strings.TrimLeft(mark, " "))
	}
}

// A place that goes on behind the cut is marked up to it.
func TestExcerptOfALongPlace(t *testing.T) {
	source := "x = [" + strings.Repeat("1, ", 3000) + "]"
	line, mark := excerpt(at(t, source, source[4:]))
	assert.LessOrEqual(t, terminal.Width(line), mostWidth+1)
	assert.Equal(t, mostWidth, len(mark))
}

func at(t *testing.T, source, place string) text.Place {
	t.Helper()
	i := strings.Index(source, place)
	require.GreaterOrEqual(t, i, 0)
	return text.Place{File: text.NewFile("x.hcl", []byte(source)), Span: text.Span{Start: int32(i), End: int32(i + len(place))}}
}
