package sky

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func count(list []Eclipse) map[string]int {
	n := map[string]int{}
	for _, e := range list {
		body := "lunar"
		if e.Solar {
			body = "solar"
		}
		n[body]++
		n[body+" "+string(e.Kind)]++
	}
	return n
}

// Counts of the canons of Espenak and Meeus, NASA/TP-2006-214141 and
// NASA/TP-2009-214172.
func TestCountsOfTheCanons(t *testing.T) {
	assert.Equal(t, map[string]int{
		"solar": 337, "solar partial": 115, "solar annular": 109, "solar total": 104, "solar hybrid": 9,
		"lunar": 344, "lunar penumbral": 129, "lunar partial": 86, "lunar total": 129,
	}, count(between(t, 1950, 2100)))
	assert.Equal(t, map[string]int{
		"solar": 224, "solar partial": 77, "solar annular": 72, "solar total": 68, "solar hybrid": 7,
		"lunar": 228, "lunar penumbral": 86, "lunar partial": 57, "lunar total": 85,
	}, count(between(t, 2001, 2100)))
}

// The whole of five thousand years: 11898 and 12064 eclipses in the canons; the
// kinds from memory. A few grazers may fall on the other side.
func TestCountsOfFiveThousandYears(t *testing.T) {
	n := count(between(t, FirstYear, LastYear))
	for name, want := range map[string]float64{
		"solar": 11898, "solar partial": 4200, "solar annular": 3956, "solar total": 3173, "solar hybrid": 569,
		"lunar": 12064, "lunar penumbral": 4378, "lunar partial": 4207, "lunar total": 3479,
	} {
		assert.InDelta(t, want, float64(n[name]), 2, name)
	}
}

// Eclipses without a central line, and hybrids, of 1950-2100 in the canon
// (NASA/TP-2006-214141).
func TestRareKinds(t *testing.T) {
	var edge, hybrid []string
	for _, e := range only(between(t, 1950, 2100), true) {
		d, _ := dateOf(e.UT)
		if e.Kind == Hybrid {
			hybrid = append(hybrid, d.String())
		}
		if e.Kind != Partial && !e.Central {
			edge = append(edge, fmt.Sprint(d, " ", e.Kind))
		}
	}
	assert.Equal(t, []string{
		"1950-03-18 annular", "1957-04-30 annular", "1957-10-23 total", "1967-11-02 total",
		"2014-04-29 annular", "2043-04-09 total", "2043-10-03 annular",
	}, edge)
	assert.Equal(t, []string{
		"1986-10-03", "1987-03-29", "2005-04-08", "2013-11-03", "2023-04-20",
		"2031-11-14", "2049-11-25", "2050-05-20", "2067-12-06",
	}, hybrid)
}

// Spacing, eclipses in a year and Saros pairs, counted in the canon's 337 solar
// eclipses of 1950-2100.
func TestSpacingOfSolarEclipses(t *testing.T) {
	list := only(between(t, 1950, 2100), true)
	spacing, years, perYear := map[float64]int{}, map[int]int{}, map[int]int{}
	last := map[int]float64{}
	for i, e := range list {
		d, _ := dateOf(e.UT)
		years[d.Year]++
		if i > 0 {
			spacing[e.K-list[i-1].K]++
		}
		if k, ok := last[e.Saros]; ok {
			assert.Equal(t, 223.0, e.K-k, "Saros %d", e.Saros)
		}
		last[e.Saros] = e.K
	}
	for _, n := range years {
		perYear[n]++
	}
	assert.Equal(t, map[float64]int{6: 257, 5: 60, 1: 19}, spacing)
	assert.Equal(t, map[int]int{2: 125, 3: 17, 4: 9}, perYear)
	assert.Len(t, last, 44)
}

