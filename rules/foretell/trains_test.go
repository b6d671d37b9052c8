package foretell

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/train"
)

// errors is how often one threshold of 16.2 degrees is wrong about the 337
// eclipses of the Sun of 1950-2100, false and missed, by the error of the
// pointers in degrees: counted in the canon (Espenak and Meeus,
// NASA/TP-2006-214141).
var errors16 = []struct{ degrees, false, missed float64 }{
	{0, 4, 5}, {1, 8, 11}, {2, 18, 21}, {3, 29, 31}, {5, 48, 52}, {8, 80, 82}, {10, 100, 103}, {15, 153, 156},
}

// A model on exact hands, its node set wrong by so much, is wrong as often as
// the table has it.
func TestErrorOfTheNode(t *testing.T) {
	m := design(t, fine()+marker("season", "solar eclipse", 16.2)+marker("season", "central solar eclipse", 9.4))
	r := setOn(t, m, day(1950, 1, 1))
	for _, c := range errors16 {
		r.NodeOff = c.degrees
		w, err := r.Watch(day(1950, 1, 1), day(2101, 1, 1), Days)
		require.NoError(t, err)
		got := w.Tally(m.Markers[0], Exact)
		assert.Equal(t, 337, got.Sky)
		// the mean motions have grown by a hundredth of a degree at either end
		assert.InDelta(t, c.false, float64(got.False), 1, "%v deg", c.degrees)
		assert.InDelta(t, c.missed, float64(got.Missed), 1, "%v deg", c.degrees)
		assert.Zero(t, got.WrongDay)
	}
	// the same source for total, annular and hybrid ones, 9.4 degrees
	for degrees, want := range map[float64][2]float64{0: {4, 29}, 5: {40, 65}} {
		r.NodeOff = degrees
		w, err := r.Watch(day(1950, 1, 1), day(2101, 1, 1), Days)
		require.NoError(t, err)
		got := w.Tally(m.Markers[1], Exact)
		assert.Equal(t, 222, got.Sky)
		assert.InDelta(t, want[0], float64(got.False), 1)
		assert.InDelta(t, want[1], float64(got.Missed), 1)
	}
}

// predicted is how many wrong calls an error that grows evenly makes in so many
// years, by the table.
func predicted(perYear, years float64) float64 {
	sum := 0.0
	for y := 0.5; y < years; y++ {
		d := perYear * y
		for i := 1; i < len(errors16); i++ {
			a, b := errors16[i-1], errors16[i]
			if d <= b.degrees {
				part := (d - a.degrees) / (b.degrees - a.degrees)
				sum += (a.false + a.missed + part*(b.false+b.missed-a.false-a.missed)) / 151
				break
			}
		}
	}
	return sum
}

// Node trains beside an exact year and month. The drift is 360/P - 360/18.61335753
// degrees a year, and what the error costs is the table's, summed over the
// years. Both computed from the formula; the demo's own node of 242/13 years
// does not tell from the sky's.
func TestNodeTrains(t *testing.T) {
	for _, c := range []struct {
		name, ratio   string
		drift, tol    float64
		years         float64
		node          bool    // whether the node is to blame
		firstByDegree float64 // years until 5 degrees
	}{
		{"18.5 years", "-2/37", 0.1185, 5e-5, 100, true, 42},
		{"19 years", "-1/19", -0.394, 5e-4, 38, true, 12.7},
		{"223/12 years", "-12/223", 0.0313, 6e-5, 100, true, 160},
		{"242/13 years", "-13/242", -0.0021, 5e-5, 100, false, 2358},
	} {
		t.Run(c.name, func(t *testing.T) {
			// 235 months in 19 years are 12.5 ppm out: a third of a day in 80
			// years, and no matter for the day
			m := design(t, gears("tropical year", "sun 1/1 tropical year", "age 4131/334 synodic month", "node "+c.ratio+" lunar node")+marker("node", "solar eclipse", 16.2))
			require.Len(t, m.Markers, 1)
			own := m.Markers[0]
			drift := own.Drift()
			assert.InDelta(t, c.drift, drift, c.tol)
			assert.InEpsilon(t, c.firstByDegree, 5/abs(drift), 0.02)

			w, err := setOn(t, m, day(1950, 1, 1)).Watch(day(1950, 1, 1), day(1950, 1, 1)+c.years*sky.TropicalYearDays, Days)
			require.NoError(t, err)
			got := w.Tally(own, nil)
			want := predicted(abs(drift), c.years)
			// chance: the table is a mean over 151 years
			assert.InDelta(t, want, float64(got.WrongCalls()), 3+0.1*want)

			least := w.Least(own)
			var blamed string
			wrong := got.WrongCalls()
			for _, s := range w.Split(own) {
				if s.Hand != nil && s.Tally.WrongCalls() < wrong {
					blamed, wrong = s.Hand.Name.Text, s.Tally.WrongCalls()
				}
			}
			if c.node {
				assert.Equal(t, "node", blamed)
				assert.InDelta(t, float64(least.WrongCalls()), float64(wrong), 3)
			} else {
				assert.InDelta(t, float64(least.WrongCalls()), float64(got.WrongCalls()), 2)
			}
		})
	}
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// Half a lunation's advance and more off, the marker calls the wrong lunation of
// each season: nearly all calls are false and nearly all eclipses missed (the
// error at which it begins, 15.34 degrees, computed from the formula).
func TestWrongLunation(t *testing.T) {
	m := design(t, fine()+marker("season", "solar eclipse", 16.2))
	r := setOn(t, m, day(1950, 1, 1))
	r.NodeOff = 40
	w, err := r.Watch(day(1950, 1, 1), day(2050, 1, 1), Days)
	require.NoError(t, err)
	got := w.Tally(m.Markers[0], nil)
	assert.Zero(t, got.Foretold)
	assert.InDelta(t, 223, float64(got.False), 5)
}

// The demo: a node of 242 in 13 of its own years, which are 2.2 ppm short, and
// pointers that leave each other by a tenth of a degree over the horizon
// (computed from the formula). Its record is the arc's own.
func TestHarbourTable(t *testing.T) {
	d, problems := spec.Load("../../fixtures/designs/harbour-table/table.hcl")
	require.Empty(t, problems)
	tr := train.Solve(d)
	for _, h := range d.Hands {
		if h.Name.Text == "node" {
			drift, ok := tr.Read(h).Drift()
			require.True(t, ok)
			assert.InDelta(t, -0.0021, drift.Float(), 5e-5)
		}
	}
	m := Of(tr)
	assert.Empty(t, m.Lacks)
	r := setOn(t, m, DayOf(d.Head.Epoch))
	w, err := r.Watch(r.SetUT, r.SetUT+100*sky.TropicalYearDays, Days)
	require.NoError(t, err)
	for _, mark := range m.Markers {
		assert.InDelta(t, -0.00126, mark.Drift(), 1e-5) // +3.3 ppm of the eclipse year
		got, least := w.Tally(mark, nil), w.Least(mark)
		assert.LessOrEqual(t, got.WrongCalls()-least.WrongCalls(), 2, mark.Title())
		assert.InDelta(t, predicted(0.00126, 100), float64(got.WrongCalls()), 4, mark.Title())
		assert.Zero(t, got.WrongDay, mark.Title())
	}
}
