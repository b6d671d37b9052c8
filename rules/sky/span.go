package sky

import "fmt"

// The span of years in which longitudes, phases, eclipses and delta-T are
// given: that of the Five Millennium Canons of Espenak and Meeus
// (NASA/TP-2006-214141, NASA/TP-2009-214172), for which the delta-T
// polynomials were made. Outside it every function that takes a date returns a
// *SpanError.
const (
	FirstYear = -1999     // astronomical count: the year 0 is 1 BC
	LastYear  = 3000      // the last year inside the span
	FirstDay  = 990923.5  // Julian day of -1999-01-01, 0 h
	EndDay    = 2817152.5 // Julian day of 3001-01-01, 0 h, the first outside
)

// SpanError tells that a date lies outside the span of the formulas.
type SpanError struct {
	JD float64 // the Julian day asked for
}

func (e *SpanError) Error() string {
	return fmt.Sprintf("julian day %.1f lies outside the years %d to %d for which the formulas hold", e.JD, FirstYear, LastYear)
}

// checkSpan allows a day at both ends, so that UT and TT of one moment are
// both inside.
func checkSpan(jd ...float64) error {
	for _, d := range jd {
		if !(d >= FirstDay-1 && d <= EndDay+1) { // also refuses NaN
			return &SpanError{d}
		}
	}
	return nil
}
