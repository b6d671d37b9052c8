package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Planets: lengths from the rates of ERFA 2.0.0, the relations between them,
// and independent fits of heliocentric conjunctions 1900-2100 computed with
// astronomy-engine 2.1.19.
func TestPlanets(t *testing.T) {
	const siderealYear, precession = 365.2563630, 9413067.89
	for i, c := range []struct {
		name     string
		synodic  float64 // fitted
		tol      float64 // what the great inequality leaves
		rotation float64 // days, negative: retrograde
	}{
		{"Mercury", 115.87757, 2e-4, 58.646146},
		{"Venus", 583.92097, 1e-3, -243.018484},
		{"Earth", 0, 0, 0.99726968},
		{"Mars", 779.9463, 1.1e-2, 1.025957},
		{"Jupiter", 398.8845, 1e-3, 9.92492 / 24},
		{"Saturn", 378.1017, 1.1e-2, 10.65622 / 24},
		{"Uranus", 369.6589, 4e-3, -17.24000 / 24},
		{"Neptune", 367.4948, 1e-2, 15.9663 / 24},
	} {
		sid := days(t, c.name+" sidereal")
		assert.InDelta(t, 2*math.Pi*DaysPerCentury/planetRates[i], sid, 5.1e-7, c.name)
		// the slope of the formula magnifies the rounding of the sixth decimal
		assert.InDelta(t, 1/(1/sid+1/precession), days(t, c.name+" tropical"), 1.1e-6, c.name)
		if c.name != "Earth" {
			want := 1 / math.Abs(1/sid-1/siderealYear)
			assert.InDelta(t, want, days(t, c.name+" synodic"), 5e-6, c.name)
			assert.InDelta(t, c.synodic, days(t, c.name+" synodic"), c.tol, c.name)
		}
		p, _ := Lookup(c.name + " rotation")
		assert.InDelta(t, math.Abs(c.rotation), days(t, c.name+" rotation"), 1e-7, c.name)
		assert.Equal(t, c.rotation < 0, p.Retrograde, c.name)
	}
	// Pluto, from memory: the synodic period follows from the sidereal one, to
	// a unit of the decimals given.
	assert.InDelta(t, 1/(1/siderealYear-1/days(t, "Pluto sidereal")), days(t, "Pluto synodic"), 1e-2)
	pluto, _ := Lookup("Pluto rotation")
	assert.True(t, pluto.Retrograde)
	assert.InDelta(t, 6.387223, days(t, "Pluto rotation"), 0)
	assert.InDelta(t, days(t, "Pluto rotation"), days(t, "Charon sidereal"), 0)
	assert.InDelta(t, 24.62296/24, days(t, "Mars rotation"), 1e-6)
}

// Yearly figures as read in rmg.co.uk, astronomynotes.com and ucar.edu.
func TestPlanetsAgainstPublishedTables(t *testing.T) {
	assert.InDelta(t, 87.969, days(t, "Mercury sidereal"), 5e-4)
	assert.InDelta(t, 224.701, days(t, "Venus sidereal"), 5e-4)
	assert.InDelta(t, 686.98, days(t, "Mars sidereal"), 5e-3)
	assert.InDelta(t, 11.862, days(t, "Jupiter sidereal")/365.25, 5e-4)
	assert.InDelta(t, 29.457, days(t, "Saturn sidereal")/365.25, 5e-4)
	assert.InDelta(t, 84.01, days(t, "Uranus sidereal")/365.25, 1.1e-2)
	assert.InDelta(t, 164.79, days(t, "Neptune sidereal")/365.25, 2e-2)
	// fact-sheet figures, from memory, and osculating ones some designers use
	assert.InDelta(t, 4332.589, days(t, "Jupiter sidereal"), 1e-3)
	assert.InDelta(t, 10759.22, days(t, "Saturn sidereal"), 1e-2)
	assert.InDelta(t, 53, (4332.82/days(t, "Jupiter sidereal")-1)*1e6, 0.5)
	assert.InDelta(t, -328, (10755.70/days(t, "Saturn sidereal")-1)*1e6, 0.5)
}

// Satellites: Meeus's rates in degrees a day; synodic computed from the
// formula.
func TestSatellites(t *testing.T) {
	for _, c := range []struct {
		name    string
		rate    float64
		synodic float64
	}{
		{"Io", 203.48895579, 1.769860474},
		{"Europa", 101.374724735, 3.554094128},
		{"Ganymede", 50.317609207, 7.166387062},
		{"Callisto", 21.571071177, 16.753552460},
	} {
		assert.InDelta(t, 360/c.rate, days(t, c.name+" sidereal"), 5.1e-10, c.name)
		assert.InDelta(t, c.synodic, days(t, c.name+" synodic"), 0, c.name)
		want := 1 / (1/days(t, c.name+" sidereal") - 1/days(t, "Jupiter sidereal"))
		assert.InDelta(t, want, days(t, c.name+" synodic"), 1e-9, c.name)
	}
	triton, _ := Lookup("Triton")
	assert.True(t, triton.Retrograde)
}
