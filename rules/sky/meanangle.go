package sky

import (
	"fmt"
	"strings"
)

// NoAngleError tells that a catalogue period has no agreed zero, so that no
// hand can be set to it by the calendar alone.
type NoAngleError struct {
	Name string
}

func (e *NoAngleError) Error() string {
	return fmt.Sprintf("%q has no agreed zero mark to be set by", e.Name)
}

// MeanAngle returns where the mean cycle of a catalogue entry stands at a
// Julian day of Universal Time, in degrees from 0 to 360, growing with time
// save for retrograde entries, where it falls. The zero is
//   - for longitudes (tropical) the mean equinox of date, for sidereal ones the
//     equinox of J2000.0 (Jupiter's moons: of 1950),
//   - for the synodic month new moon, for anomalistic cycles the perigee, for
//     draconic ones the ascending node,
//   - for the solar day midnight at Greenwich, for the sidereal day the
//     equinox's transit there, for the lunar day the mean Moon's,
//   - for a planet's synodic round inferior conjunction or opposition, for that
//     of Jupiter's moons the middle of Jupiter's shadow,
//   - for half cycles the same as for the whole.
//
// An unknown name, or a cycle with no such zero, gives a *NoAngleError, a day
// outside the span a *SpanError. Formulas: Meeus, chapters 25, 31, 44 and 47.
func MeanAngle(name string, ut float64) (float64, error) {
	if err := checkSpan(ut); err != nil {
		return 0, err
	}
	p, ok := Lookup(name)
	if !ok {
		return 0, &NoAngleError{name}
	}
	tt := toTT(ut)
	t := Centuries(tt)
	if a, ok := dayAngle(p.Name, ut, t); ok {
		return turn360(a), nil
	}
	if a, ok := moonAngle(p.Name, t); ok {
		return turn360(a), nil
	}
	if a, ok := planetAngle(p.Name, tt); ok {
		return turn360(a), nil
	}
	return 0, &NoAngleError{p.Name}
}

func dayAngle(name string, ut, t float64) (float64, bool) {
	solar := 360 * frac(ut+0.5)
	switch name {
	case "solar day":
		return solar, true
	case "half solar day":
		return 2 * solar, true
	case "sidereal day":
		return SiderealTime(ut), true
	case "stellar day":
		return EarthRotation(ut), true
	case "lunar day":
		return SiderealTime(ut) - MeanMoon.At(t), true
	case "half lunar day":
		return 2 * (SiderealTime(ut) - MeanMoon.At(t)), true
	}
	return 0, false
}

func moonAngle(name string, t float64) (float64, bool) {
	precession := ArgPrecession.Arcsec(t) / 3600
	switch name {
	case "synodic month":
		return MeanElongation.At(t), true
	case "spring-neap cycle":
		return 2 * MeanElongation.At(t), true
	case "tropical month":
		return MeanMoon.At(t), true
	case "sidereal month":
		return MeanMoon.At(t) - precession, true
	case "anomalistic month":
		return MeanMoonAnomaly.At(t), true
	case "draconic month":
		return MeanLatitude.At(t), true
	case "tropical year":
		return MeanSun.At(t), true
	case "sidereal year":
		return MeanSun.At(t) - precession, true
	case "anomalistic year":
		return MeanSunAnomaly.At(t), true
	case "eclipse year":
		return MeanSun.At(t) - MeanNode.At(t), true
	case "half eclipse year":
		return 2 * (MeanSun.At(t) - MeanNode.At(t)), true
	case "lunar node":
		return MeanNode.At(t), true
	case "lunar node sidereal":
		return MeanNode.At(t) - precession, true
	case "lunar apse":
		return MeanPerigee.At(t), true
	case "lunar apse sidereal":
		return MeanPerigee.At(t) - precession, true
	case "apse to node":
		return MeanPerigee.At(t) - MeanNode.At(t), true
	case "full-moon cycle":
		return MeanSun.At(t) - MeanPerigee.At(t), true
	case "precession":
		return -precession, true
	case "solar perigee":
		return MeanSun.At(t) - MeanSunAnomaly.At(t), true
	}
	return 0, false
}

func planetAngle(name string, tt float64) (float64, bool) {
	body, cycle, ok := strings.Cut(name, " ")
	if !ok {
		return 0, false
	}
	t := Centuries(tt)
	for i := range planetLongitudes {
		if planetLongitudes[i].name != body {
			continue
		}
		l := planetLongitudes[i].l.At(t)
		switch cycle {
		case "tropical":
			return l, true
		case "sidereal":
			return l - ArgPrecession.Arcsec(t)/3600, true
		case "synodic":
			earth := planetLongitudes[earthIndex].l.At(t)
			if i < earthIndex {
				return l - earth, true
			}
			return earth - l, true
		}
	}
	for i := range galileanLongitudes {
		g := &galileanLongitudes[i]
		if g.name != body {
			continue
		}
		l := g.l0 + g.perDay*(tt-galileanEpoch)
		switch cycle {
		case "sidereal":
			return l, true
		case "synodic":
			since1950 := (ArgPrecession.Arcsec(t) - ArgPrecession.Arcsec(-0.5)) / 3600
			return l - planetLongitudes[jupiterIndex].l.At(t) + since1950, true
		}
	}
	return 0, false
}
