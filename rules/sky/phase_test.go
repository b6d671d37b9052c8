package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Meeus, Astronomical Algorithms, 2nd ed., example 49.a, to the digits printed.
func TestNewMoonOfMeeus(t *testing.T) {
	k := LunationNear(1977.13, 0)
	require.Equal(t, -283.0, k)
	mean, err := MeanPhase(k)
	require.NoError(t, err)
	assert.InDelta(t, 2443192.94102, mean, 5.1e-6)
	tt, err := MoonPhase(k)
	require.NoError(t, err)
	assert.InDelta(t, 2443192.65118, tt, 5.1e-6)
	a := lunationAt(k)
	for _, c := range []struct{ want, got float64 }{
		{45.7375, a.m}, {95.3722, a.mm}, {120.9584, a.f}, {207.3176, a.node},
	} {
		assert.InDelta(t, c.want, turn360(c.got), 5.1e-5)
	}
}

// Meeus, example 49.b, from memory: the first last quarter of 2044.
func TestLastQuarterOfMeeus(t *testing.T) {
	k := LunationNear(2044.04, 0.75)
	require.Equal(t, 544.75, k)
	tt, err := MoonPhase(k)
	require.NoError(t, err)
	assert.InDelta(t, 2467636.49186, tt, 5.1e-6)
}

// The phases of the series agree with the places of Sun and Moon to a minute,
// in our centuries.
func TestPhasesAgreeWithPlaces(t *testing.T) {
	for k := -1236.0; k < 1237; k += 8.25 {
		tt, err := MoonPhase(k)
		require.NoError(t, err)
		sun, err := SunPlace(tt)
		require.NoError(t, err)
		moon, err := MoonPlace(tt)
		require.NoError(t, err)
		off := turn180(moon.Longitude - sun.Longitude - 360*(k-math.Floor(k)))
		assert.InDelta(t, 0, off/12.19*1440, 1.2, "minutes at k %v", k)
	}
}

// Synodic months from one new moon to the next in 1900-2100: from 29.2744 to
// 29.8298 d, and 29.53058886 d by a straight line through 2474 new moons, both
// astronomy-engine 2.1.19.
func TestSynodicMonthsOfTwoCenturies(t *testing.T) {
	var times []float64
	for k := LunationNear(1900, 0) - 2; len(times) < 2474; k++ {
		tt, err := MoonPhase(k)
		require.NoError(t, err)
		if tt >= (Date{1900, 1, 1}).JulianDay() {
			times = append(times, tt)
		}
	}
	least, most := math.Inf(1), 0.0
	var sx, sy, sxx, sxy float64
	n := float64(len(times))
	for i, tt := range times {
		x, y := float64(i)-n/2, tt-times[0]
		sx, sy, sxx, sxy = sx+x, sy+y, sxx+x*x, sxy+x*y
		if i > 0 {
			least, most = math.Min(least, tt-times[i-1]), math.Max(most, tt-times[i-1])
		}
	}
	assert.InDelta(t, 29.2744, least, 2e-4)
	assert.InDelta(t, 29.8298, most, 2e-4)
	assert.InDelta(t, 29.53058886, (n*sxy-sx*sy)/(n*sxx-sx*sx), 2e-6)
}

// Mean phases step by the synodic month, and carry the mean arguments of the
// same moment.
func TestSyzygiesCarryTheMeanArguments(t *testing.T) {
	from, to := Date{1950, 1, 1}.JulianDay(), Date{2101, 1, 1}.JulianDay()
	for _, full := range []bool{false, true} {
		list, err := Syzygies(full, from, to)
		require.NoError(t, err)
		require.Len(t, list, 1868)
		for i, s := range list {
			require.Equal(t, full, s.Full())
			m, err := MeanAt(s.MeanTT)
			require.NoError(t, err)
			sun := m.Sun
			if full {
				sun += 180
			}
			// the syzygy is one of the Sun as seen, 20.5 arcsec behind by aberration
			assert.InDelta(t, -20.5/3600, turn180(2*(s.NodeDistance-sun+m.Node))/2, 2e-4)
			assert.InDelta(t, 0, turn180(m.MoonAnomaly-s.Anomaly), 2e-3)
			assert.Equal(t, s.Ascending, math.Abs(turn180(sun-m.Node)) < 90)
			if i > 0 {
				assert.InDelta(t, SynodicMonthDays, s.MeanTT-list[i-1].MeanTT, 1e-5)
				step := turn180(2*(s.NodeDistance-list[i-1].NodeDistance)) / 2
				assert.InDelta(t, 30.6705, step, 5e-5)
			}
		}
	}
}
