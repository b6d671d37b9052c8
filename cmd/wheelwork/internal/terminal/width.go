// Package terminal knows how text stands on a terminal.
package terminal

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// TabWidth is how wide a tab is shown.
const TabWidth = 4

const zeroWidthJoiner = '\u200d'

// Columns is how many columns of a terminal a rune takes: 0, 1 or 2, and
// TabWidth for a tab (Unicode Standard Annex 11, East Asian Width).
func Columns(r rune) int {
	switch {
	case r == '\t':
		return TabWidth
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

// Width is how many columns the text takes as Show shows it.
func Width(s string) int {
	n := 0
	for _, r := range s {
		n += Columns(r)
	}
	return n
}

// Show is the rune as it may be written to a terminal: whatever would steer
// the terminal or cannot be decoded is a replacement character of the same
// width, a tab is blanks.
func Show(r rune) string {
	switch {
	case r == '\t':
		return strings.Repeat(" ", TabWidth)
	case unicode.IsControl(r) || r == utf8.RuneError:
		return "�"
	case unicode.Is(unicode.Cf, r) && r != zeroWidthJoiner:
		return "" // marks that turn the direction of writing, and the like
	}
	return string(r)
}

// Printable is the text with every rune as Show shows it.
func Printable(s string) string {
	plain := true
	for _, r := range s {
		if r < ' ' || r >= 0x7f {
			plain = false
			break
		}
	}
	if plain {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		b.WriteString(Show(r))
	}
	return b.String()
}
