package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// measured finds the limit in a list of eclipses: the least distance of a
// syzygy without the event, the greatest of one with it. Total and annular
// eclipses without a central line do not count as certain.
func measured(t *testing.T, ev Event, from, to int, list []Eclipse) Limit {
	t.Helper()
	at := map[float64]*Eclipse{}
	for i := range list {
		at[list[i].K] = &list[i]
	}
	syzygies, err := Syzygies(ev.Lunar(), Date{from, 1, 1}.JulianDay(), Date{to + 1, 1, 1}.JulianDay())
	require.NoError(t, err)
	l := Limit{Certain: 90}
	for _, s := range syzygies {
		d := math.Abs(s.NodeDistance)
		e := at[s.K]
		came := e != nil && e.Is(ev)
		if came {
			l.Impossible = math.Max(l.Impossible, d)
		}
		if !came || ev == CentralSolarEclipse && !e.Central {
			l.Certain = math.Min(l.Certain, d)
		}
	}
	return l
}

// The limits for mean pointers, computed from the formula over the eclipses.
func TestMeanLimits(t *testing.T) {
	for _, span := range []struct {
		from, to int
		limit    func(Event) Limit
	}{{FirstYear, LastYear, MeanLimit}, {1950, 2100, MeanLimitNear}} {
		list := between(t, span.from, span.to)
		for _, ev := range Events() {
			if span.from == FirstYear {
				n := 0
				for i := range list {
					if list[i].Is(ev) {
						n++
					}
				}
				assert.InDelta(t, float64(n)/61843, Frequency(ev), 4.0/61843, ev)
			}
			got, want := measured(t, ev, span.from, span.to, list), span.limit(ev)
			assert.InDelta(t, want.Certain, got.Certain, 0.0051, ev)
			assert.InDelta(t, want.Impossible, got.Impossible, 0.0051, ev)
		}
	}
	assert.Zero(t, MeanLimit("high tide"))
	assert.Zero(t, MeanLimitNear("high tide"))
	assert.Zero(t, Frequency("high tide"))
}

// Meeus, chapter 54, from memory: a solar eclipse is certain below 13.9 degrees
// and impossible beyond 21.0.
func TestMeeussRuleHoldsForMeanPointers(t *testing.T) {
	l := MeanLimit(SolarEclipse)
	assert.Greater(t, l.Certain, 13.9)
	assert.Less(t, l.Impossible, 21.0)
}

// The limits for the true Sun and node: computed from the formula, and as
// published.
func TestTrueLimits(t *testing.T) {
	for _, c := range []struct {
		event               Event
		certain, impossible float64
		tol                 float64
		source              string
	}{
		{SolarEclipse, 15.31, 18.36, 0.0051, "computed from the formula"},
		{CentralSolarEclipse, 9.70, 12.01, 0.0051, "computed from the formula"},
		{UmbralLunarEclipse, 9.61, 12.25, 0.0051, "computed from the formula"},
		{TotalLunarEclipse, 4.29, 5.75, 0.0061, "computed from the formula"},
		{LunarEclipse, 15.7, 18.6, 0.15, "computed from the formula by another enlargement of the shadow"},
		{SolarEclipse, 15.35, 18.5, 0.15, "read in published tables"},
		{SolarEclipse, 15.35, 18.52, 0.17, "D. Steel, Eclipse, read in an excerpt"},
		{SolarEclipse, 30.7 / 2, 18.4, 0.05, "Kelley and Milone, Exploring Ancient Skies, read in an excerpt; Oxford reference"},
		{CentralSolarEclipse, 10, 12, 0.31, "read in published tables"},
		{CentralSolarEclipse, 9.9, 11.8, 0.22, "from memory"},
		{UmbralLunarEclipse, 9.5, 12.25, 0.12, "read in published tables"},
		{UmbralLunarEclipse, 9.5, 12.2, 0.12, "read in published tables"},
		{TotalLunarEclipse, 3.75, 6, 0.55, "read in published tables; they take another inclination"},
		{TotalLunarEclipse, 3.75, 5.9, 0.55, "read in published tables; they take another inclination"},
	} {
		l := TrueLimit(c.event)
		assert.InDelta(t, c.certain, l.Certain, c.tol, "%s (%s)", c.event, c.source)
		assert.InDelta(t, c.impossible, l.Impossible, c.tol, "%s (%s)", c.event, c.source)
	}
	assert.Zero(t, TrueLimit("high tide"))
}

