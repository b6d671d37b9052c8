package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The fundamental arguments at t = 0.8 and -0.3 in radians, computed with ERFA
// 2.0.0 (eraFal03, eraFalp03, eraFaf03, eraFad03, eraFaom03).
func TestArgumentsAgainstERFA(t *testing.T) {
	args := []Argument{ArgMoonAnomaly, ArgSunAnomaly, ArgLatitude, ArgElongation, ArgNode}
	for _, c := range []struct {
		t    float64
		want [5]float64
	}{
		{0.8, [5]float64{5.13236975110911, 6.22679797350553, 0.259771136675145, 1.94670920539721, -5.9736184409513}},
		{-0.3, [5]float64{-1.82729111877912, -0.0381527576950278, -2.57145407080539, -1.43611621356961, 6.02637093487713}},
	} {
		for i, a := range args {
			assert.InDelta(t, 0, turn180(a.Degrees(c.t)-c.want[i]/degree)*degree, 1e-11, "argument %d at %v", i, c.t)
		}
	}
}

// Obliquity, Earth rotation and sidereal time: ERFA 2.0.0 (eraObl80, eraEra00,
// eraGmst82).
func TestRotationAgainstERFA(t *testing.T) {
	assert.InDelta(t, 23.439291111111, MeanObliquity(J2000), 2e-8)
	assert.InDelta(t, 23.443401321193, MeanObliquity(2440000.5), 2e-8)
	assert.InDelta(t, 23.049159552167, EarthRotation(2454388.5), 1e-9)
	assert.InDelta(t, 23.148906761343, SiderealTime(2454388.5), 1e-7)
}

// Figures of the Moon's orbit against one another, computed from the formula,
// and against Meeus's tables 47.A and 47.B.
func TestOrbitConstants(t *testing.T) {
	assert.InDelta(t, MoonTwoBodyEquation, 2*MoonEccentricity/degree, 5e-3)
	assert.InDelta(t, SunEquationOfCentre, 2*SunEccentricity/degree, 5e-4)
	assert.InDelta(t, MoonEccentricity, (MoonApogee-MoonPerigee)/(MoonApogee+MoonPerigee), 2e-4)
	assert.True(t, MoonInclinationMin < MoonInclination && MoonInclination < MoonInclinationMax)
	assert.InDelta(t, Obliquity, ObliquityIAU2006, 2e-5)
	assert.InDelta(t, 23.4393, Obliquity, 5e-5)

	term := func(d, m, mm, f int8) float64 {
		for _, w := range moonTerms {
			if w.d == d && w.m == m && w.mm == mm && w.f == f {
				return float64(w.longitude) / 1e6
			}
		}
		t.Fatal("no such term")
		return 0
	}
	assert.Equal(t, MoonEquationOfCentre, term(0, 0, 1, 0))
	assert.Equal(t, MoonEvection, term(2, 0, -1, 0))
	assert.Equal(t, MoonVariation, term(2, 0, 0, 0))
	assert.Equal(t, MoonSecondEquationCentre, term(0, 0, 2, 0))
	assert.Equal(t, MoonAnnualEquation, term(0, 1, 0, 0))
	assert.Equal(t, MoonLatitude, float64(latTerms[0].amplitude)/1e6)
}

// A body whose axis leans beyond the right angle turns backwards, and its
// orbit is the one whose period the catalogue holds (Meeus, table 31.A).
func TestBodies(t *testing.T) {
	list := Bodies()
	require.Len(t, list, 9)
	previous := 0.0
	for _, b := range list {
		p, ok := Lookup(b.Name + " rotation")
		require.True(t, ok, b.Name)
		assert.Equal(t, b.Tilt > 90, p.Retrograde, b.Name)
		period := days(t, b.Name+" sidereal")
		assert.Greater(t, period, previous, b.Name)
		previous = period
		assert.True(t, b.Eccentricity > 0 && b.Eccentricity < 0.25 && b.Inclination < 18, b.Name)
	}
	earth, mercury := list[2], list[0]
	assert.InDelta(t, SunEccentricity, earth.Eccentricity, 1e-6)
	assert.InDelta(t, Obliquity, earth.Tilt, 1e-5)
	assert.Equal(t, Body{"Mercury", 0.034, 7.004986, 0.205632}, mercury)
	list[0].Name = "changed"
	assert.Equal(t, "Mercury", Bodies()[0].Name)
}

func TestTurns(t *testing.T) {
	for _, c := range []struct{ in, out float64 }{
		{0, 0}, {360, 0}, {-1e-20, 0}, {-90, 270}, {725, 5}, {359.5, 359.5}, {-720, 0},
	} {
		assert.Equal(t, c.out, turn360(c.in), c.in)
	}
	for a := -1e7; a < 1e7; a += 12345.678 {
		got := turn360(a)
		assert.True(t, got >= 0 && got < 360)
		want := math.Mod(a, 360)
		if want < 0 {
			want += 360
		}
		assert.InDelta(t, want, got, 1e-6)
		half := turn180(a)
		assert.True(t, half >= -180 && half < 180)
	}
}
