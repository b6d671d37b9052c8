package setting_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/setting"
	"wheelwork/rules/sky"
	"wheelwork/spec/exact"
)

// showing is a design with one hand on the clock's arbor.
func showing(name, more string) string {
	return fmt.Sprintf(`
design { title = "one hand" }
arbor "a" {}
clock {
  on     = "a"
  period = "1 d"
}
hand "h" {
  on    = "a"
  shows = "%s"
%s}
`, name, more)
}

// The worked examples of J. Meeus, Astronomical Algorithms (2nd ed.), as a hand
// shows them: 47.a with its node and perigee, 25.a, 49.a, 31.a and 12.a. The
// figures of 31.a and 12.a are from memory. Retrograde hands turn the other way,
// so that their angle is 360 degrees less the longitude.
func TestWorkedExamples(t *testing.T) {
	const (
		e47 = 2448724.5     // 1992-04-12.0 TD
		e25 = 2448908.5     // 1992-10-13.0 TD
		e31 = 2475460.5     // 2065-06-24.0 TD
		e49 = 2443192.94102 // mean new moon of February 1977
	)
	for _, c := range []struct {
		shows  string
		jde    float64
		want   float64
		within float64
	}{
		{"tropical month", e47, 134.290182, 2e-6},
		{"synodic month", e47, 113.842304, 2e-6},
		{"spring-neap cycle", e47, 2 * 113.842304, 4e-6},
		{"anomalistic year", e47, 97.643514, 2e-6},
		{"anomalistic month", e47, 5.150833, 2e-6},
		{"draconic month", e47, 219.889721, 2e-6},
		{"lunar node", e47, 360 - 274.400656, 2e-6},
		{"lunar apse", e47, 129.139544, 2e-6},
		{"tropical year", e47, 20.448082, 2e-6},
		{"eclipse year", e47, 20.448082 - 274.400656 + 360, 4e-6},
		{"full-moon cycle", e47, 20.448082 - 129.139544 + 360, 4e-6},
		{"tropical year", e25, 201.80720, 1e-5},
		{"anomalistic year", e25, 278.99397, 1e-5},
		{"Mercury tropical", e31, 203.494701, 2e-6},
		// The mean phase of chapter 49 is that of the light that reaches us: the Sun's
		// aberration is in it, 0.0057 degrees.
		{"synodic month", e49, 0, 0.007},
	} {
		s := on(t, solved(t, showing(c.shows, "")), dynamical(t, c.jde))
		h := hand(t, s, "h")
		require.Empty(t, h.Why, c.shows)
		assert.InDelta(t, 0, apart(c.want, h.Degrees), c.within, c.shows)
	}
	// 1987-04-10 at 0 h UT: 13 h 10 m 46.3668 s
	s := on(t, solved(t, showing("sidereal day", "")), day(t, "1987-04-10", 0))
	assert.InDelta(t, 15*(13+10.0/60+46.3668/3600), hand(t, s, "h").Degrees, 1e-6)
	// and at 19:21:00, 8 h 34 m 57.0896 s
	s = on(t, solved(t, showing("sidereal day", "")), day(t, "1987-04-10", 19.35))
	assert.InDelta(t, 15*(8+34.0/60+57.0896/3600), hand(t, s, "h").Degrees, 1e-5)
}

// apart is how far two angles lie apart.
func apart(a, b float64) float64 {
	for a-b > 180 {
		b += 360
	}
	for b-a > 180 {
		b -= 360
	}
	return b - a
}

// The year by the name of the Earth is her mean longitude from the Sun: 100.466457
// degrees at J2000.0 (Meeus, table 31.A, from memory), half a turn from the Sun's
// 280.46646 (chapter 25), for which the year stands by its other names.
func TestTheEarthFromTheSun(t *testing.T) {
	for shows, want := range map[string]float64{
		"Earth tropical": 100.466457, "Earth sidereal": 100.466457,
		"tropical year": 280.46646, "solar year": 280.46646, "sidereal year": 280.46646,
		"Mars": 355.433, "Jupiter sidereal": 34.351519,
	} {
		h := hand(t, on(t, solved(t, showing(shows, "")), dynamical(t, sky.J2000)), "h")
		assert.InDelta(t, want, h.Degrees, 1e-4, shows)
	}
}

// A hand that turns the other way round than the sky counts in its own sense.
func TestSenses(t *testing.T) {
	for _, c := range []struct {
		shows, more, sense string
		want               float64
	}{
		{"solar day", "", "ccw", 180},
		{"solar day", "  sense = \"cw\"\n", "cw", 180},
		{"half solar day", "", "ccw", 0},
		{"Gregorian year", "", "ccw", 360 * (31 + 0.5) / 365.2425},
		{"Julian year", "", "ccw", 360 * (31 + 0.5) / 365.25},
	} {
		h := hand(t, on(t, solved(t, showing(c.shows, c.more)), day(t, "2027-02-01", 12)), "h")
		assert.InDelta(t, c.want, h.Degrees, 1e-6, c.shows)
		assert.Equal(t, c.sense, h.Sense)
	}
}

