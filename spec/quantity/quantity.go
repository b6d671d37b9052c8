// Package quantity reads figures that carry their unit: "0.25 in", "730.5 s",
// "18.61 yr", "1d 0h 50m", "30 rpm". A figure without a unit is in the base
// unit of its dimension. All results are exact.
package quantity

import (
	"fmt"
	"strings"

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

// Noun names the dimension for messages.
func (d Dimension) Noun() string {
	return [...]string{"a number", "a length", "an angle", "a time", "a speed", "a torque"}[d]
}

// Unit is a unit of measure: its figure times Scale is in the base unit.
type Unit struct {
	Name, Meaning string
	Dimension     Dimension
	Scale         exact.Rat
}

// TropicalYear is the mean tropical year in days at J2000 (IERS 2010
// arguments, Simon et al. 1994); the unit "yr" is this year.
var TropicalYear = exact.Frac(365_242_190_424, 1_000_000_000)

var units = []Unit{
	{"mm", "millimetres", Length, exact.Int(1)},
	{"um", "micrometres", Length, exact.Frac(1, 1000)},
	{"cm", "centimetres", Length, exact.Int(10)},
	{"m", "metres", Length, exact.Int(1000)},
	{"in", "inches of 25.4 mm", Length, exact.Frac(127, 5)},
	{"deg", "degrees", Angle, exact.Int(1)},
	{"arcmin", "minutes of arc", Angle, exact.Frac(1, 60)},
	{"arcsec", "seconds of arc", Angle, exact.Frac(1, 3600)},
	{"turn", "whole turns", Angle, exact.Int(360)},
	{"s", "seconds", Time, exact.Frac(1, 86400)},
	{"min", "minutes", Time, exact.Frac(1, 1440)},
	{"m", "minutes", Time, exact.Frac(1, 1440)},
	{"h", "hours", Time, exact.Frac(1, 24)},
	{"d", "days of 86400 s", Time, exact.Int(1)},
	{"yr", "mean tropical years of 365.242190424 d", Time, TropicalYear},
	{"y", "mean tropical years of 365.242190424 d", Time, TropicalYear},
	{"rpm", "turns a minute", Speed, exact.Int(1)},
	{"rph", "turns an hour", Speed, exact.Frac(1, 60)},
	{"rps", "turns a second", Speed, exact.Int(60)},
	{"N mm", "newton millimetres", Torque, exact.Int(1)},
	{"N cm", "newton centimetres", Torque, exact.Int(10)},
	{"N m", "newton metres", Torque, exact.Int(1000)},
	{"mN m", "millinewton metres", Torque, exact.Int(1)},
}

// Units lists the units of a dimension.
func Units(d Dimension) []Unit {
	var list []Unit
	for _, u := range units {
		if u.Dimension == d {
			list = append(list, u)
		}
	}
	return list
}

// Error says which part of the text is wrong: bytes Start to End of it.
type Error struct {
	Start, End int
	Message    string
	// Unit is the unit that is not known, "" if something else is wrong; a
	// caller may offer the nearest.
	Unit string
}

func (e *Error) Error() string { return e.Message }

// Parse reads a figure of the dimension, in its base unit. Several figures
// may follow one another ("1d 0h 50m") and add up; a leading sign counts for
// all. The error is always an *Error.
func Parse(s string, d Dimension) (exact.Rat, error) {
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
		if err != nil || figure == "" || figure[0] == '-' || figure[0] == '+' {
			return exact.Rat{}, &Error{Start: at, End: max(stop, at+1), Message: fmt.Sprintf("%q is not %s", clip(trimmed), d.Noun())}
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
			return exact.Rat{}, &Error{Start: unitAt, End: unitAt + len(name), Unit: name, Message: unknown(name, d)}
		}
		if parts++; parts > 8 || parts > 1 && name == "" {
			return exact.Rat{}, &Error{Start: at, End: end, Message: fmt.Sprintf("%q is not one %s", clip(trimmed), strings.TrimPrefix(strings.TrimPrefix(d.Noun(), "an "), "a "))}
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

func scaleOf(name string, d Dimension) (exact.Rat, bool) {
	if name == "" {
		return exact.Int(1), true
	}
	for i := range units {
		if units[i].Dimension == d && units[i].Name == name {
			return units[i].Scale, true
		}
	}
	return exact.Rat{}, false
}

func unknown(name string, d Dimension) string {
	if d == Plain {
		return fmt.Sprintf("unit %q where a bare number is wanted", clip(name))
	}
	for i := range units {
		if units[i].Name == name {
			return fmt.Sprintf("unit %q is %s, not %s", name, units[i].Dimension.Noun(), d.Noun())
		}
	}
	return fmt.Sprintf("unknown unit %q for %s", clip(name), d.Noun())
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// clip keeps messages short whatever the text.
func clip(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
