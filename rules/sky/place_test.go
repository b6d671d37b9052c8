package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Meeus, Astronomical Algorithms, 2nd ed., example 47.a, to the digits printed.
func TestMoonPlaceOfMeeus(t *testing.T) {
	p, err := MoonPlace(2448724.5)
	require.NoError(t, err)
	assert.InDelta(t, 133.162655, p.Longitude, 5.1e-7)
	assert.InDelta(t, -3.229126, p.Latitude, 5.1e-7)
	assert.InDelta(t, 368409.7, p.Distance, 0.051)
	// the book takes the Earth's radius as 6378.14 km
	assert.InDelta(t, 0.991990, MoonParallax(p.Distance), 1.1e-6)
}

// Meeus, example 25.b, from memory: apparent longitude 199 deg 54' 21.818"
// with a nutation of 15.908", latitude 0.72", distance 0.99760853 by the whole
// of VSOP87.
func TestSunPlaceOfMeeus(t *testing.T) {
	p, err := SunPlace(2448908.5)
	require.NoError(t, err)
	assert.InDelta(t, 199+54.0/60+(21.818-15.908)/3600, p.Longitude, 0.5/3600)
	assert.InDelta(t, 0.72/3600, p.Latitude, 0.3/3600)
	assert.InDelta(t, 0.99760853, p.Distance/astronomicalUnit, 1e-5)
}

// The motion's derivatives lead to the places some hours away.
func TestMoonMotionLeadsToLaterPlaces(t *testing.T) {
	for tt := 2415020.5; tt < 2488069.5; tt += 1511.7 {
		m := moonMotionAt(tt)
		for _, hours := range []float64{-2, 2} {
			late := moonMotionAt(tt + hours/24)
			assert.InDelta(t, 0, turn180((m.lon.at(hours)-late.lon.c0)/degree)*3600, 0.5)
			assert.InDelta(t, late.lat.c0/arcsec, m.lat.at(hours)/arcsec, 0.5)
			assert.InDelta(t, late.dist.c0, m.dist.at(hours), 1)
		}
		s := sunPathAt(tt)
		lon, _, _ := sunRadians(tt + 2.0/24)
		assert.InDelta(t, 0, turn180((s.lon+s.rate*2/24-lon)/degree)*3600, 0.15)
	}
}

// The least and the greatest distance of the Moon in 1900-2100, km:
// astronomy-engine 2.1.19, whose distances are some ten kilometres short, and
// Meeus, chapter 50, from memory (1912-01-04 and 1984-03-02).
func TestExtremesOfTheMoonsDistance(t *testing.T) {
	least, most := math.Inf(1), 0.0
	for tt := (Date{1900, 1, 1}).JulianDay(); tt < (Date{2101, 1, 1}).JulianDay(); tt++ {
		a := moonArgumentsAt(tt)
		m := a.motion().dist
		hours := -m.c1 / (2 * m.c2) // to the vertex of the parabola
		if math.Abs(hours) > 18 {
			continue
		}
		a = moonArgumentsAt(tt + hours/24)
		d := a.motion().dist.c0
		least, most = math.Min(least, d), math.Max(most, d)
	}
	assert.InDelta(t, MoonPerigeeMin, least, 15)
	assert.InDelta(t, 356375, least, 6)
	assert.InDelta(t, MoonApogeeMax, most, 15)
	assert.InDelta(t, 406709, most, 6)
}

// Equation of time in minutes: astronomy-engine 2.1.19; the zeros fall on
// 15 April, 13 June, 1 September and 25 December.
func TestEquationOfTime(t *testing.T) {
	at := func(date string) float64 {
		d, err := ParseDate(date)
		require.NoError(t, err)
		e, err := EquationOfTime(toTT(d.JulianDay() + 0.5))
		require.NoError(t, err)
		return e
	}
	for _, c := range []struct {
		date string
		want float64
		tol  float64
	}{
		{"2000-02-11", -14.25, 0.02}, {"2025-02-11", -14.20, 0.02},
		{"2000-07-26", -6.50, 0.02}, {"2025-07-26", -6.58, 0.02},
		{"2025-05-14", 3.7, 0.05}, {"2025-11-03", 16.4, 0.06},
		{"2025-04-15", 0, 0.25}, {"2025-06-13", 0, 0.25}, {"2025-09-01", 0, 0.25}, {"2025-12-25", 0, 0.35},
	} {
		assert.InDelta(t, c.want, at(c.date), c.tol, c.date)
	}
	// Meeus, example 28.a, from memory
	e, err := EquationOfTime(2448908.5)
	require.NoError(t, err)
	assert.InDelta(t, 13.70940, e, 0.003)
}

// The year from one March equinox to the next, mean of 1900-2100: 365.242387 d,
// astronomy-engine 2.1.19. It is not the tropical year.
func TestMarchEquinoxYear(t *testing.T) {
	equinox := func(year int) float64 {
		tt := Date{year, 3, 20}.JulianDay()
		for range 5 {
			lon, _, _ := sunRadians(tt)
			tt -= turn180(lon/degree) / 360 * TropicalYearDays
		}
		return tt
	}
	mean := (equinox(2100) - equinox(1900)) / 200
	assert.InDelta(t, 365.242387, mean, 3e-5)
	assert.Greater(t, mean-TropicalYearDays, 1e-4)
	// Meeus, table 27.E, from memory: the equinox of 2000, 2451623.81 TD
	assert.InDelta(t, 2451623.81598, equinox(2000), 0.006)
}