// Every entry of the catalogue that the sky has an angle for says what its zero
// is; of the others the reason is given.
func TestEveryEntry(t *testing.T) {
	known, open := 0, 0
	for _, p := range sky.Periods() {
		h := hand(t, on(t, solved(t, showing(p.Name, "")), day(t, "2027-01-01", 0)), "h")
		if h.Why != "" {
			assert.Contains(t, h.Why, "no agreed zero mark", p.Name)
			assert.Empty(t, h.Zero)
			open++
			continue
		}
		assert.NotEmpty(t, h.Zero, p.Name)
		known++
	}
	assert.Greater(t, known, 50)
	assert.Greater(t, open, 20)
}

const clockwork = `
design {
  title = "clock and calendar"
  epoch = "2027-01-01T06:00"
}
arbor "minute" {}
arbor "lay" {}
arbor "hour" {}
arbor "other" {}
wheel "cannon" {
  on    = "minute"
  teeth = 10
}
wheel "lay_wheel" {
  on    = "lay"
  teeth = 30
}
wheel "lay_pinion" {
  on    = "lay"
  teeth = 8
}
wheel "hour_wheel" {
  on    = "hour"
  teeth = 32
}
mesh { wheels = ["cannon", "lay_wheel"] }
mesh { wheels = ["lay_pinion", "hour_wheel"] }
clock {
  on     = "minute"
  period = "1 h"
}
hand "minute" {
  on     = "minute"
  period = "1 h"
}
hand "hour" {
  on    = "hour"
  ratio = "1/12"
  of    = "minute"
}
hand "fortnight" {
  on     = "other"
  period = "14 d"
  sense  = "cw"
}
hand "weeks" {
  on    = "other"
  ratio = "2"
  of    = "fortnight"
  sense = "cw"
}
hand "mute" { on = "other" }
hand "Saros" {
  on    = "other"
  shows = "Saros"
}
hand "of_Saros" {
  on    = "other"
  ratio = "1/2"
  of    = "Saros"
}
`

// Periods that are not of the sky count from the epoch, ratios from the hand
// they refer to, whole turns included. 50 hours and 20 minutes after the epoch
// the minute hand stands at 20 minutes, the hour hand at 2 h 20 of twelve.
func TestCustomPeriods(t *testing.T) {
	s := on(t, solved(t, clockwork), day(t, "2027-01-03", 8+1.0/3))
	for name, want := range map[string]float64{
		"minute":    120,
		"hour":      70,
		"fortnight": 360 * (50 + 1.0/3) / 24 / 14,
		"weeks":     2 * 360 * (50 + 1.0/3) / 24 / 14,
	} {
		assert.InDelta(t, want, hand(t, s, name).Degrees, 1e-9, name)
	}
	// before the epoch, too: 3 h 40 min earlier
	s = on(t, solved(t, clockwork), day(t, "2027-01-01", 2+1.0/3))
	assert.InDelta(t, 120, hand(t, s, "minute").Degrees, 1e-9)
	assert.InDelta(t, 360-110, hand(t, s, "hour").Degrees, 1e-9)
	assert.Equal(t, "the epoch", hand(t, s, "minute").Zero)
	assert.Equal(t, `as hand "minute"`, hand(t, s, "hour").Zero)

	assert.Contains(t, hand(t, s, "mute").Why, "neither")
	assert.Contains(t, hand(t, s, "Saros").Why, "no agreed zero mark")
	assert.Contains(t, hand(t, s, "of_Saros").Why, `hand "Saros"`)
	assert.Equal(t, "nothing turns it", hand(t, s, "fortnight").Unset)

	// without an epoch, or with one outside the years of the sky
	for _, epoch := range []string{"", "9027-01-01"} {
		text := strings.Replace(clockwork, `epoch = "2027-01-01T06:00"`, `epoch = "`+epoch+`"`, 1)
		if epoch == "" {
			text = strings.Replace(text, `epoch = ""`, "", 1)
		}
		s = on(t, solved(t, text), day(t, "2027-01-01", 2))
		assert.Contains(t, hand(t, s, "minute").Why, "epoch")
		assert.Contains(t, hand(t, s, "hour").Why, `hand "minute"`)
		assert.Empty(t, s.Steps)
	}
}

// A period quoted near the sky's is set by the sky, as the almanac reads it.
func TestQuotedPeriods(t *testing.T) {
	text := strings.Replace(showing("x", ""), `shows = "x"`, `period = "29.53 d"`, 1)
	h := hand(t, on(t, solved(t, text), dynamical(t, 2448724.5)), "h")
	assert.Equal(t, "synodic month", h.Shows)
	assert.InDelta(t, 113.842304, h.Degrees, 2e-6)
}

func TestDaysOutsideTheSky(t *testing.T) {
	tr := solved(t, showing("tropical year", ""))
	for _, jd := range []float64{sky.FirstDay - 1, sky.EndDay + 1, 1e9, -1e9} {
		_, err := setting.On(tr, exact.Int(int64(jd)))
		var span *sky.SpanError
		assert.ErrorAs(t, err, &span)
	}
	for _, jd := range []float64{sky.FirstDay + 1, sky.EndDay - 1} {
		_, err := setting.On(tr, exact.Int(int64(jd)))
		assert.NoError(t, err)
	}
}
