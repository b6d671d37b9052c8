package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The quick way finds the eclipses that the geometry of the shadow finds, each
// the same event and within its time. Every fourth century of the whole span,
// and all that the canons' tables and a model's horizon touch.
func TestQuickEclipsesAreTheSameEvents(t *testing.T) {
	spans := [][2]int{{1800, 2200}}
	for year := FirstYear; year < LastYear; year += 400 {
		spans = append(spans, [2]int{year, year + 100})
	}
	latest := 0.0
	for _, span := range spans {
		from, to := Date{span[0], 1, 1}.JulianDay(), Date{span[1], 1, 1}.JulianDay()
		want, err := Eclipses(from, to)
		require.NoError(t, err)
		got, err := QuickEclipses(from, to)
		require.NoError(t, err)
		require.Len(t, got, len(want), "%v", span)
		for i := range want {
			w, g := &want[i], &got[i]
			require.Equal(t, w.Syzygy, g.Syzygy)
			require.Equal(t, w.Saros, g.Saros)
			for _, ev := range Events() {
				require.Equal(t, w.Is(ev), g.Is(ev), "%v %s", w.Syzygy, ev)
			}
			latest = math.Max(latest, math.Abs(w.UT-g.UT))
		}
	}
	assert.Less(t, latest, QuickDays)
	assert.Greater(t, latest, QuickDays/4, "it never takes the quick way")
}

// The bounds of a span cut as those of Eclipses do, to the second.
func TestQuickEclipsesAreCutAlike(t *testing.T) {
	whole := between(t, 2020, 2029)
	for _, e := range whole {
		for _, off := range []float64{-1e-6, 0, 1e-6} {
			want, err := Eclipses(whole[0].UT, e.UT+off)
			require.NoError(t, err)
			got, err := QuickEclipses(whole[0].UT, e.UT+off)
			require.NoError(t, err)
			require.Len(t, got, len(want))
		}
	}
	none, err := QuickEclipses(whole[1].UT, whole[0].UT)
	require.NoError(t, err)
	assert.Empty(t, none)
	_, err = QuickEclipses(FirstDay-2, J2000)
	assert.ErrorAs(t, err, new(*SpanError))
}

func BenchmarkQuickHundredYears(b *testing.B) {
	from, to := Date{2027, 1, 1}.JulianDay(), Date{2127, 1, 1}.JulianDay()
	for b.Loop() {
		if list, err := QuickEclipses(from, to); err != nil || len(list) < 400 {
			b.Fatal(err)
		}
	}
}
