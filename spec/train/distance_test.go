package train_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

const placed = `
design { title = "x" }
arbor "sun"    { at = [0, 0] }
arbor "lay"    {
  radius  = 25
  bearing = 30
}
arbor "level"  {
  at     = [30, 7]
  tilt   = 90
  toward = 270
}
arbor "level2" {
  at     = [50, 7]
  tilt   = 90
  toward = 180
}
arbor "leaning" {
  at     = [0, 12]
  tilt   = 60
  toward = 90
}
arbor "nowhere" {}
arm "year" { on = "sun" }
arbor "planet" {
  carried_by = "year"
  at         = [3, 4]
}
arbor "moon" {
  carried_by = "year"
  at         = [3, 16]
}
stud "post" { at = [100, 0] }
arm "bracket" { on = "post" }
arbor "on_bracket" {
  carried_by = "bracket"
  at         = [0, 20]
}
`

// Worked by hand from the positions.
func TestDistanceAndCrossing(t *testing.T) {
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(placed), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	tr := train.Solve(d)
	const unknown = -1
	for _, row := range []struct {
		a, b               string
		distance, crossing float64
	}{
		{"sun", "lay", 25, 0},
		{"sun", "planet", 5, 0},
		{"planet", "sun", 5, 0},
		{"planet", "moon", 12, 0},
		{"sun", "on_bracket", 101.9803902718557, 0},
		{"lay", "planet", unknown, unknown}, // wander apart
		{"sun", "nowhere", unknown, 0},
		{"sun", "level", 30, 90},
		{"level", "sun", 30, 90},
		{"sun", "leaning", 0, 60},
		{"level", "level2", unknown, 90},
		{"level", "leaning", unknown, 150},
	} {
		t.Run(row.a+" "+row.b, func(t *testing.T) {
			a, b := d.ArborNamed(row.a), d.ArborNamed(row.b)
			mm, ok := tr.Distance(a, b)
			assert.Equal(t, row.distance != unknown, ok)
			if ok {
				assert.InDelta(t, row.distance, mm, 1e-9)
			}
			angle, ok := tr.Crossing(a, b)
			assert.Equal(t, row.crossing != unknown, ok)
			if ok {
				assert.InDelta(t, row.crossing, angle, 1e-9)
			}
		})
	}
}

// Coaxial arbors have one line; of two on an arm without positions, what the
// arm does not carry lies in its middle.
func TestLines(t *testing.T) {
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(placed+`
arbor "tube" { at = [0, 0] }
arm "rod" { on = "nowhere" }
arbor "far" { carried_by = "rod" }
arbor "sun2" {}
arbor "sun3" {}
`), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	tr := train.Solve(d)
	line := func(of, to string) train.Line {
		l, _, ok := tr.Lines(d.ArborNamed(of), d.ArborNamed(to))
		require.True(t, ok, "%s %s", of, to)
		return l
	}
	assert.Equal(t, line("sun", "lay"), line("tube", "lay"))
	assert.NotEqual(t, line("sun", "lay"), line("lay", "sun"))
	assert.Equal(t, line("sun2", "far"), line("sun3", "far"), "both in the middle of the arm")
	assert.True(t, line("sun2", "far").Middle())
	assert.False(t, line("far", "sun2").Middle())
	assert.False(t, line("sun", "lay").Middle(), "the frame has no middle")
	assert.True(t, line("sun", "planet").Middle())
	assert.NotEqual(t, line("sun2", "sun3"), line("sun3", "sun2"))
	_, _, ok := tr.Lines(d.ArborNamed("lay"), d.ArborNamed("planet"))
	assert.False(t, ok, "they wander apart")

	dx, dy, ok := tr.Offset(d.ArborNamed("sun"), d.ArborNamed("planet"))
	require.True(t, ok)
	assert.InDelta(t, 3, dx, 1e-9)
	assert.InDelta(t, 4, dy, 1e-9)
	_, _, ok = tr.Offset(d.ArborNamed("sun2"), d.ArborNamed("far"))
	assert.False(t, ok)
}
