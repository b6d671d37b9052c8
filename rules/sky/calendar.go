package sky

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Date is a day of the civil calendar: Gregorian from 1582-10-15, Julian up to
// 1582-10-04; the ten days between do not exist. Years are counted
// astronomically: 0 is 1 BC, -1 is 2 BC.
type Date struct {
	Year, Month, Day int
}

// gregorianStart is the first day of the Gregorian calendar at 0 h, a Julian
// day.
const gregorianStart = 2299160.5

// The years for which dates are accepted: from the epoch of the Julian days.
const (
	minCalendarYear = -4712
	maxCalendarYear = 9999
)

// NewDate checks that the day exists and returns it.
func NewDate(year, month, day int) (Date, error) {
	d := Date{year, month, day}
	switch {
	case year < minCalendarYear || year > maxCalendarYear:
		return d, fmt.Errorf("year %d lies outside %d to %d", year, minCalendarYear, maxCalendarYear)
	case month < 1 || month > 12:
		return d, fmt.Errorf("month %d is none of 1 to 12", month)
	case day < 1 || day > monthLength(year, month):
		return d, fmt.Errorf("day %d is none of 1 to %d, the days of month %d of the year %d", day, monthLength(year, month), month, year)
	case year == 1582 && month == 10 && day > 4 && day < 15:
		return d, fmt.Errorf("%s does not exist: the Gregorian calendar went from 1582-10-04 to 1582-10-15", d)
	}
	return d, nil
}

// ParseDate reads a date as ISO 8601 writes it, 2027-01-01; a year before 0 or
// beyond 9999 has a sign, -0584-05-28.
func ParseDate(s string) (Date, error) {
	text, negative := strings.CutPrefix(s, "-")
	parts := strings.Split(text, "-")
	var n [3]int
	ok := len(parts) == 3 && len(parts[0]) == 4 && len(parts[1]) == 2 && len(parts[2]) == 2
	for i := 0; ok && i < 3; i++ {
		v, err := strconv.ParseUint(parts[i], 10, 16)
		n[i], ok = int(v), err == nil
	}
	if !ok {
		return Date{}, fmt.Errorf("%q is no date of the form 2027-01-01", s)
	}
	if negative {
		n[0] = -n[0]
	}
	return NewDate(n[0], n[1], n[2])
}

// String writes the date as ISO 8601 does.
func (d Date) String() string {
	if d.Year < 0 {
		return fmt.Sprintf("-%04d-%02d-%02d", -d.Year, d.Month, d.Day)
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day)
}

// IsLeapYear tells whether the year has a 29 February: every fourth year up to
// 1582, then by the Gregorian rule.
func IsLeapYear(year int) bool {
	if year > 1582 {
		return year%4 == 0 && (year%100 != 0 || year%400 == 0)
	}
	return year%4 == 0
}

func monthLength(year, month int) int {
	switch month {
	case 2:
		if IsLeapYear(year) {
			return 29
		}
		return 28
	case 4, 6, 9, 11:
		return 30
	}
	return 31
}

// gregorian tells which calendar the date is counted in.
func (d Date) gregorian() bool {
	return d.Year*10000+d.Month*100+d.Day >= 15821015
}

// JulianDay returns the Julian day of the date at 0 h (Meeus, Astronomical
// Algorithms, formula 7.1).
func (d Date) JulianDay() float64 {
	y, m := d.Year, d.Month
	if m <= 2 {
		y, m = y-1, m+12
	}
	b := 0
	if d.gregorian() {
		a := floorDiv(y, 100)
		b = 2 - a + floorDiv(a, 4)
	}
	return float64(floorDiv(1461*(y+4716), 4)+306001*(m+1)/10000+d.Day+b) - 1524.5
}

// DateOf returns the date of a Julian day and how much of the day has passed,
// in [0, 1). Days outside the years of Date are refused (Meeus, Astronomical
// Algorithms, chapter 7).
func DateOf(jd float64) (Date, float64, error) {
	if !(jd >= -0.5 && jd < 5373484.5) { // -4712-01-01 12 h less half a day to 9999-12-31
		return Date{}, 0, fmt.Errorf("julian day %g lies outside the years %d to %d", jd, minCalendarYear, maxCalendarYear)
	}
	d, f := dateOf(jd)
	return d, f, nil
}

func dateOf(jd float64) (Date, float64) {
	whole, frac := math.Modf(jd + 0.5)
	z := int(whole)
	if float64(z)-0.5 >= gregorianStart {
		alpha := (4*z - 7468865) / 146097
		z += 1 + alpha - alpha/4
	}
	b := z + 1524
	c := (20*b - 2442) / 7305
	d := 1461 * c / 4
	e := (b - d) * 10000 / 306001
	date := Date{Day: b - d - 306001*e/10000, Month: e - 1}
	if e >= 14 {
		date.Month = e - 13
	}
	date.Year = c - 4716
	if date.Month <= 2 {
		date.Year = c - 4715
	}
	return date, frac
}

// DecimalYear returns the year and the part of it that has passed at the
// Julian day, by the civil calendar.
func DecimalYear(jd float64) float64 {
	d, _ := dateOf(jd)
	first := Date{d.Year, 1, 1}.JulianDay()
	return float64(d.Year) + (jd-first)/(Date{d.Year + 1, 1, 1}.JulianDay()-first)
}

// FormatTime writes a Julian day as date and time to the nearest second,
// 2027-08-02T10:06:36; the scale (UT, TT) is that of the argument.
func FormatTime(jd float64) (string, error) {
	day, _, err := DateOf(jd + 0.5/86400)
	if err != nil {
		return "", err
	}
	s := int(math.Floor((jd-day.JulianDay())*86400 + 0.5))
	return fmt.Sprintf("%sT%02d:%02d:%02d", day, s/3600, s/60%60, s%60), nil
}

func floorDiv(a, b int) int {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}
