package report

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"

	"wheelwork/spec/text"
)

// The widths of an excerpt, in columns of a terminal.
const (
	tabWidth  = 4
	mostWidth = 110 // of the line
	leadWidth = 40  // kept before the place where the line is cut
)

// excerpt is the source line of a place without its indentation, and a line
// of marks to stand beneath it. The mark is "" where there is nothing to show.
func excerpt(at text.Place) (line, mark string) {
	if !at.Known() || len(at.File.Bytes) == 0 {
		return "", ""
	}
	n := at.File.Position(at.Start).Line
	source := at.File.Line(n)
	start := min(int(at.Start-at.File.LineStart(n)), len(source))
	end := min(start+at.Len(), len(source)) // to the end of the first line
	indent := len(source) - len(strings.TrimLeft(source, " \t"))
	indent = min(indent, start)
	source, start, end = source[indent:], start-indent, end-indent
	if strings.TrimSpace(source) == "" {
		return "", ""
	}

	var out, under strings.Builder
	cut := lead(source, start)
	if cut > 0 {
		out.WriteString("…")
		under.WriteByte(' ')
	}
	column := under.Len()
	for i := cut; i < len(source); {
		r, size := utf8.DecodeRuneInString(source[i:])
		w := columns(r)
		if column+w > mostWidth {
			out.WriteString("…")
			break
		}
		show(&out, r, w)
		switch {
		case i < start:
			under.WriteString(strings.Repeat(" ", w))
		case i < end:
			under.WriteString(strings.Repeat("^", w))
		}
		column += w
		i += size
	}
	mark = under.String()
	if !strings.HasSuffix(mark, "^") { // an empty place, or one at the end of the line
		mark += "^"
	}
	return strings.TrimRight(out.String(), " "), mark
}

// lead is where to begin a line so that the place is seen: 0 where all of what
// comes before it fits.
func lead(source string, start int) int {
	w := 0
	for _, r := range source[:start] {
		w += columns(r)
	}
	if w <= mostWidth-leadWidth {
		return 0
	}
	cut := start
	for w = 0; cut > 0 && w < leadWidth; {
		r, size := utf8.DecodeLastRuneInString(source[:cut])
		w += columns(r)
		cut -= size
	}
	return cut
}

// columns is how wide a rune stands on a terminal.
func columns(r rune) int {
	switch {
	case r == '\t':
		return tabWidth
	case r < 0x7f:
		return 1
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

func show(out *strings.Builder, r rune, w int) {
	switch {
	case r == '\t':
		out.WriteString(strings.Repeat(" ", w))
	case unicode.IsControl(r) || r == utf8.RuneError || unicode.Is(unicode.Cf, r) && r != zeroWidthJoiner:
		if w > 0 {
			out.WriteRune('�')
		}
	default:
		out.WriteRune(r)
	}
}

const zeroWidthJoiner = '\u200d'

// printable is text with whatever would steer a terminal made visible.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return '�'
		}
		return r
	}, s)
}
