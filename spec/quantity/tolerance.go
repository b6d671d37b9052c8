package quantity

import (
	"slices"
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

const (
	reads    = "a tolerance reads \"30 ppm\", \"1 deg in 10 yr\" or \"1 d in 100 yr\""
	needUnit = "the amount of a tolerance needs an angle or a time with its unit, such as \"1 deg in 10 yr\""
	notZero  = "a tolerance must be more than zero"
)

// ParseTolerance reads "30 ppm", "0.1 %", "1 deg in 10 yr" or "1 d in 100 yr".
// The error is always an *Error.
func ParseTolerance(s string) (Tolerance, error) {
	if len(s) > 2*MostBytes {
		return Tolerance{}, tooLong(s, "a tolerance")
	}
	amount, span, over := strings.Cut(s, " in ")
	if !over {
		return share(s)
	}
	t, err := amountOf(amount)
	if err != nil {
		return Tolerance{}, err
	}
	if t.Span, err = Parse(span, Time); err != nil {
		return Tolerance{}, shift(err, len(amount)+len(" in "))
	}
	if t.Span.Sign() <= 0 || t.Amount.Sign() <= 0 {
		return Tolerance{}, &Error{Start: 0, End: len(s), Message: notZero}
	}
	return t, nil
}

// amountOf reads an angle or a time, which must say its unit.
func amountOf(s string) (Tolerance, error) {
	angle, err := Parse(s, Angle)
	if err == nil {
		if bare(s) {
			return Tolerance{}, &Error{Start: 0, End: len(s), Message: needUnit}
		}
		return Tolerance{Measure: AngleOver, Amount: angle}, nil
	}
	days, err := Parse(s, Time)
	if err == nil {
		return Tolerance{Measure: TimeOver, Amount: days}, nil
	}
	if e := err.(*Error); len(e.Units) > 0 {
		if unit := s[e.Start:e.End]; !slices.Contains(unitNames(Angle, Time), unit) {
			return Tolerance{}, unknown(e.Start, unit, "an angle or a time", Angle, Time)
		}
	}
	return Tolerance{}, &Error{Start: 0, End: len(s), Message: needUnit}
}

// share reads a share of the period.
func share(s string) (Tolerance, error) {
	figure := strings.TrimSpace(s)
	at := strings.Index(s, figure)
	end := figureEnd(figure, len(figure)-len(strings.TrimLeft(figure, "+-")), len(figure))
	n, err := exact.Parse(figure[:end])
	if err != nil {
		return Tolerance{}, &Error{Start: 0, End: len(s), Message: reads}
	}
	unit := strings.TrimLeft(figure[end:], " ")
	switch unit {
	case "ppm":
	case "%":
		n = n.Mul(exact.Int(10_000))
	case "":
		return Tolerance{}, &Error{Start: 0, End: len(s), Message: reads}
	default:
		start := at + len(figure) - len(unit)
		return Tolerance{}, &Error{Start: start, End: start + len(unit), Message: reads, Unit: unit, Units: []string{"ppm", "%"}}
	}
	if n.Sign() <= 0 {
		return Tolerance{}, &Error{Start: 0, End: len(s), Message: notZero}
	}
	return Tolerance{Measure: PPM, Amount: n}, nil
}

// bare reports whether the figure carries no unit.
func bare(s string) bool {
	s = strings.TrimSpace(s)
	return figureEnd(s, len(s)-len(strings.TrimLeft(s, "+-")), len(s)) == len(s)
}

func shift(err error, by int) error {
	e := *err.(*Error)
	e.Start += by
	e.End += by
	return &e
}