// What an error of the pointers leaves, computed from the formula: nothing is
// certain any more at 1.9, 7.8, 8.0 and 14.0 degrees.
func TestLimitsWithError(t *testing.T) {
	for ev, gone := range map[Event]float64{
		TotalLunarEclipse: 1.94, CentralSolarEclipse: 7.84, UmbralLunarEclipse: 7.99, SolarEclipse: 13.99,
	} {
		l := MeanLimit(ev)
		assert.Zero(t, l.WithError(gone+0.01).Certain, ev)
		assert.Positive(t, l.WithError(-gone+0.01).Certain, ev)
		assert.InDelta(t, l.Impossible+gone, l.WithError(gone).Impossible, 1e-9, ev)
	}
	assert.Equal(t, Limit{13.99 - 3, 20.37 + 3}, MeanLimit(SolarEclipse).WithError(3))
}

// The kind told by the anomaly alone, 1950-2100, counted in the canon
// (NASA/TP-2006-214141).
func TestKindByAnomaly(t *testing.T) {
	right, all := map[Kind]int{}, map[Kind]int{}
	span := map[Kind][2]float64{Total: {360, 0}, Annular: {360, 0}, Hybrid: {360, 0}}
	for _, e := range only(between(t, 1950, 2100), true) {
		all[e.Kind]++
		if KindByAnomaly(e.Anomaly) == e.Kind {
			right[e.Kind]++
		}
		s, a := span[e.Kind], math.Abs(turn180(e.Anomaly))
		span[e.Kind] = [2]float64{math.Min(s[0], a), math.Max(s[1], a)}
	}
	assert.Equal(t, 104, all[Total])
	assert.Equal(t, 100, right[Total])
	assert.Equal(t, 109, all[Annular])
	assert.Equal(t, 109, right[Annular])
	assert.InDelta(t, 82.7, span[Total][1], 0.051)
	assert.InDelta(t, 75.0, span[Annular][0], 0.051)
	assert.InDelta(t, 63.7, span[Hybrid][0], 0.051)
	assert.InDelta(t, 85.5, span[Hybrid][1], 0.051)
}

// One threshold over the lunations of 1950-2100, counted in the canon: false
// and missed by the error of the pointers.
func TestOneThreshold(t *testing.T) {
	from, to := Date{1950, 1, 1}.JulianDay(), Date{2101, 1, 1}.JulianDay()
	for _, c := range []struct {
		event             Event
		threshold, offset float64
		want              Tally
	}{
		{SolarEclipse, 16.2, 0, Tally{1868, 337, 4, 5}},
		{SolarEclipse, 16.2, 1, Tally{1868, 337, 8, 11}},
		{SolarEclipse, 16.2, 2, Tally{1868, 337, 18, 21}},
		{SolarEclipse, 16.2, 3, Tally{1868, 337, 29, 31}},
		{SolarEclipse, 16.2, 5, Tally{1868, 337, 48, 52}},
		{SolarEclipse, 16.2, 8, Tally{1868, 337, 80, 82}},
		{SolarEclipse, 16.2, 10, Tally{1868, 337, 100, 103}},
		{SolarEclipse, 16.2, 15, Tally{1868, 337, 153, 156}},
		{CentralSolarEclipse, 9.4, 0, Tally{1868, 222, 4, 29}},
		{CentralSolarEclipse, 9.4, 5, Tally{1868, 222, 40, 65}},
	} {
		got, err := OneThreshold(c.event, from, to, c.threshold, c.offset)
		require.NoError(t, err)
		assert.Equal(t, c.want, got, "%s %v", c.event, c.offset)
		if c.event == SolarEclipse && c.offset >= 5 { // about 4d/360 of all lunations
			wrong := float64(got.False + got.Missed)
			assert.InDelta(t, 4*c.offset/360*1868, wrong, 6)
			assert.InDelta(t, 0.137*c.offset*151, wrong, 6)
		}
	}
}

// The best arc of each event, found by trying all of 1 to 22 degrees over the
// lunations of 1950-2100; a tenth of a degree more or less serves as well or
// worse.
func TestBestArc(t *testing.T) {
	from, to := Date{1950, 1, 1}.JulianDay(), Date{2101, 1, 1}.JulianDay()
	list := between(t, 1950, 2100)
	at := map[float64]*Eclipse{}
	for i := range list {
		at[list[i].K] = &list[i]
	}
	for ev, least := range map[Event]int{SolarEclipse: 9, CentralSolarEclipse: 33, LunarEclipse: 10, UmbralLunarEclipse: 33, TotalLunarEclipse: 16} {
		syzygies, err := Syzygies(ev.Lunar(), from, to)
		require.NoError(t, err)
		wrong := map[int]int{}
		best := math.MaxInt
		for tenth := 10; tenth <= 220; tenth++ {
			for _, s := range syzygies {
				e := at[s.K]
				if (math.Abs(s.NodeDistance) < float64(tenth)/10) != (e != nil && e.Is(ev)) {
					wrong[tenth]++
				}
			}
			best = min(best, wrong[tenth])
		}
		assert.Equal(t, least, best, ev)
		assert.Equal(t, best, wrong[int(math.Round(BestArc(ev)*10))], ev)
	}
	assert.Zero(t, BestArc("high tide"))
}
