package sky

import "slices"

// Kind is the kind of an eclipse.
type Kind string

// The kinds: a solar eclipse is partial, annular, total or hybrid (annular on
// part of its path and total on the rest), a lunar one penumbral, partial or
// total.
const (
	None      Kind = ""
	Penumbral Kind = "penumbral"
	Partial   Kind = "partial"
	Annular   Kind = "annular"
	Total     Kind = "total"
	Hybrid    Kind = "hybrid"
)

// Eclipse is one eclipse of the sky.
type Eclipse struct {
	Syzygy            // the mean syzygy it belongs to: what the model's pointers show
	Solar     bool    // of the Sun, else of the Moon
	Kind      Kind    // never None in what Eclipses returns
	Central   bool    // solar: the axis of the shadow meets the Earth
	Saros     int     // number of the Saros series
	TT, UT    float64 // greatest eclipse, Julian days
	Gamma     float64 // least distance of the axis from the centre of the Earth (lunar: of the Moon's centre from the axis), in equatorial radii of the Earth, positive to the north
	Magnitude float64 // solar: part of the Sun's diameter covered, or the ratio of the diameters where it is central; lunar: of the Moon's diameter in the umbra, negative where it stays outside

	// Lunar only: the magnitude in the penumbra, and half the durations of the
	// phases in minutes, 0 for a phase that does not come.
	PenumbralMagnitude                    float64
	SemiPenumbral, SemiPartial, SemiTotal float64
}

// Eclipses returns all eclipses of Sun and Moon whose greatest phase lies from
// one Julian day of Universal Time up to another, the latter left out, in the
// order of time. Days outside the span (-1999 to 3000) are refused.
//
// Each mean syzygy near a node gives a first guess (Meeus, Astronomical
// Algorithms, chapter 54); from there the geometry of the shadow is computed
// on the places of Sun and Moon. In 1950-2050 gamma
// differs from the canons of Espenak and Meeus by at most 0.0003, and the time
// from astronomy-engine 2.1.19 by less than 6 s.
func Eclipses(fromJD, toJD float64) ([]Eclipse, error) {
	if err := checkSpan(fromJD, toJD); err != nil {
		return nil, err
	}
	if toJD <= fromJD {
		return nil, nil
	}
	// two solar and two lunar eclipses in most years, seven at most
	list := make([]Eclipse, 0, 4+int((toJD-fromJD)/75))
	end := toTT(toJD) + 1 // the true syzygy lies within 0.7 d of the mean one
	for k := firstLunation(toTT(fromJD)); ; k += 0.5 {
		a := lunationAt(k)
		if a.mean > end {
			break
		}
		e, ok := a.eclipse()
		if ok && e.UT >= fromJD && e.UT < toJD {
			list = append(list, e)
		}
	}
	slices.SortFunc(list, byTime)
	return list, nil
}

// EclipseAt returns the eclipse at the syzygy number k, rounded to a half; ok
// is false where there is none. Numbers outside the span are refused.
func EclipseAt(k float64) (e Eclipse, ok bool, err error) {
	s, err := SyzygyAt(k)
	if err != nil {
		return Eclipse{}, false, err
	}
	a := lunationAt(s.K)
	e, ok = a.eclipse()
	return e, ok, nil
}

func (a *lunationArgs) eclipse() (e Eclipse, ok bool) {
	g, ok := a.guess()
	if !ok {
		return e, false
	}
	e.Syzygy = a.syzygy()
	e.Solar = !e.Full()
	if !g.maybe(!e.Solar) {
		return e, false
	}
	if e.Solar {
		e.solar(g.tt)
	} else {
		e.lunar(g.tt)
	}
	if e.Kind == None {
		return e, false
	}
	e.Saros = sarosNumber(e.K)
	e.UT = toUT(e.TT)
	return e, true
}
