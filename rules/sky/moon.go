package sky

import "math"

// earthRadius is the Earth's equatorial radius in km (WGS 84), by which gamma
// and the shadows are measured.
const earthRadius = 6378.137

// MoonPlace returns the Moon's geocentric place, light-time included and
// nutation not, at a Julian day of Terrestrial Time, to about 10 arcsec in
// longitude and 4 in latitude (Meeus, Astronomical Algorithms, chapter 47).
// Days outside the span are refused.
func MoonPlace(tt float64) (Place, error) {
	if err := checkSpan(tt); err != nil {
		return Place{}, err
	}
	a := moonArgumentsAt(tt)
	m := a.motion()
	return Place{turn360(m.lon.c0 / degree), m.lat.c0 / degree, m.dist.c0}, nil
}

// MoonParallax returns the equatorial horizontal parallax in degrees of a Moon
// at the distance in km (Meeus, chapter 47).
func MoonParallax(km float64) float64 { return math.Asin(earthRadius/km) / degree }

// moonArguments are the arguments of the Moon's series at one moment.
type moonArguments struct {
	t               float64 // Julian centuries from J2000.0
	l, mm, f        float64 // mean longitude, anomaly and argument of latitude, radians
	nd, nm, nmm, nf multiples
	shrink          [7]float64 // power of E by the multiple of M, from -3 to 3
}

func moonArgumentsAt(tt float64) (a moonArguments) {
	t := Centuries(tt)
	a.t = t
	mm, f := MeanMoonAnomaly.Degrees(t), MeanLatitude.Degrees(t)
	a.l, a.mm, a.f = MeanMoon.Degrees(t)*degree, mm*degree, f*degree
	a.nd = multiplesOf(MeanElongation.Degrees(t))
	a.nm = multiplesOf(MeanSunAnomaly.Degrees(t))
	a.nmm, a.nf = multiplesOf(mm), multiplesOf(f)
	// terms in M shrink with the Earth's eccentricity, formula 47.6
	e := 1 - t*(0.002516+t*0.0000074)
	a.shrink = [7]float64{e * e * e, e * e, e, 1, e, e * e, e * e * e}
	return a
}

func (a *moonArguments) angle(d, m, mm, f int8) turning {
	return a.nd.of(d).times(a.nm.of(m)).times(a.nmm.of(mm).times(a.nf.of(f)))
}

// The arguments' rates in radians an hour.
const (
	hourly           = degree / (24 * DaysPerCentury)
	rateElongation   = 445267.1114034 * hourly
	rateSunAnomaly   = 35999.0502909 * hourly
	rateMoonAnomaly  = 477198.8675055 * hourly
	rateMoonLatitude = 483202.0175233 * hourly
	rateMoon         = 481267.88123421 * hourly
)

func termRate(d, m, mm, f int8) float64 {
	return float64(d)*rateElongation + float64(m)*rateSunAnomaly +
		float64(mm)*rateMoonAnomaly + float64(f)*rateMoonLatitude
}

// moonMotion is the Moon's longitude and latitude in radians and its distance
// in km over the hours around a moment.
type moonMotion struct{ lon, lat, dist parabola }

// motion returns the Moon's place by Meeus's tables, with its first and half
// its second derivative, each taken term by term. Two hours away the terms of
// third order, left out, stay below 0.1 arcsec.
func (a *moonArguments) motion() moonMotion {
	t := a.t
	var l, r, b parabola
	for i := range moonTerms {
		w := &moonTerms[i]
		u, n := a.angle(w.d, w.m, w.mm, w.f), termRate(w.d, w.m, w.mm, w.f)
		k := a.shrink[3+w.m]
		l.addSine(k*float64(w.longitude), n, u)
		r.addSine(k*float64(w.distance), n, turning{-u.s, u.c}) // the cosine
	}
	for i := range latTerms {
		w := &latTerms[i]
		b.addSine(a.shrink[3+w.m]*float64(w.amplitude), termRate(w.d, w.m, w.mm, w.f), a.angle(w.d, w.m, w.mm, w.f))
	}
	// the action of Venus and Jupiter and the flattening of the Earth
	a1 := (119.75 + 131.849*t) * degree
	a2 := (53.09 + 479264.290*t) * degree
	a3 := (313.45 + 481266.484*t) * degree
	l.c0 += 3958*math.Sin(a1) + 1962*math.Sin(a.l-a.f) + 318*math.Sin(a2)
	b.c0 += -2235*math.Sin(a.l) + 382*math.Sin(a3) + 175*math.Sin(a1-a.f) +
		175*math.Sin(a1+a.f) + 127*math.Sin(a.l-a.mm) - 115*math.Sin(a.l+a.mm)

	l, b, r = l.scaled(1e-6*degree), b.scaled(1e-6*degree), r.scaled(1e-3)
	l.c0 += a.l
	l.c1 += rateMoon
	r.c0 += 385000.56
	return moonMotion{l, b, r}
}

// fine is what the terms that Meeus's tables leave out add to longitude and
// latitude, in radians. With them the place is good to about 2 arcsec and half
// an arcsecond in our centuries.
func (a *moonArguments) fine() (lon, lat float64) {
	sl := a.sum(fineLongitudes[:]) + slowSum(planetLongitudeTerms[:], a.t)
	sb := a.sum(fineLatitudes[:]) + slowSum(planetLatitudeTerms[:], a.t)
	return sl * 1e-6 * degree, sb * 1e-6 * degree
}

func (a *moonArguments) sum(terms []sineTerm) (sum float64) {
	for i := range terms {
		w := &terms[i]
		sum += a.shrink[3+w.m] * float64(w.amplitude) * a.angle(w.d, w.m, w.mm, w.f).s
	}
	return sum
}

func slowSum(terms []slowTerm, t float64) (sum float64) {
	for i := range terms {
		w := &terms[i]
		sum += w.amplitude * math.Sin((w.phase+w.rate*t)*degree)
	}
	return sum
}
