package report

import (
	"strings"
	"unicode/utf8"

	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/spec/text"
)

// The widths of an excerpt, in columns of a terminal.
const (
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
		w := terminal.Columns(r)
		if column+w > mostWidth {
			out.WriteString("…")
			break
		}
		out.WriteString(terminal.Show(r))
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
		w += terminal.Columns(r)
	}
	if w <= mostWidth-leadWidth {
		return 0
	}
	cut := start
	for w = 0; cut > 0 && w < leadWidth; {
		r, size := utf8.DecodeLastRuneInString(source[:cut])
		w += terminal.Columns(r)
		cut -= size
	}
	return cut
}
