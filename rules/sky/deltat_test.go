package sky

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Observed values in the table of Espenak and Meeus, NASA/TP-2006-214141,
// section 2.7, from memory; the polynomials are to follow them.
func TestDeltaTFollowsTheObservedValues(t *testing.T) {
	for _, c := range []struct{ year, seconds, tol float64 }{
		{-500, 17190, 20}, {0, 10580, 20}, {500, 5710, 20}, {1000, 1570, 10},
		{1500, 200, 5}, {1600, 120, 1}, {1700, 9, 1}, {1800, 14, 1},
		{1900, -3, 1}, {1950, 29, 0.5}, {1960, 33.2, 0.3}, {1970, 40.2, 0.3},
		{1980, 50.5, 0.3}, {1990, 56.9, 0.3}, {2000, 63.8, 0.3}, {2005, 64.7, 0.3},
	} {
		got, err := DeltaT(c.year)
		require.NoError(t, err)
		assert.InDelta(t, c.seconds, got, c.tol, c.year)
	}
}

// The tables' delta-T, astronomy-engine 2.1.19, to a unit of its decimal.
func TestDeltaTAgainstTheTables(t *testing.T) {
	for _, name := range []string{"solar-1950-2050.csv", "lunar-1950-2050.csv"} {
		for _, r := range readTable(t, name) {
			got := deltaT(DecimalYear(r.number(t, "tt_jd")))
			assert.InDelta(t, r.number(t, "delta_t_s"), got, 0.11, r["ut_greatest"])
		}
	}
}

func TestDeltaTHasNoGreatJumps(t *testing.T) {
	for _, s := range deltaTSegments[:len(deltaTSegments)-1] {
		assert.InDelta(t, deltaT(s.end-1e-9), deltaT(s.end), 1.5, s.end)
	}
}

func TestTimeScales(t *testing.T) {
	for jd := FirstDay; jd < EndDay; jd += 977.3 {
		tt, err := ToTT(jd)
		require.NoError(t, err)
		ut, err := ToUT(tt)
		require.NoError(t, err)
		assert.InDelta(t, jd, ut, 0.02/86400)
	}
}

func TestDaysOutsideTheSpanAreRefused(t *testing.T) {
	var span *SpanError
	for _, jd := range []float64{FirstDay - 2, EndDay + 2, nan()} {
		_, err := ToTT(jd)
		require.ErrorAs(t, err, &span)
		_, err = ToUT(jd)
		require.ErrorAs(t, err, &span)
		_, err = MeanAt(jd)
		require.ErrorAs(t, err, &span)
		_, err = SunPlace(jd)
		require.ErrorAs(t, err, &span)
		_, err = MoonPlace(jd)
		require.ErrorAs(t, err, &span)
		_, err = SunCentre(jd)
		require.ErrorAs(t, err, &span)
		_, err = EquationOfTime(jd)
		require.ErrorAs(t, err, &span)
		_, _, err = PlanetLongitude("Mars", jd)
		require.ErrorAs(t, err, &span)
		_, err = MeanAngle("tropical year", jd)
		require.ErrorAs(t, err, &span)
		_, err = Eclipses(jd, jd)
		require.ErrorAs(t, err, &span)
		_, err = Syzygies(true, jd, jd)
		require.ErrorAs(t, err, &span)
		_, err = OneThreshold(SolarEclipse, jd, jd, 16, 0)
		require.ErrorAs(t, err, &span)
	}
	for _, k := range []float64{-60000, 60000, nan()} {
		_, err := MoonPhase(k)
		require.ErrorAs(t, err, &span)
		_, err = MeanPhase(k)
		require.ErrorAs(t, err, &span)
		_, err = SyzygyAt(k)
		require.ErrorAs(t, err, &span)
		_, err = Approximate(k)
		require.ErrorAs(t, err, &span)
		_, _, err = EclipseAt(k)
		require.ErrorAs(t, err, &span)
	}
	_, err := DeltaT(-3000)
	require.ErrorAs(t, err, &span)
	assert.Contains(t, err.Error(), "lies outside the years -1999 to 3000")
	_, err = DeltaT(3500)
	require.ErrorAs(t, err, &span)
}
