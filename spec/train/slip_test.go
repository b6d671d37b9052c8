package train_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// slipping solves the joints anew with one of them slipping by a turn and the
// drives held, without regard to how the weights are found.
func slipping(d *spec.Design, tr *train.Train, slips int) (rates []*big.Rat, ok bool) {
	system := dense{unknowns: len(d.Arbors)}
	for i := range tr.Joints {
		j := &tr.Joints[i]
		if j.Wanders {
			continue
		}
		terms := map[int]*big.Rat{}
		put := func(a *spec.Arbor, k exact.Rat) {
			if a == nil {
				return
			}
			if terms[a.Index] == nil {
				terms[a.Index] = new(big.Rat)
			}
			terms[a.Index].Add(terms[a.Index], k.Big())
		}
		ratio := j.Ratio
		if j.A == nil {
			ratio = exact.Int(0)
		}
		put(j.B, exact.Int(1))
		put(j.A, ratio.Neg())
		put(j.Carrier.Arbor, ratio.Sub(exact.Int(1)))
		right := new(big.Rat)
		if i == slips {
			right.SetInt64(1)
		}
		system.add(terms, right)
	}
	return system.solve()
}

func TestSlipsAgreeWithADenseSolver(t *testing.T) {
	dir := t.TempDir()
	compared, looped := 0, 0
	for seed := range uint64(250) {
		b := &builder{rng: rand.New(rand.NewPCG(seed, 11)), placed: seed%3 > 0}
		b.text.WriteString("design { title = \"random\" }\n")
		x, y := b.spot()
		b.shaft(-1, x, y)
		for range 2 + b.rng.IntN(10) {
			b.grow()
		}
		for n := range 1 + b.rng.IntN(2) {
			fmt.Fprintf(&b.text, "drive \"d%d\" {\n  on = \"s%d\"\n  speed = 1\n}\n", n, b.any())
		}
		name := filepath.Join(dir, fmt.Sprintf("%d.hcl", seed))
		require.NoError(t, os.WriteFile(name, []byte(b.text.String()), 0o644))
		d, problems := spec.Load(name)
		require.Empty(t, problems)
		tr := train.Solve(d)
		hand, base := d.Arbors[b.any()], d.Arbors[b.any()]
		if hand == base {
			continue
		}
		slips := tr.NewSlips()
		slips.Of(base, spec.Body{Arbor: hand}) // leaves nothing behind
		weights := map[*train.Joint]float64{}
		for _, s := range slips.Of(hand, spec.Body{Arbor: base}) {
			weights[s.Joint] = s.Weight
		}
		for i := range tr.Joints {
			if tr.Joints[i].A == nil || tr.Joints[i].Wanders {
				continue
			}
			rates, ok := slipping(d, tr, i)
			if !ok {
				looped++
				continue
			}
			if rates[hand.Index] == nil || rates[base.Index] == nil {
				continue
			}
			want, _ := new(big.Rat).Sub(rates[hand.Index], rates[base.Index]).Float64()
			assert.InDelta(t, math.Abs(want), weights[&tr.Joints[i]], 1e-9*(1+math.Abs(want)), "seed %d joint %d\n%s", seed, i, b.text.String())
			compared++
		}
	}
	require.Greater(t, compared, 300)
	require.Greater(t, looped, 10)
}

// A planetary gearhead of 20, 31 and 82 teeth, ring fixed: the arm makes 20/102
// of the sun's turns. The planet that slips a degree in the sun moves the arm by
// 31/102; in the ring the ring's own degree is 82/102 of one.
func TestSlipsOfAPlanetarySet(t *testing.T) {
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(`
design { title = "x" }
arbor "sun" {}
stud "case" {}
arbor "carrier" {}
arm "carrier" { on = "carrier" }
arbor "planet" { carried_by = "carrier" }
wheel "sun" {
  on = "sun"
  teeth = 20
}
wheel "planet" {
  on = "planet"
  teeth = 31
}
wheel "ring" {
  on = "case"
  teeth = 82
  kind = "ring"
}
mesh { wheels = ["sun", "planet"] }
mesh { wheels = ["planet", "ring"] }
drive "motor" {
  on = "sun"
  speed = 1
}
`), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	list := train.Solve(d).NewSlips().Of(d.ArborNamed("carrier"), spec.Body{})
	require.Len(t, list, 2)
	weight := map[int]float64{list[0].Index: list[0].Weight, list[1].Index: list[1].Weight}
	assert.InDelta(t, 31.0/102, weight[0], 1e-12)
	assert.InDelta(t, 82.0/102, weight[1], 1e-12)
}

// A torque on an arbor asks of the one drive what the ratio of their rates says,
// whatever lies between them.
func TestDrivesBearByTheRatio(t *testing.T) {
	dir := t.TempDir()
	compared := 0
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
		slips := tr.NewSlips()
		for _, a := range d.Arbors {
			ratio, ok := tr.Ratio(a, spec.Body{}, d.Drives[0].Arbor, tr.Carrier(d.Drives[0].Arbor))
			if !ok || a.Stud {
				continue
			}
			borne := 0.0
			for _, s := range slips.Bearing(a, spec.Body{}) {
				if s.Joint.A == nil {
					borne = s.Weight
				}
			}
			assert.InDelta(t, math.Abs(ratio.Float()), borne, 1e-9*(1+borne), "seed %d\n%s", seed, b.text.String())
			compared++
		}
	}
	require.Greater(t, compared, 300)
}
