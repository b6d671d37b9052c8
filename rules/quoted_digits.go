package rules

import (
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

// says reports whether a figure is a length rounded, or cut off, at a unit.
func says(figure, length, unit exact.Rat) bool {
	short := length.Sub(figure)
	return short.Abs().Cmp(unit.Quo(exact.Int(2))) <= 0 || short.Sign() >= 0 && short.Cmp(unit) < 0
}

// power reports whether a figure has an exponent: its digits do not say how
// sure it is.
func power(s string) bool {
	digit := func(i int) bool { return i < len(s) && '0' <= s[i] && s[i] <= '9' }
	for i := 1; i < len(s); i++ {
		if (s[i] == 'e' || s[i] == 'E') && (digit(i-1) || s[i-1] == '.') &&
			(digit(i+1) || digit(i+2) && (s[i+1] == '-' || s[i+1] == '+')) {
			return true
		}
	}
	return false
}

// lastDigit is what a unit in the last digit of a quoted period is worth, in
// days. ok is false for what quotes no digits: a catalogue entry, a fraction, or
// a value worked out from others.
func lastDigit(p spec.Period) (days exact.Rat, ok bool) {
	if p.Quoted == "" || p.Derived || strings.Contains(p.Quoted, "/") || power(p.Quoted) {
		return exact.Rat{}, false
	}
	figure, unit := lastFigure(p.Quoted)
	one := exact.Int(1)
	if _, after, ok := strings.Cut(figure, "."); ok {
		for range after {
			one = one.Quo(exact.Int(10))
		}
	}
	days, err := quantity.Parse("1"+unit, quantity.Time)
	if err != nil {
		return exact.Rat{}, false
	}
	return days.Mul(one), true
}

// lastFigure is the last number of a quantity and its unit.
func lastFigure(s string) (figure, unit string) {
	s = strings.TrimSpace(strings.Trim(s, `"'`))
	end := strings.LastIndexAny(s, "0123456789") + 1
	start := strings.LastIndexFunc(s[:end], func(r rune) bool { return (r < '0' || r > '9') && r != '.' && r != '_' }) + 1
	return strings.ReplaceAll(s[start:end], "_", ""), s[end:]
}
