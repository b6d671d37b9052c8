package quantity

import (
	"strings"

	"wheelwork/spec/exact"
)

// Measure is how a tolerance is meant.
type Measure uint8

// The three ways to state what a hand may be off by.
const (
	PPM       Measure = iota // of the period: "30 ppm"
	AngleOver                // degrees in a span: "1 deg in 10 yr"
	TimeOver                 // days in a span: "1 d in 100 yr"
)

// Tolerance is what a hand may be off by, either way.
type Tolerance struct {
	Measure Measure
	Amount  exact.Rat // ppm, degrees or days
	Span    exact.Rat // days, of an angle or time
}

// ParseTolerance reads "30 ppm", "0.1 %", "1 deg in 10 yr" or "1 d in 100 yr".
// The error is always an *Error.
func ParseTolerance(s string) (Tolerance, error) {
	amount, span, over := strings.Cut(s, " in ")
	if !over {
		return share(s)
	}
	days, err := Parse(span, Time)
	if err != nil {
		return Tolerance{}, shift(err, len(amount)+len(" in "))
	}
	t := Tolerance{Measure: AngleOver, Span: days}
	if t.Amount, err = Parse(amount, Angle); err != nil || bare(amount) {
		t.Measure = TimeOver
		if t.Amount, err = Parse(amount, Time); err != nil || bare(amount) {
			return Tolerance{}, &Error{Start: 0, End: len(amount), Message: "the amount of a tolerance needs an angle or a time with its unit, such as \"1 deg in 10 yr\""}
		}
	}
	if t.Span.Sign() <= 0 || t.Amount.Sign() <= 0 {
		return Tolerance{}, &Error{Start: 0, End: len(s), Message: "a tolerance must be more than zero"}
	}
	return t, nil
}

func share(s string) (Tolerance, error) {
	figure := strings.TrimSpace(s)
	scale := exact.Int(1)
	switch {
	case strings.HasSuffix(figure, "ppm"):
		figure = strings.TrimSuffix(figure, "ppm")
	case strings.HasSuffix(figure, "%"):
		figure, scale = strings.TrimSuffix(figure, "%"), exact.Int(10_000)
	default:
		return Tolerance{}, &Error{Start: 0, End: len(s), Message: "a tolerance reads \"30 ppm\", \"1 deg in 10 yr\" or \"1 d in 100 yr\""}
	}
	n, err := exact.Parse(strings.TrimSpace(figure))
	if err != nil {
		return Tolerance{}, &Error{Start: 0, End: len(s), Message: err.Error()}
	}
	if n.Sign() <= 0 {
		return Tolerance{}, &Error{Start: 0, End: len(s), Message: "a tolerance must be more than zero"}
	}
	return Tolerance{Measure: PPM, Amount: n.Mul(scale)}, nil
}

// bare reports whether the text carries no unit.
func bare(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' }) < 0
}

func shift(err error, by int) error {
	if e, ok := err.(*Error); ok {
		return &Error{Start: e.Start + by, End: e.End + by, Message: e.Message, Unit: e.Unit}
	}
	return err
}
