package rules

import (
	"path/filepath"
	"strconv"
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// Figure is the edit that gives an attribute another figure in its own unit: a
// bare number stays one, and a string keeps its quotes and its unit, which must
// be the base unit. ok is false where that cannot be written.
func Figure(at spec.At, value exact.Rat, unit string) (edit Edit, ok bool) {
	digits, ok := Decimal(value)
	if !ok {
		return Edit{}, false
	}
	old := at.Place().Text()
	if quote := strings.IndexAny(old, `"'`); quote == 0 {
		digits = old[:1] + digits + " " + unit + old[:1]
	}
	return Replace(at, digits)
}

// Decimal writes a number as a decimal; ok is false where it does not end within
// nine places.
func Decimal(x exact.Rat) (string, bool) {
	n, whole := x.Mul(exact.Int(1_000_000_000)).Int64()
	if !whole {
		return "", false
	}
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	digits := exact.Int(n).String()
	if len(digits) < 10 {
		digits = strings.Repeat("0", 10-len(digits)) + digits
	}
	point := len(digits) - 9
	return sign + strings.TrimSuffix(strings.TrimRight(digits[:point]+"."+digits[point:], "0"), "."), true
}

// roundTo is a figure as near as so many significant digits come.
func roundTo(x exact.Rat, digits int) exact.Rat {
	r, err := exact.Parse(strconv.FormatFloat(x.Float(), 'g', digits, 64))
	if err != nil {
		return x
	}
	return r
}

// literal writes a number as it stands in a spec of either notation: a decimal
// where it ends, a fraction in quotes where it does not.
func literal(x exact.Rat) string {
	if s, ok := Decimal(x); ok {
		return s
	}
	return `"` + x.String() + `"`
}

// sameNotation reports whether both attributes stand in files of one notation.
func sameNotation(a, b spec.At) bool {
	return filepath.Ext(a.File.Name) == filepath.Ext(b.File.Name)
}
