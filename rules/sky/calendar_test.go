package sky

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Meeus, Astronomical Algorithms, chapter 7: examples 7.a and 7.b and the table
// on page 62, from memory.
func TestJulianDay(t *testing.T) {
	for _, c := range []struct {
		y, m int
		day  float64
		jd   float64
	}{
		{1957, 10, 4.81, 2436116.31},
		{333, 1, 27.5, 1842713.0},
		{2000, 1, 1.5, 2451545.0},
		{1999, 1, 1.0, 2451179.5},
		{1987, 1, 27.0, 2446822.5},
		{1987, 6, 19.5, 2446966.0},
		{1988, 1, 27.0, 2447187.5},
		{1988, 6, 19.5, 2447332.0},
		{1900, 1, 1.0, 2415020.5},
		{1600, 1, 1.0, 2305447.5},
		{1600, 12, 31.0, 2305812.5},
		{837, 4, 10.3, 2026871.8},
		{-123, 12, 31.0, 1676496.5},
		{-122, 1, 1.0, 1676497.5},
		{-1000, 7, 12.5, 1356001.0},
		{-1000, 2, 29.0, 1355866.5},
		{-1001, 8, 17.9, 1355671.4},
		{-4712, 1, 1.5, 0.0},
	} {
		whole := int(c.day)
		d, err := NewDate(c.y, c.m, whole)
		require.NoError(t, err)
		assert.InDelta(t, c.jd, d.JulianDay()+c.day-float64(whole), 1e-6, d)
		back, part, err := DateOf(c.jd)
		require.NoError(t, err)
		assert.Equal(t, d, back)
		assert.InDelta(t, c.day-float64(whole), part, 1e-6, d)
	}
	// the change of calendar, and the ends of the span
	assert.Equal(t, 1.0, Date{1582, 10, 15}.JulianDay()-Date{1582, 10, 4}.JulianDay())
	assert.Equal(t, FirstDay, Date{FirstYear, 1, 1}.JulianDay())
	assert.Equal(t, EndDay, Date{LastYear + 1, 1, 1}.JulianDay())
}

func TestDatesAreDistinctDays(t *testing.T) {
	prev, _, err := DateOf(-0.5)
	require.NoError(t, err)
	assert.Equal(t, Date{-4712, 1, 1}, prev)
	for jd := 0.5; jd < 5373484; jd += 1 {
		d, _ := dateOf(jd)
		if d.JulianDay() != jd || d == prev {
			t.Fatalf("day %v reads %v, which is %v", jd, d, d.JulianDay())
		}
		if _, err := NewDate(d.Year, d.Month, d.Day); err != nil {
			t.Fatal(err)
		}
		prev = d
	}
}

func TestDatesAreReadAsWritten(t *testing.T) {
	for range 2000 {
		d, _ := dateOf(rand.Float64() * 5373484)
		got, err := ParseDate(d.String())
		require.NoError(t, err)
		assert.Equal(t, d, got)
	}
}

func TestBadDatesAreRefused(t *testing.T) {
	for s, want := range map[string]string{
		"2027-02-29":             "day 29 is none of 1 to 28, the days of month 2 of the year 2027",
		"2027-13-01":             "month 13 is none of 1 to 12",
		"1582-10-10":             "1582-10-10 does not exist: the Gregorian calendar went from 1582-10-04 to 1582-10-15",
		"-5000-01-01":            "year -5000 lies outside -4712 to 9999",
		"2027-1-1":               `"2027-1-1" is no date of the form 2027-01-01`,
		"2027-01-01T":            `"2027-01-01T" is no date of the form 2027-01-01`,
		"yesterday":              `"yesterday" is no date of the form 2027-01-01`,
		"":                       `"" is no date of the form 2027-01-01`,
		"99999999999999999-1-01": `"99999999999999999-1-01" is no date of the form 2027-01-01`,
	} {
		_, err := ParseDate(s)
		assert.EqualError(t, err, want)
	}
	for _, jd := range []float64{-1, 1e9, nan(), -nan()} {
		_, _, err := DateOf(jd)
		assert.Error(t, err)
		_, err = FormatTime(jd)
		assert.Error(t, err)
	}
}

func TestFormatTime(t *testing.T) {
	s, err := FormatTime(2451545.0)
	require.NoError(t, err)
	assert.Equal(t, "2000-01-01T12:00:00", s)
	s, err = FormatTime(2451544.5 - 0.4/86400) // rounds into the next day
	require.NoError(t, err)
	assert.Equal(t, "2000-01-01T00:00:00", s)
}

func nan() float64 { var zero float64; return zero / zero }
