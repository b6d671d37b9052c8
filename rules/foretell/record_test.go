package foretell

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/train"
)

func day(year, month, day int) float64 {
	return sky.Date{Year: year, Month: month, Day: day}.JulianDay()
}

func setOn(t *testing.T, m *Model, ut float64) *Run {
	t.Helper()
	r, err := m.SetOn(ut)
	require.NoError(t, err)
	return r
}

// fine has hands within 4 ppm of the sky; node is the marker's own train.
func fine(hands ...string) string {
	return gears("synodic month", append([]string{"age 1/1 synodic month", "far 269/251 anomalistic month", "season 61/716 eclipse year"}, hands...)...)
}

// The kind by the anomaly alone, over all of 1950-2100: 100 of 104 total and
// 109 of 109 annular ones right (counted in the canon, Espenak and Meeus,
// NASA/TP-2006-214141), save those that the arc misses.
func TestKinds(t *testing.T) {
	m := design(t, fine()+marker("season", "solar eclipse", 21))
	rec, err := setOn(t, m, day(1950, 1, 1)).Record(day(1950, 1, 1), day(2101, 1, 1), Days, nil)
	require.NoError(t, err)
	assert.Equal(t, 337, rec.Tally.Foretold)
	assert.Equal(t, 209, rec.Tally.Right)
	assert.Equal(t, 4, rec.Tally.Wrong)
}

// A Moon of 59/2 days loses a day in 2.64 years (computed from the formula):
// after two days she shows every eclipse on a wrong day.
func TestWrongDay(t *testing.T) {
	m := design(t, gears("solar day", "age 2/59 synodic month", "season 100/34662 eclipse year")+marker("season", "solar eclipse", 16.2))
	rec, err := setOn(t, m, day(2027, 1, 1)).Record(day(2027, 1, 1), day(2047, 1, 1), Days, nil)
	require.NoError(t, err)
	first := 0.0
	for i := range rec.Rows {
		row := &rec.Rows[i]
		if row.Solar && row.WrongDay && first == 0 {
			first = (row.UT() - day(2027, 1, 1)) / 365.25
		}
		if off, ok := row.Off(); ok {
			years := (row.UT() - day(2027, 1, 1)) / 365.2422
			assert.InDelta(t, -years/2.64, off, 0.7, "the mean Moon against the true one")
		}
	}
	assert.Greater(t, first, (Days-0.7)*2.64)
	assert.Less(t, first, (Days+0.7)*2.64)
	assert.GreaterOrEqual(t, rec.Tally.WrongDay, 28) // of 45, the first years' five and the arc's own left out
	assert.LessOrEqual(t, rec.Tally.WrongDay, rec.Tally.Missed)
	assert.Less(t, rec.Tally.Foretold, 14)
	require.NotNil(t, rec.FirstOfHands)
	// a wider margin lets them pass
	rec, err = setOn(t, m, day(2027, 1, 1)).Record(day(2027, 1, 1), day(2047, 1, 1), 9, nil)
	require.NoError(t, err)
	assert.Zero(t, rec.Tally.WrongDay)
	assert.Greater(t, rec.Tally.Foretold, 40)
}

// What a check counts quickly is what the almanac counts in full.
func TestWatchCountsAsRecord(t *testing.T) {
	d, problems := spec.Load("../../fixtures/designs/harbour-table/table.hcl")
	require.Empty(t, problems)
	models := []*Model{
		Of(train.Solve(d)),
		design(t, fine("node -1/230 lunar node", "sun 1000/12368 tropical year")+marker("node", "umbral lunar eclipse", 9)+marker("season", "central solar eclipse", 9)),
		design(t, gears("solar day", "age 2/59 synodic month", "season 100/34662 eclipse year")+marker("season", "total lunar eclipse", 6)),
	}
	for _, m := range models {
		for _, from := range []float64{day(1700, 3, 1), day(2027, 1, 1)} {
			r := setOn(t, m, from)
			rec, err := r.Record(from, from+30000, Days, nil)
			require.NoError(t, err)
			w, err := r.Watch(from, from+30000, Days)
			require.NoError(t, err)
			for i, mark := range m.Markers {
				want := rec.Marks[i]
				want.Right, want.Wrong = 0, 0
				got := w.Tally(mark, nil)
				got.Right, got.Wrong = 0, 0
				assert.Equal(t, want, got, mark.Title())
			}
		}
	}
}

