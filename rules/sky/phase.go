package sky

import "math"

// lunationArgs are the arguments of a syzygy or quarter number k, in degrees
// (Meeus, Astronomical Algorithms, chapter 49).
type lunationArgs struct {
	k, t           float64 // lunations since 2000-01-06, and the same in centuries
	m, mm, f, node float64 // Sun's and Moon's anomaly, argument of latitude, node
	e              float64 // shrinking of the Earth's eccentricity
	mean           float64 // mean phase, Julian day TT
}

func lunationAt(k float64) lunationArgs {
	t := k / 1236.85
	return lunationArgs{
		k: k, t: t,
		m:    2.5534 + 29.10535670*k - t*t*(0.0000014+t*0.00000011),
		mm:   201.5643 + 385.81693528*k + t*t*(0.0107582+t*(0.00001238-t*0.000000058)),
		f:    160.7108 + 390.67050284*k - t*t*(0.0016118+t*(0.00000227-t*0.000000011)),
		node: 124.7746 - 1.56375588*k + t*t*(0.0020672+t*0.00000215),
		e:    1 - t*(0.002516+t*0.0000074),
		mean: meanPhase(k),
	}
}

// NewMoon2000 is the mean new moon from which lunations are numbered, that of
// 2000-01-06, as a Julian day of Terrestrial Time (Meeus, formula 49.1).
const NewMoon2000 = 2451550.09766

func meanPhase(k float64) float64 {
	t := k / 1236.85
	return NewMoon2000 + 29.530588861*k + t*t*(0.00015437+t*(-0.00000015+t*0.00000000073))
}

// LunationNear returns the number k of the phase nearest to a decimal year:
// whole for new moon, with .25, .5, .75 for first quarter, full moon and last
// quarter, as part says (Meeus, formula 49.2; near the middle between two
// phases it may take the other one).
func LunationNear(year, part float64) float64 {
	return math.Floor((year-2000)*12.3685-part+0.5) + part
}

// MeanPhase returns the mean phase number k (quarters of a lunation from the
// new moon of 2000-01-06) as a Julian day of Terrestrial Time. Days outside
// the span are refused.
func MeanPhase(k float64) (float64, error) {
	jd := meanPhase(k)
	return jd, checkSpan(jd)
}

// MoonPhase returns the true phase number k, rounded to a quarter, as a Julian
// day of Terrestrial Time, to within half a minute in our centuries (Meeus,
// chapter 49). Days outside the span are refused.
func MoonPhase(k float64) (float64, error) {
	k = math.Round(k*4) / 4
	a := lunationAt(k)
	if err := checkSpan(a.mean); err != nil {
		return 0, err
	}
	table, extra := &newMoonTerms, 0.0
	switch quarter := int(math.Floor(k*4)) & 3; quarter {
	case 1, 3:
		table = &quarterTerms
		extra = a.quarterWidth()
		if quarter == 3 {
			extra = -extra
		}
	case 2:
		table = &fullMoonTerms
	}
	sum := a.mean + extra
	for _, w := range table {
		s := w.days * math.Sin(degree*(float64(w.m)*a.m+float64(w.mm)*a.mm+float64(w.f)*a.f+float64(w.node)*a.node))
		for range w.e {
			s *= a.e
		}
		sum += s
	}
	for i, w := range planetPhaseTerms {
		arg := w.constant + w.rate*k
		if i == 0 {
			arg -= 0.009173 * a.t * a.t
		}
		sum += w.days * math.Sin(degree*arg)
	}
	return sum, nil
}

// quarterWidth is W, what the quarters lie further apart.
func (a *lunationArgs) quarterWidth() float64 {
	cos := func(deg float64) float64 { return math.Cos(degree * deg) }
	return 0.00306 - 0.00038*a.e*cos(a.m) + 0.00026*cos(a.mm) -
		0.00002*cos(a.mm-a.m) + 0.00002*cos(a.mm+a.m) + 0.00002*cos(2*a.f)
}
