// Package quantity reads figures that carry their unit: "0.25 in", "730.5 s",
// "18.61 yr", "1d 0h 50m", "30 rpm". A figure without a unit is in the base
// unit of its dimension. All results are exact.
package quantity

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"wheelwork/spec/exact"
)

// Dimension is what a figure measures.
type Dimension uint8

// The dimensions, each with its base unit.
const (
	Plain  Dimension = iota // a bare number
	Length                  // mm
	Angle                   // degrees
	Time                    // days
	Speed                   // rpm
	Torque                  // N mm
)

// Base is the unit of a figure that carries none, "" for a plain number.
func (d Dimension) Base() string {
	return [...]string{"", "mm", "deg", "d", "rpm", "N mm"}[d]
}

// Noun names the dimension for messages, with its article.
func (d Dimension) Noun() string {
	if d == Angle {
		return "an angle"
	}
	return "a " + d.word()
}

func (d Dimension) word() string {
	return [...]string{"number", "length", "angle", "time", "speed", "torque"}[d]
}

// Error says which part of the text is wrong: bytes Start to End of it.
type Error struct {
	Start, End int
	Message    string
	// Unit is the unit that is not known, "" if something else is wrong, and
	// Units are those that can stand there. Meant is the one of them of which
	// it is another spelling, "" if it is none's.
	Unit, Meant string
	Units       []string
}

// MostBytes bounds the text of a figure.
const MostBytes = 600

func (e *Error) Error() string { return e.Message }

// Parse reads a figure of the dimension, in its base unit. Several figures
// may follow one another ("1d 0h 50m") and add up; a leading sign counts for
// all. The error is always an *Error.
func Parse(s string, d Dimension) (exact.Rat, error) {
	if len(s) > MostBytes {
		return exact.Rat{}, tooLong(s, d.Noun())
	}
	trimmed := strings.TrimSpace(s)
	if trimmed == "" {
		return exact.Rat{}, &Error{Start: 0, End: len(s), Message: "empty where " + d.Noun() + " is wanted"}
	}
	var (
		total    exact.Rat
		parts    int
		negative bool
		at       = strings.Index(s, trimmed)
		end      = at + len(trimmed)
	)
	if s[at] == '-' || s[at] == '+' {
		negative = s[at] == '-'
		at++
	}
	for at < end {
		stop := figureEnd(s, at, end)
		figure := s[at:stop]
		n, err := exact.Parse(figure)
		if err != nil || figure[0] == '-' || figure[0] == '+' {
			_, size := utf8.DecodeRuneInString(s[at:])
			return exact.Rat{}, &Error{Start: at, End: max(stop, at+size), Message: fmt.Sprintf("%q is not %s", clip(trimmed), d.Noun())}
		}
		unitAt := stop
		for unitAt < end && s[unitAt] == ' ' {
			unitAt++
		}
		unitEnd := unitAt
		for unitEnd < end && !digit(s[unitEnd]) && s[unitEnd] != '-' && s[unitEnd] != '+' {
			unitEnd++
		}
		name := strings.TrimRight(s[unitAt:unitEnd], " ")
		scale, ok := scaleOf(name, d)
		if !ok {
			return exact.Rat{}, unknown(unitAt, name, d.Noun(), d)
		}
		// A figure without a unit stands alone.
		if parts++; parts > 8 || name == "" && (parts > 1 || unitEnd < end) {
			return exact.Rat{}, &Error{Start: at, End: end, Message: fmt.Sprintf("%q is not one %s", clip(trimmed), d.word())}
		}
		total = total.Add(n.Mul(scale))
		at = unitEnd
	}
	if parts == 0 {
		return exact.Rat{}, &Error{Start: 0, End: len(s), Message: fmt.Sprintf("%q is not %s", clip(trimmed), d.Noun())}
	}
	if negative {
		total = total.Neg()
	}
	return total, nil
}

// figureEnd is where the number that starts at `at` ends: digits, point,
// exponent, underscores and a fraction bar between two numbers.
func figureEnd(s string, at, end int) int {
	i := at
	for i < end {
		c := s[i]
		switch {
		case digit(c) || c == '.' || c == '_' || c == '/':
			i++
		case (c == 'e' || c == 'E') && i > at && i+1 < end && (digit(s[i+1]) || (s[i+1] == '-' || s[i+1] == '+') && i+2 < end && digit(s[i+2])):
			i += 2
		case c == ' ' && bar(s, i, end):
			i++
		default:
			return i
		}
	}
	return i
}

// bar reports whether the blank at i stands beside a fraction bar.
func bar(s string, i, end int) bool {
	return i > 0 && s[i-1] == '/' || i+1 < end && s[i+1] == '/'
}

func tooLong(s, noun string) *Error {
	return &Error{Start: 0, End: len(s), Message: fmt.Sprintf("%q is not %s: it has %d bytes", clip(s), noun, len(s))}
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// clip keeps messages short whatever the text.
func clip(s string) string {
	n := 0
	for i := range s {
		if n++; n > 40 {
			return s[:i] + "…"
		}
	}
	return s
}
