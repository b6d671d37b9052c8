package train_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

// turns is by how many turns a joint moves the arbor.
func turns(s *train.Shifts, a *spec.Arbor, base spec.Body, joint int) string {
	for _, shift := range s.Of(a, base) {
		if shift.Joint == joint {
			return shift.Turns.String()
		}
	}
	return "0"
}

// Signs and all, shifts are what a dense solver of the same joints gives, and
// what it cannot solve is not free.
func TestShiftsAgreeWithADenseSolver(t *testing.T) {
	dir := t.TempDir()
	compared, looped := 0, 0
	for seed := range uint64(250) {
		b := &builder{rng: rand.New(rand.NewPCG(seed, 23)), placed: seed%3 > 0}
		b.text.WriteString("design { title = \"random\" }\n")
		x, y := b.spot()
		b.shaft(-1, x, y)
		for range 2 + b.rng.IntN(10) {
			b.grow()
		}
		fmt.Fprintf(&b.text, "drive \"d\" {\n  on = \"s%d\"\n  speed = 1\n}\n", b.any())
		name := filepath.Join(dir, fmt.Sprintf("%d.hcl", seed))
		require.NoError(t, os.WriteFile(name, []byte(b.text.String()), 0o644))
		d, problems := spec.Load(name)
		require.Empty(t, problems)
		tr := train.Solve(d)
		hand, base := d.Arbors[b.any()], d.Arbors[b.any()]
		var all []int
		for i := range tr.Joints {
			all = append(all, i)
		}
		shifts := tr.NewShifts(all)
		for i := range tr.Joints {
			if tr.Joints[i].A == nil || tr.Joints[i].Wanders {
				assert.False(t, shifts.Free(i))
				continue
			}
			rates, ok := slipping(d, tr, i)
			assert.Equal(t, ok, shifts.Free(i), "seed %d joint %d\n%s", seed, i, b.text.String())
			if !ok {
				looped++
				continue
			}
			if rates[hand.Index] == nil || rates[base.Index] == nil {
				continue
			}
			want := rates[hand.Index].Sub(rates[hand.Index], rates[base.Index])
			got := turns(shifts, hand, spec.Body{Arbor: base}, i)
			assert.Equal(t, want.RatString(), got, "seed %d joint %d\n%s", seed, i, b.text.String())
			if got != "0" {
				compared++
			}
		}
	}
	require.Greater(t, compared, 100)
	require.Greater(t, looped, 10)
}

// A tooth of the second pair of 20/60 and 10/50 moves the last arbor by 1/50,
// one of the first pair by 1/60 and a fifth of that, the other way round.
func TestShiftsOfTwoPairs(t *testing.T) {
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(`
design { title = "x" }
arbor "first" {}
arbor "lay" {}
arbor "last" {}
wheel "a" {
  on    = "first"
  teeth = 20
}
wheel "b" {
  on    = "lay"
  teeth = 60
}
wheel "c" {
  on    = "lay"
  teeth = 10
}
wheel "d" {
  on    = "last"
  teeth = 50
}
mesh { wheels = ["a", "b"] }
mesh { wheels = ["c", "d"] }
drive "crank" {
  on    = "first"
  speed = 1
}
`), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	tr := train.Solve(d)
	s := tr.NewShifts([]int{0, 1, 2})
	assert.Equal(t, "1", turns(s, d.Arbors[2], spec.Body{}, 1))
	assert.Equal(t, "-1/5", turns(s, d.Arbors[2], spec.Body{}, 0))
	assert.Equal(t, "1", turns(s, d.Arbors[1], spec.Body{}, 0))
	assert.Equal(t, "0", turns(s, d.Arbors[1], spec.Body{}, 1))
	assert.Equal(t, []bool{true, true, false}, []bool{s.Free(0), s.Free(1), s.Free(2)})
	assert.False(t, tr.NewShifts([]int{0}).Free(1))
}
