package drift

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

func picture(t *testing.T, text string) *Picture {
	t.Helper()
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	return Of(train.Solve(d))
}

// turning is a design with a hand that turns once in a period, with more lines.
func turning(period, hand string) string {
	return fmt.Sprintf(`
design {
  title   = "one hand"
  horizon = "100 yr"
}
arbor "a" {}
clock {
  on     = "a"
  period = "%s"
}
hand "h" {
  on = "a"
  %s
}
`, period, hand)
}

// A node that goes round in 18.5, 19, 223/12 or 242/13 tropical years runs ahead of
// the sky's 18.61335753 by 360/P less 360/18.61335753 degrees a year: +0.1185,
// -0.394, +0.0313 and -0.0021 (computed from the formula).
func TestErrorsOverTheYears(t *testing.T) {
	for period, perYear := range map[string]float64{"18.5": 0.1185, "19": -0.394, "223/12": 0.0313, "242/13": -0.0021} {
		p := picture(t, turning(period+" yr", `shows = "lunar node"`))
		require.Len(t, p.Lines, 1)
		assert.InDelta(t, 100*perYear, p.Lines[0].End, 0.05, period)
		assert.Equal(t, p.Lines[0].End < 0, p.Lines[0].Late > 0)
		assert.Equal(t, 100.0, p.Years)
	}
}

// The three measures of a tolerance, worked by hand for a day that should take
// 24 h and takes 24 h 1 min: 694.4 ppm slow. In 100 years of 365.2422 turns, 36524.2
// of them, a ppm is 13.149 degrees; a day in ten years is ten turns in a hundred.
func TestBands(t *testing.T) {
	const turns = 36524.2190424
	for within, want := range map[string]struct {
		band   float64
		beyond bool
	}{
		"600 ppm":          {600e-6 * turns * 360, true},
		"700 ppm":          {700e-6 * turns * 360, false},
		"1 deg in 1 yr":    {100, true},
		"92 deg in 1 yr":   {9200, false},
		"1 d in 10 yr":     {3600, true},
		"2.54 d in 10 yr":  {9144, false},
		"2.53 d in 10 yr":  {9108, true},
		"91.2 deg in 1 yr": {9120, true},
	} {
		p := picture(t, turning("1441 min", "period = \"24 h\"\n  within = \""+within+"\""))
		require.Len(t, p.Lines, 1)
		l := p.Lines[0]
		assert.InEpsilon(t, want.band, l.Band, 1e-6, within)
		assert.Equal(t, want.beyond, l.Beyond, within)
		assert.InEpsilon(t, -360*turns/1441, l.End, 1e-9)
		assert.InEpsilon(t, turns/1441, l.Late, 1e-9)
		assert.Equal(t, within, l.Within)
		assert.Equal(t, "24 h", l.Shows)
	}
}

// Hands without an error, and without one that is known, have no panel.
func TestHandsWithoutAPanel(t *testing.T) {
	p := picture(t, turning("1 d", `period = "1 d"`)+`
arbor "loose" {}
hand "mute" { on = "a" }
hand "idle" {
  on     = "loose"
  period = "1 d"
}
hand "half" {
  on    = "a"
  ratio = "1/2"
  of    = "h"
}
`)
	assert.Equal(t, []string{"h"}, p.Exact)
	assert.Equal(t, []string{"mute", "idle"}, p.Open)
	require.Len(t, p.Lines, 1)
	assert.Equal(t, "1/2 of h", p.Lines[0].Shows)

	p = picture(t, strings.Replace(turning("2 d", `period = "1 d"`), `horizon = "100 yr"`, "", 1))
	assert.Equal(t, 100.0, p.Years)
	assert.False(t, p.Said)
}
