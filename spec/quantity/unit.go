package quantity

import (
	"fmt"
	"strings"

	"wheelwork/spec/exact"
)

// Unit is a unit of measure: its figure times Scale is in the base unit.
type Unit struct {
	Name, Meaning string
	Dimension     Dimension
	Scale         exact.Rat
}

// TropicalYear is the mean tropical year in days at J2000 (IERS 2010
// arguments, Simon et al. 1994); the unit "yr" is this year.
var TropicalYear = exact.Frac(365_242_190_424, 1_000_000_000)

var units = []Unit{
	{"mm", "millimetres", Length, exact.Int(1)},
	{"um", "micrometres", Length, exact.Frac(1, 1000)},
	{"cm", "centimetres", Length, exact.Int(10)},
	{"m", "metres", Length, exact.Int(1000)},
	{"in", "inches of 25.4 mm", Length, exact.Frac(127, 5)},
	{"deg", "degrees", Angle, exact.Int(1)},
	{"arcmin", "minutes of arc", Angle, exact.Frac(1, 60)},
	{"arcsec", "seconds of arc", Angle, exact.Frac(1, 3600)},
	{"turn", "whole turns", Angle, exact.Int(360)},
	{"s", "seconds", Time, exact.Frac(1, 86400)},
	{"min", "minutes", Time, exact.Frac(1, 1440)},
	{"m", "minutes", Time, exact.Frac(1, 1440)},
	{"h", "hours", Time, exact.Frac(1, 24)},
	{"d", "days of 86400 s", Time, exact.Int(1)},
	{"yr", "mean tropical years of 365.242190424 d", Time, TropicalYear},
	{"y", "mean tropical years of 365.242190424 d", Time, TropicalYear},
	{"rpm", "turns a minute", Speed, exact.Int(1)},
	{"rph", "turns an hour", Speed, exact.Frac(1, 60)},
	{"rps", "turns a second", Speed, exact.Int(60)},
	{"N mm", "newton millimetres", Torque, exact.Int(1)},
	{"N cm", "newton centimetres", Torque, exact.Int(10)},
	{"N m", "newton metres", Torque, exact.Int(1000)},
	{"mN m", "millinewton metres", Torque, exact.Int(1)},
}

// Units lists the units of a dimension.
func Units(d Dimension) []Unit {
	var list []Unit
	for _, u := range units {
		if u.Dimension == d {
			list = append(list, u)
		}
	}
	return list
}

func unitNames(dimensions ...Dimension) []string {
	var list []string
	for _, d := range dimensions {
		for _, u := range Units(d) {
			list = append(list, u.Name)
		}
	}
	return list
}

// spellings are what people write for a unit elsewhere. They are not read, so
// that each unit has one name in all specs, but the name is offered.
var spellings = map[string]string{
	"µm": "um", "μm": "um", "micron": "um", "microns": "um", "meter": "m", "metre": "m", "metres": "m", "meters": "m",
	"\"": "in", "inch": "in", "inches": "in", "°": "deg", "degree": "deg", "degrees": "deg", "º": "deg",
	"'": "arcmin", "′": "arcmin", "″": "arcsec", "turns": "turn", "rev": "turn",
	"sec": "s", "second": "s", "seconds": "s", "mins": "min", "minute": "min", "minutes": "min",
	"hr": "h", "hrs": "h", "hour": "h", "hours": "h", "day": "d", "days": "d",
	"year": "yr", "years": "yr", "yrs": "yr", "a": "yr",
	"r/min": "rpm", "rev/min": "rpm", "1/min": "rpm", "r/s": "rps", "rev/s": "rps", "1/s": "rps",
	"Nmm": "N mm", "Nm": "N m", "Ncm": "N cm", "mNm": "mN m", "N·mm": "N mm", "N·m": "N m", "N·cm": "N cm",
}

func scaleOf(name string, d Dimension) (exact.Rat, bool) {
	if name == "" {
		return exact.Int(1), true
	}
	for i := range units {
		if units[i].Dimension == d && units[i].Name == name {
			return units[i].Scale, true
		}
	}
	return exact.Rat{}, false
}

// unknown is the error of a unit that cannot stand where one of the
// dimensions is wanted, which noun names.
func unknown(start int, name, noun string, dimensions ...Dimension) *Error {
	e := &Error{Start: start, End: start + len(name), Unit: name, Units: unitNames(dimensions...)}
	if len(e.Units) == 0 {
		e.Message = fmt.Sprintf("unit %q where a bare number is wanted", clip(name))
		return e
	}
	e.Message = fmt.Sprintf("unknown unit %q for %s", clip(name), noun)
	for i := range units {
		if units[i].Name == name {
			e.Unit = "" // it is no other one misspelt
			e.Message = fmt.Sprintf("unit %q is %s, not %s", name, units[i].Dimension.Noun(), noun)
			return e
		}
	}
	for i := range units {
		u := &units[i]
		for _, d := range dimensions {
			if u.Dimension == d && (u.Name == spellings[name] || strings.EqualFold(u.Name, name)) {
				e.Meant = u.Name
			}
		}
	}
	return e
}
