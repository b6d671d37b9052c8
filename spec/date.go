package spec

import (
	"fmt"
	"strings"
	"time"
)

// dateForms are the ways a date can be written; seconds may have a fraction,
// and what names no offset is in UT.
var dateForms = []string{
	time.DateOnly,
	"2006-01-02T15:04", "2006-01-02 15:04", "2006-01-02T15:04:05", "2006-01-02 15:04:05",
	"2006-01-02T15:04Z07:00", "2006-01-02 15:04Z07:00", time.RFC3339, "2006-01-02 15:04:05Z07:00",
}

// ParseDate reads "2027-01-01", with or without a time of day in UT
// ("2027-01-01T18:30"), or with an offset from it. The calendar is the
// Gregorian one, before its introduction too.
func ParseDate(s string) (Date, error) {
	trimmed := strings.TrimSpace(s)
	if len(trimmed) > 64 {
		return Date{}, notADate(s)
	}
	for _, form := range dateForms {
		t, err := time.Parse(form, trimmed)
		if err != nil {
			if e, _ := err.(*time.ParseError); e != nil && strings.HasSuffix(e.Message, "out of range") {
				return Date{}, fmt.Errorf("%q is not in the calendar", trimmed)
			}
			continue
		}
		t = t.UTC()
		day := time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
		return Date{Text: trimmed, Year: t.Year(), Month: int(t.Month()), Day: t.Day(), DayFraction: t.Sub(day).Hours() / 24}, nil
	}
	return Date{}, notADate(s)
}

func notADate(s string) error {
	return fmt.Errorf("%q is not a date such as \"2027-01-01\"", clip(s))
}