// Spans that join make the whole, wherever they are cut.
func TestRecordsJoin(t *testing.T) {
	m := design(t, gears("solar day", "age 2000/59063 synodic month", "season 100/34700 eclipse year")+marker("season", "solar eclipse", 17)+marker("season", "umbral lunar eclipse", 12))
	r := setOn(t, m, day(2000, 1, 1))
	from, to := day(2000, 1, 1), day(2090, 1, 1)
	whole, err := r.Record(from, to, Days, nil)
	require.NoError(t, err)
	var rows []Row
	sum := Tally{}
	for at := from; at < to; at += 777.7 {
		rec, err := r.Record(at, min(at+777.7, to), Days, nil)
		require.NoError(t, err)
		rows = append(rows, rec.Rows...)
		for i := range rec.Rows {
			sum.Add(&rec.Rows[i])
		}
	}
	assert.Equal(t, whole.Tally, sum)
	require.Len(t, rows, len(whole.Rows))
	for i := range rows {
		assert.Equal(t, whole.Rows[i].Verdict, rows[i].Verdict)
		assert.InDelta(t, whole.Rows[i].UT(), rows[i].UT(), 1e-6)
	}
	assert.Equal(t, whole.Tally.Sky, whole.Tally.Foretold+whole.Tally.Missed)
}

// Without markers or hands the sky's eclipses are still told.
func TestRecordWithoutHands(t *testing.T) {
	m := design(t, "design { title = \"Nothing\" }\n")
	rec, err := setOn(t, m, day(2001, 1, 1)).Record(day(2001, 1, 1), day(2101, 1, 1), Days, nil)
	require.NoError(t, err)
	assert.Len(t, rec.Rows, 224+228) // Espenak and Meeus, NASA/TP-2006-214141 and NASA/TP-2009-214172
	assert.Zero(t, rec.Tally)
	assert.Nil(t, rec.First)
}

// Years outside -1999 to 3000 are refused, and spans that run backwards.
func TestSpans(t *testing.T) {
	m := design(t, fine()+marker("season", "solar eclipse", 16.2))
	_, err := m.SetOn(day(3001, 1, 1) + 2)
	assert.ErrorAs(t, err, new(*sky.SpanError))
	r := setOn(t, m, day(2027, 1, 1))
	_, err = r.Record(day(2027, 1, 1), day(3001, 1, 2), Days, nil)
	assert.ErrorAs(t, err, new(*sky.SpanError))
	_, err = r.Watch(sky.FirstDay-1, day(2027, 1, 1), Days)
	assert.ErrorAs(t, err, new(*sky.SpanError))
	_, err = r.Record(day(2027, 1, 1), day(2026, 1, 1), Days, nil)
	assert.ErrorIs(t, err, ErrSpan)
	// to the very ends, and back in time from the setting
	var done []float64
	rec, err := r.Record(sky.FirstDay, sky.FirstDay+20000, Days, func(x float64) { done = append(done, x) })
	require.NoError(t, err)
	assert.NotEmpty(t, rec.Rows)
	assert.Equal(t, 1.0, done[len(done)-1])
	_, err = r.Record(sky.EndDay-20000, sky.EndDay, Days, nil)
	require.NoError(t, err)
}

// Bounds that no one means do no harm.
func TestAnyDays(t *testing.T) {
	m := design(t, fine()+marker("season", "solar eclipse", 16.2))
	r := setOn(t, m, day(2027, 1, 1))
	for days, foretold := range map[float64]bool{-5: false, 0: false, 1e12: true} {
		w, err := r.Watch(day(2027, 1, 1), day(2037, 1, 1), days)
		require.NoError(t, err)
		assert.Equal(t, foretold, w.Tally(m.Markers[0], nil).Foretold > 0, "%v", days)
	}
}

// A date of a design is of the Gregorian calendar, in UT.
func TestDayOf(t *testing.T) {
	for text, want := range map[string]float64{
		"2000-01-01T12:00": 2451545, "2027-01-01": 2461406.5, "1582-10-15": 2299160.5, "1582-10-14": 2299159.5,
		"2027-01-01T01:00+02:00": 2461406.5 - 1.0/24,
	} {
		d, err := spec.ParseDate(text)
		require.NoError(t, err)
		assert.InDelta(t, want, DayOf(d), 1e-9, text)
	}
}

func BenchmarkWatch(b *testing.B) {
	d, _ := spec.Load("../../fixtures/designs/harbour-table/table.hcl")
	m := Of(train.Solve(d))
	r, _ := m.SetOn(DayOf(d.Head.Epoch))
	for b.Loop() {
		quickly.kept[0].span, quickly.kept[1].span = span{}, span{}
		quickly.kept[2].span, quickly.kept[3].span = span{}, span{}
		w, err := r.Watch(r.SetUT, r.SetUT+36524, Days)
		if err != nil {
			b.Fatal(err)
		}
		for _, mark := range m.Markers {
			w.Tally(mark, nil)
		}
	}
}