// Single eclipses: NASA/TP-2006-214141 and NASA/TP-2009-214172. Times in UT of
// the future hang on delta-T.
func TestKnownEclipses(t *testing.T) {
	for _, c := range []struct {
		date, clock string
		kind        Kind
		gamma       float64
	}{
		{"1999-08-11", "11:03:03", Total, 0.5064},
		{"2009-07-22", "02:35:20", Total, 0.0696},
		{"2017-08-21", "18:25:31", Total, 0.4369},
		{"2023-04-20", "04:16:43", Hybrid, -0.3951},
		{"2023-10-14", "17:59:28", Annular, 0.3753},
		{"2024-04-08", "18:17:20", Total, 0.3432},
		{"2026-08-12", "17:45:48", Total, 0.8976},
		{"2027-08-02", "10:06:36", Total, 0.1418},
		{"2018-07-27", "20:21:42", Total, math.NaN()},
		{"2022-11-08", "10:59:07", Total, math.NaN()},
		{"2025-03-14", "06:58:42", Total, math.NaN()},
	} {
		d, err := ParseDate(c.date)
		require.NoError(t, err)
		list, err := Eclipses(d.JulianDay(), d.JulianDay()+1)
		require.NoError(t, err)
		require.Len(t, list, 1, c.date)
		e := list[0]
		assert.Equal(t, c.kind, e.Kind, c.date)
		var h, m, s float64
		_, err = fmt.Sscanf(c.clock, "%f:%f:%f", &h, &m, &s)
		require.NoError(t, err)
		// 20 s: the printed UT of the last ones stands on a newer delta-T
		assert.InDelta(t, h*3600+m*60+s, (e.UT-d.JulianDay())*86400, 20, c.date)
		if !math.IsNaN(c.gamma) {
			assert.InDelta(t, c.gamma, e.Gamma, 0.0003, c.date)
			continue
		}
		assert.False(t, e.Solar)
	}
}

// Magnitudes of solar eclipses and halves of a lunar one in the canons, from
// memory.
func TestMagnitudesAndDurations(t *testing.T) {
	for date, want := range map[string]float64{
		"1999-08-11": 1.0286, "2009-07-22": 1.0799, "2017-08-21": 1.0306, "2024-04-08": 1.0566,
		"2023-10-14": 0.9520, "2023-04-20": 1.0132, "2011-01-04": 0.8576, "2025-03-29": 0.9376,
		"2022-10-25": 0.8619, "2025-09-21": 0.8550,
	} {
		d, err := ParseDate(date)
		require.NoError(t, err)
		list, err := Eclipses(d.JulianDay(), d.JulianDay()+1)
		require.NoError(t, err)
		require.Len(t, list, 1, date)
		assert.InDelta(t, want, list[0].Magnitude, 0.0012, date)
	}
	list, err := Eclipses(Date{2018, 7, 27}.JulianDay(), Date{2018, 7, 28}.JulianDay())
	require.NoError(t, err)
	require.Len(t, list, 1)
	assert.InDelta(t, 373.8/2, list[0].SemiPenumbral, 0.3)
	assert.InDelta(t, 234.5/2, list[0].SemiPartial, 0.3)
	assert.InDelta(t, 102.95/2, list[0].SemiTotal, 0.3)
}

// A span is cut where it says, and the parts make the whole.
func TestSpansJoin(t *testing.T) {
	whole := between(t, 1990, 2009)
	var parts []Eclipse
	for _, y := range []int{1990, 1995, 2000, 2005} {
		parts = append(parts, between(t, y, y+4)...)
	}
	assert.Equal(t, whole, parts)
	cut := whole[10].UT
	first, err := Eclipses(cut-1, cut)
	require.NoError(t, err)
	assert.Empty(t, first)
	second, err := Eclipses(cut, cut+1)
	require.NoError(t, err)
	assert.Equal(t, whole[10:11], second)
	none, err := Eclipses(cut, cut-1)
	require.NoError(t, err)
	assert.Empty(t, none)
	e, ok, err := EclipseAt(whole[10].K)
	require.NoError(t, err)
	assert.True(t, ok)
	assert.Equal(t, whole[10], e)
	// at both ends of the span
	for _, jd := range []float64{FirstDay, EndDay - 400} {
		list, err := Eclipses(jd, jd+400)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, len(list), 4)
	}
}

func BenchmarkThousandYears(b *testing.B) {
	from, to := Date{1500, 1, 1}.JulianDay(), Date{2500, 1, 1}.JulianDay()
	for b.Loop() {
		if list, err := Eclipses(from, to); err != nil || len(list) < 4000 {
			b.Fatal(err)
		}
	}
}
