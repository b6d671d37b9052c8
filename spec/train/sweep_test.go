package train_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

// table has an arm on an arm on the frame, an arm in the middle of another, and
// arms on studs.
const table = `
design { title = "x" }
arbor "sun" { at = [10, 20] }
arm "year" { on = "sun" }
arbor "earth" {
  carried_by = "year"
  at         = [30, 40]
}
arm "month" { on = "earth" }
arbor "moon" {
  carried_by = "month"
  at         = [12, 5]
}
arbor "middle" {
  carried_by = "year"
  at         = [0, 0]
}
arm "cross" { on = "middle" }
arbor "venus" {
  carried_by = "cross"
  at         = [0, 7]
}
stud "post" {
  carried_by = "year"
  at         = [3, 4]
}
arm "bracket" { on = "post" }
arbor "on_bracket" {
  carried_by = "bracket"
  at         = [2, 8]
}
stud "core" {
  carried_by = "year"
  at         = [0, 0]
}
arm "cock" { on = "core" }
arbor "on_cock" {
  carried_by = "cock"
  at         = [6, 8]
}
arbor "in_cock" {
  carried_by = "cock"
  at         = [0, 0]
}
arbor "round" {
  carried_by = "bracket"
  at         = [-3, -4]
}
arbor "nowhere" {}
arm "lost" { on = "nowhere" }
arbor "on_lost" {
  carried_by = "lost"
  at         = [1, 0]
}
arbor "leaning" {
  at   = [0, 0]
  tilt = 30
}
arm "leant" { on = "leaning" }
arbor "on_leant" {
  carried_by = "leant"
  at         = [5, 0]
}
`

func solved(t *testing.T, text string) *train.Train {
	t.Helper()
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	return train.Solve(d)
}

// Worked by hand from the positions.
func TestSweeps(t *testing.T) {
	tr := solved(t, table)
	d := tr.Design
	body := func(name string) spec.Body { return spec.Body{Arbor: d.ArborNamed(name)} }
	frame := spec.Body{}
	for name, want := range map[string][]train.Sweep{
		"sun":   {{On: frame, X: 10, Y: 20}},
		"earth": {{On: body("sun"), X: 30, Y: 40}, {On: frame, X: 10, Y: 20, Least: 50, Most: 50}},
		"moon": {{On: body("earth"), X: 12, Y: 5}, {On: body("sun"), X: 30, Y: 40, Least: 13, Most: 13},
			{On: frame, X: 10, Y: 20, Least: 37, Most: 63}},
		"middle":     {{On: frame, X: 10, Y: 20}},
		"venus":      {{On: body("middle"), X: 0, Y: 7}, {On: frame, X: 10, Y: 20, Least: 7, Most: 7}},
		"post":       {{On: body("sun"), X: 3, Y: 4}, {On: frame, X: 10, Y: 20, Least: 5, Most: 5}},
		"on_bracket": {{On: body("sun"), X: 5, Y: 12}, {On: frame, X: 10, Y: 20, Least: 13, Most: 13}},
		"on_cock":    {{On: body("sun"), X: 6, Y: 8}, {On: frame, X: 10, Y: 20, Least: 10, Most: 10}},
		"in_cock":    {{On: frame, X: 10, Y: 20}},
		"round":      {{On: frame, X: 10, Y: 20}},
	} {
		got, err := tr.Sweeps(d.ArborNamed(name), nil)
		require.NoError(t, err, name)
		assert.Equal(t, told(want), told(got), name)
	}
	for name, want := range map[string]error{
		"nowhere": train.ErrUnplaced, "on_lost": train.ErrUnplaced, "leaning": train.ErrLeaning, "on_leant": train.ErrLeaning,
	} {
		before := make([]train.Sweep, 2)
		got, err := tr.Sweeps(d.ArborNamed(name), before)
		assert.ErrorIs(t, err, want, name)
		assert.Len(t, got, 2, name)
	}

	on, x, y, ok := tr.Middle(d.ArmNamed("bracket"))
	assert.Equal(t, []any{"sun", 3.0, 4.0, true}, []any{on.Arbor.Name.Text, x, y, ok}, "a bracket is one body with the arm it stands on")
	on, x, y, ok = tr.Middle(d.ArmNamed("cross"))
	assert.Equal(t, []any{"middle", 0.0, 0.0, true}, []any{on.Arbor.Name.Text, x, y, ok})
	on, x, y, ok = tr.Middle(d.ArmNamed("cock"))
	assert.Equal(t, []any{"sun", 0.0, 0.0, true}, []any{on.Arbor.Name.Text, x, y, ok})

	assert.True(t, tr.Turns(body("sun"), frame))
	assert.False(t, tr.Turns(body("post"), body("sun")), "a stud keeps still on its arm")
}

