// Package figure writes figures for people. A figure that is not known is
// nil and written as nothing.
package figure

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"

	"wheelwork/spec/quantity"
)

// Significant is a figure to so many significant digits, without an exponent
// and without zeros at its end.
func Significant(x float64, digits int) string {
	s := strconv.FormatFloat(x, 'g', digits, 64)
	f, err := strconv.ParseFloat(s, 64)
	if a := math.Abs(f); err != nil || a != 0 && (a < 1e-6 || a >= 1e12) {
		return s
	}
	return strconv.FormatFloat(f, 'f', -1, 64)
}

// Days is a time given in days, to nine digits, in the unit that suits it:
// min, h, d, and yr from 3000 days on.
func Days(x *float64) string {
	if x == nil {
		return ""
	}
	switch a := math.Abs(*x); {
	case a == 0:
		return "0 d"
	case a < 1.0/24:
		return Significant(*x*1440, 9) + " min"
	case a < 1:
		return Significant(*x*24, 9) + " h"
	case a >= 3000:
		return Significant(*x/quantity.TropicalYear.Float(), 9) + " yr"
	}
	return Significant(*x, 9) + " d"
}

// Years is a span given in years, to three digits, in the unit that suits it.
func Years(x *float64) string {
	if x == nil {
		return ""
	}
	year := quantity.TropicalYear.Float()
	switch a := math.Abs(*x); {
	case a >= 1:
		return Significant(*x, 3) + " yr"
	case a*year >= 1:
		return Significant(*x*year, 3) + " d"
	case a*year*24 >= 1:
		return Significant(*x*year*24, 3) + " h"
	}
	return Significant(*x*year*1440, 3) + " min"
}

// PPM is a share with its sign.
func PPM(x *float64) string { return Signed(x, "ppm") }

// Signed is a figure with its sign and unit, to three digits before the point
// where it has more.
func Signed(x *float64, unit string) string {
	if x == nil {
		return ""
	}
	if math.Abs(*x) >= 100 {
		return fmt.Sprintf("%+.0f %s", *x, unit)
	}
	s := Significant(*x, 3)
	if *x > 0 {
		s = "+" + s
	}
	return s + " " + unit
}

// Rate is an exact rate "p/q" as it is where it is short, else as a decimal to
// twelve digits.
func Rate(fraction string) string {
	const short = 30
	if len(fraction) > short {
		if r, ok := new(big.Rat).SetString(fraction); ok {
			f, _ := r.Float64()
			return Significant(f, 12)
		}
	}
	return strings.TrimSuffix(fraction, "/1")
}

// Unquoted is a figure as a spec writes it, without the quotes about it.
func Unquoted(s string) string {
	if n := len(s); n >= 2 && (s[0] == '"' || s[0] == '\'') && s[n-1] == s[0] {
		return s[1 : n-1]
	}
	return s
}

// Late is a time in days with its sign, to three digits, in the unit that suits
// it.
func Late(days *float64) string {
	if days == nil {
		return ""
	}
	years := *days / quantity.TropicalYear.Float()
	if years > 0 {
		return "+" + Years(&years)
	}
	return Years(&years)
}
