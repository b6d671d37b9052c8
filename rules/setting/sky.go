package setting

import (
	"math/big"
	"strings"

	"wheelwork/rules/sky"
)

// skyAngle is where the cycle of a catalogue entry stands on a Julian day of
// Universal Time, in degrees from 0 to 360 in the sense in which it goes round.
// The years of the calendar are counted from the first of January. The year by the
// name of the Earth is her round as seen from the Sun, opposite to his.
func skyAngle(name string, ut float64) (float64, error) {
	p, ok := sky.Lookup(name)
	if !ok {
		return 0, &sky.NoAngleError{Name: name}
	}
	if p.Name == "Gregorian year" || p.Name == "Julian year" {
		date, _, err := sky.DateOf(ut)
		if err != nil || ut < sky.FirstDay || ut >= sky.EndDay {
			return 0, &sky.SpanError{JD: ut}
		}
		days, _ := p.Days.Float64()
		return turn(360 * (ut - sky.Date{Year: date.Year, Month: 1, Day: 1}.JulianDay()) / days), nil
	}
	at, err := sky.MeanAngle(p.Name, ut)
	if p.Retrograde {
		at = turn(-at)
	}
	if earthFromSun(name) {
		at = turn(at + 180)
	}
	return at, err
}

// earthFromSun reports whether a year is named as the round of a planet.
func earthFromSun(name string) bool { return name == "Earth sidereal" || name == "Earth tropical" }

// zeroOf says what the zero mark of a catalogue entry stands for, as
// sky.MeanAngle has it.
func zeroOf(name string) string {
	switch name {
	case "Gregorian year", "Julian year":
		return "1 January, 0 h"
	case "solar day", "half solar day":
		return "midnight at Greenwich"
	case "sidereal day":
		return "equinox over Greenwich"
	case "stellar day":
		return "rotation angle 0"
	case "lunar day", "half lunar day":
		return "Moon over Greenwich"
	case "synodic month", "spring-neap cycle":
		return "new moon"
	case "full-moon cycle":
		return "Sun at the Moon's perigee"
	case "anomalistic year":
		return "Sun's perigee"
	case "precession":
		return "J2000.0"
	case "Mercury synodic", "Venus synodic":
		return "inferior conjunction"
	}
	p, _ := sky.Lookup(name)
	body, _, _ := strings.Cut(name, " ")
	moon := false
	switch body {
	case "Io", "Europa", "Ganymede", "Callisto":
		moon = true
	}
	switch p.Relative {
	case "tropical":
		return "equinox of date"
	case "sidereal":
		if moon {
			return "equinox of 1950.0"
		}
		return "equinox of J2000.0"
	case "draconic":
		return "ascending node"
	case "anomalistic":
		return "perigee"
	}
	if moon {
		return "Jupiter's shadow"
	}
	return "opposition"
}

// floorOf is the whole number at or next below x.
func floorOf(x *big.Rat) *big.Int {
	q, m := new(big.Int).DivMod(x.Num(), x.Denom(), new(big.Int))
	_ = m // 0 or more, so that q is the floor
	return q
}