// told is sweeps as text.
func told(list []train.Sweep) string {
	var s strings.Builder
	for _, w := range list {
		on := "frame"
		if w.On.Arbor != nil {
			on = w.On.Arbor.Name.Text
		}
		fmt.Fprintf(&s, "%s: %v to %v from (%v, %v)\n", on, w.Least, w.Most, w.X, w.Y)
	}
	return s.String()
}

// Turned to random angles, no axis leaves its sweep, and it comes near either
// end of it.
func TestSweepsHoldWhatTheArmsReach(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 2))
	for range 20 {
		var s strings.Builder
		s.WriteString("design { title = \"x\" }\n")
		const n = 3
		var x, y [n + 1]float64
		for i := range n + 1 {
			x[i], y[i] = rng.Float64()*40-20, rng.Float64()*40-20
			carrier := "frame"
			if i > 0 {
				carrier = fmt.Sprintf("m%d", i-1)
			}
			fmt.Fprintf(&s, "arbor \"a%d\" {\n  carried_by = %q\n  at = [%v, %v]\n}\narm \"m%d\" { on = \"a%d\" }\n", i, carrier, x[i], y[i], i, i)
		}
		tr := solved(t, s.String())
		sweeps, err := tr.Sweeps(tr.Design.ArborNamed(fmt.Sprintf("a%d", n)), nil)
		require.NoError(t, err)
		require.Len(t, sweeps, n+1)
		for k := 1; k <= n; k++ {
			// In the plan of the body k arms further in from the tip.
			least, most := math.Inf(1), 0.0
			for range 20_000 {
				px, py, turned := 0.0, 0.0, 0.0
				for i := n - k + 1; i <= n; i++ {
					turned += rng.Float64() * 2 * math.Pi
					sin, cos := math.Sincos(turned)
					px, py = px+x[i]*cos-y[i]*sin, py+x[i]*sin+y[i]*cos
				}
				away := math.Hypot(px, py)
				least, most = min(least, away), max(most, away)
			}
			assert.GreaterOrEqual(t, least, sweeps[k].Least-1e-9)
			assert.LessOrEqual(t, most, sweeps[k].Most+1e-9)
			assert.InDelta(t, sweeps[k].Least, least, 3, "plan %d", k)
			assert.InDelta(t, sweeps[k].Most, most, 3, "plan %d", k)
		}
	}
}

// Arms that carry one another without end are not followed to the end.
func TestSweepsOfManyArms(t *testing.T) {
	var s strings.Builder
	s.WriteString("design { title = \"x\" }\narbor \"a0\" { at = [1, 0] }\narm \"m0\" { on = \"a0\" }\n")
	for i := 1; i < 40; i++ {
		fmt.Fprintf(&s, "arbor \"a%d\" {\n  carried_by = \"m%d\"\n  at = [1, 0]\n}\narm \"m%d\" { on = \"a%d\" }\n", i, i-1, i, i)
	}
	tr := solved(t, s.String())
	_, err := tr.Sweeps(tr.Design.ArborNamed("a39"), nil)
	assert.ErrorIs(t, err, train.ErrDeep)
	sweeps, err := tr.Sweeps(tr.Design.ArborNamed("a9"), nil)
	require.NoError(t, err)
	assert.Len(t, sweeps, 10)
}
