package spec

import (
	"fmt"
	"strings"
	"time"

	"wheelwork/spec/syntax"
)

// ParseDate reads "2027-01-01", with or without a time of day in UT
// ("2027-01-01T18:30").
func ParseDate(s string) (Date, error) {
	s = strings.TrimSpace(s)
	for _, layout := range []string{time.DateOnly, "2006-01-02T15:04", "2006-01-02 15:04", "2006-01-02T15:04:05", "2006-01-02 15:04:05", time.RFC3339} {
		t, err := time.Parse(layout, s)
		if err != nil {
			continue
		}
		t = t.UTC()
		day := time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
		return Date{Text: s, Year: t.Year(), Month: int(t.Month()), Day: t.Day(), DayFraction: t.Sub(day).Hours() / 24}, nil
	}
	if len(s) > 40 {
		s = s[:40]
	}
	return Date{}, fmt.Errorf("%q is not a date such as \"2027-01-01\"", s)
}

func (d *Date) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if v.Kind != syntax.String {
		r.wants(a, v, "a date such as \"2027-01-01\"")
		return
	}
	got, err := ParseDate(v.Text)
	if err != nil {
		r.problem(v.At, err.Error(), "")
		return
	}
	got.At = at
	*d = got
}
