package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Meeus, Astronomical Algorithms, 2nd ed., examples 25.a and 47.a, to the
// digits printed; the arguments reproduced by independent code.
func TestMeanPlacesOfMeeus(t *testing.T) {
	const jde = 2448724.5
	assert.InDelta(t, -0.077221081451, Centuries(jde), 5e-13)
	m, err := MeanAt(jde)
	require.NoError(t, err)
	for _, c := range []struct {
		name      string
		want, got float64
	}{
		{"L'", 134.290182, m.Moon}, {"D", 113.842304, m.Elongation},
		{"M", 97.643514, m.SunAnomaly}, {"M'", 5.150833, m.MoonAnomaly},
		{"F", 219.889721, m.Latitude}, {"Omega", 274.400656, m.Node},
		{"perigee", 129.139544, m.Perigee}, {"Sun", 20.448082, m.Sun},
	} {
		assert.InDelta(t, c.want, c.got, 5.1e-7, c.name)
	}
	sun := MeanSun.Degrees(Centuries(2448908.5))
	assert.InDelta(t, 201.80720, sun, 5.1e-6)
	assert.InDelta(t, -2241.00603, MeanSunAnomaly.At(Centuries(2448908.5)), 1.1e-5)
	assert.InDelta(t, 278.99397, MeanSunAnomaly.Degrees(Centuries(2448908.5)), 1.1e-5)
	c, err := SunCentre(2448908.5)
	require.NoError(t, err)
	assert.InDelta(t, 199.90987, sun+c, 1.1e-5)
}

// Mean longitudes at J2000.0, Meeus, chapters 25 and 47.
func TestMeanPlacesAtJ2000(t *testing.T) {
	m, err := MeanAt(J2000)
	require.NoError(t, err)
	assert.Equal(t, MeanPlaces{
		Sun: 280.46646, Moon: 218.3164477, Node: 125.0445479, Perigee: 83.3532465,
		Elongation: 297.8501921, SunAnomaly: 357.5291092, MoonAnomaly: 134.9633964, Latitude: 93.2720950,
	}, m)
}

// The two sets agree with each other, save that Meeus's Moon holds -0.70
// arcsec of light-time (0.000195 degree).
func TestTheTwoSetsOfArguments(t *testing.T) {
	for _, c := range []struct {
		name  string
		meeus Polynomial
		iers  Argument
	}{
		{"l", MeanMoonAnomaly, ArgMoonAnomaly}, {"l'", MeanSunAnomaly, ArgSunAnomaly},
		{"F", MeanLatitude, ArgLatitude}, {"D", MeanElongation, ArgElongation}, {"Omega", MeanNode, ArgNode},
	} {
		for _, year := range []float64{1900, 2000, 2100} {
			t1 := (year - 2000) / 100
			assert.InDelta(t, 0, turn180(c.meeus.At(t1)-c.iers.Degrees(t1)), 1e-3, "%s %v", c.name, year)
		}
	}
	assert.InDelta(t, -0.000195, turn180(MeanMoon.At(0)-MeanLatitude.At(0)-MeanNode.At(0)), 5e-7)
	moon := ArgLatitude.Plus(ArgNode)
	assert.InDelta(t, 0, turn180(moon.Degrees(0)-ArgLatitude.Degrees(0)-ArgNode.Degrees(0)), 1e-9)
	// the IERS arguments in degrees, for the date of example 47.a
	assert.InDelta(t, 113.842304, ArgElongation.Degrees(-0.077221081451), 3e-4)
}

// Dates at which the mean node stood at 0 or 180 degrees, Meeus, page 344: the
// mean node within 0.05 degree at 0 h.
func TestMeanNodeDates(t *testing.T) {
	for _, c := range []struct {
		date string
		node float64
	}{
		{"1913-05-27", 0}, {"2006-06-19", 0}, {"2025-01-29", 0}, {"2043-09-10", 0},
		{"1997-02-27", 180}, {"2015-10-10", 180}, {"2034-05-21", 180},
	} {
		d, err := ParseDate(c.date)
		require.NoError(t, err)
		assert.InDelta(t, 0, turn180(MeanNode.At(Centuries(d.JulianDay()))-c.node), 0.05, c.date)
	}
}

// Planets: the rates of table 31.A in Meeus give the tropical periods of the
// catalogue, which come from ERFA 2.0.0, to a few parts in ten million.
func TestPlanetLongitudes(t *testing.T) {
	for _, p := range planetLongitudes {
		period := 360 / p.l[1] * DaysPerCentury
		assert.InEpsilon(t, days(t, p.name+" tropical"), period, 3e-6, p.name)
		got, ok, err := PlanetLongitude(p.name, J2000)
		require.NoError(t, err)
		require.True(t, ok)
		assert.InDelta(t, p.l[0], got, 1e-9)
	}
	// example 31.a: Mercury on 2065-06-24.0, from memory
	got, _, err := PlanetLongitude("Mercury", 2475460.5)
	require.NoError(t, err)
	assert.InDelta(t, 203.494701, got, 1e-6)
	_, ok, err := PlanetLongitude("Vulcan", J2000)
	require.NoError(t, err)
	assert.False(t, ok)
	for _, g := range galileanLongitudes {
		assert.InEpsilon(t, days(t, g.name), 360/g.perDay, 1e-9, g.name)
	}
}

// Each mean angle turns in its period and in its sense.
func TestMeanAnglesTurnInTheirPeriods(t *testing.T) {
	const ut = 2461041.5 // 2026-01-01
	found := 0
	for _, p := range Periods() {
		a, err := MeanAngle(p.Name, ut)
		if err != nil {
			var none *NoAngleError
			require.ErrorAs(t, err, &none, p.Name)
			continue
		}
		found++
		length, _ := p.Days.Float64()
		step := length / 8
		if length > 36525 { // precession and the solar perigee
			step = 36525
		}
		b, err := MeanAngle(p.Name, ut+step)
		require.NoError(t, err)
		want := 360 * step / length
		if p.Retrograde {
			want = -want
		}
		assert.InDelta(t, 0, turn180(b-a-want), 0.04, p.Name)
		_, err = MeanAngle(p.Name, math.Inf(1))
		assert.Error(t, err)
	}
	assert.Greater(t, found, 45)
	_, err := MeanAngle("Saros", ut)
	assert.EqualError(t, err, `"Saros" has no agreed zero mark to be set by`)
	_, err = MeanAngle("moonshine", ut)
	assert.Error(t, err)
}

// Meeus, examples 12.a and 12.b: mean sidereal time at Greenwich, from memory.
func TestSiderealTime(t *testing.T) {
	assert.InDelta(t, (13+10/60.0+46.3668/3600)*15, SiderealTime(2446895.5), 1e-6)
	assert.InDelta(t, (8+34/60.0+57.0896/3600)*15, SiderealTime(2446896.30625), 1e-6)
	// the Earth rotation angle at J2000.0, IERS Conventions 2003
	assert.InDelta(t, 0.7790572732640*360, EarthRotation(J2000), 1e-9)
}
