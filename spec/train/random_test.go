package train_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

// builder makes a random design as text and, from what it knows while making
// it, the equations a person would write down: which body each mesh is
// relative to is known here and found there.
type builder struct {
	rng       *rand.Rand
	text      strings.Builder
	placed    bool // whether positions are said
	arbors    []shaft
	arms      []int // arbor that the arm is fixed to; the arm is named a<arbor>
	wheels    int
	equations []map[int]*big.Rat
}

type shaft struct {
	carrier int // arbor whose arm carries it, -1 for the frame
	x, y    int
}

func (b *builder) shaft(carrier, x, y int) int {
	n := len(b.arbors)
	b.arbors = append(b.arbors, shaft{carrier, x, y})
	fmt.Fprintf(&b.text, "arbor \"s%d\" {\n", n)
	if carrier >= 0 {
		fmt.Fprintf(&b.text, "  carried_by = \"a%d\"\n", carrier)
	}
	if b.placed {
		fmt.Fprintf(&b.text, "  at = [%d, %d]\n", x, y)
	}
	fmt.Fprintf(&b.text, "}\n")
	return n
}

// spot is a place on a carrier that nothing else has.
func (b *builder) spot() (x, y int) {
	return 1 + b.rng.IntN(1_000_000), 1 + b.rng.IntN(1_000_000)
}

func (b *builder) arm(on int) {
	fmt.Fprintf(&b.text, "arm \"a%d\" { on = \"s%d\" }\n", on, on)
	b.arms = append(b.arms, on)
}

func (b *builder) wheel(on, teeth int, more string) string {
	name := fmt.Sprintf("w%d", b.wheels)
	b.wheels++
	fmt.Fprintf(&b.text, "wheel %q {\n  on = \"s%d\"\n  teeth = %d\n%s}\n", name, on, teeth, more)
	return name
}

func (b *builder) sprocket(on, teeth int) string {
	name := fmt.Sprintf("w%d", b.wheels)
	b.wheels++
	fmt.Fprintf(&b.text, "sprocket %q {\n  on = \"s%d\"\n  teeth = %d\n}\n", name, on, teeth)
	return name
}

// relate notes (wb - wc) = ratio (wa - wc), with -1 the frame.
func (b *builder) relate(from, to, carrier int, ratio *big.Rat) {
	terms := map[int]*big.Rat{}
	put := func(i int, k *big.Rat) {
		if i < 0 {
			return
		}
		if terms[i] == nil {
			terms[i] = new(big.Rat)
		}
		terms[i].Add(terms[i], k)
	}
	one := big.NewRat(1, 1)
	put(to, one)
	put(from, new(big.Rat).Neg(ratio))
	put(carrier, new(big.Rat).Sub(ratio, one))
	b.equations = append(b.equations, terms)
}

func (b *builder) teeth() int { return 7 + b.rng.IntN(90) }

// join ties two shafts whose axes stand still on the carrier, in a random way.
func (b *builder) join(from, to, carrier int) {
	za, zb := b.teeth(), b.teeth()
	ratio := big.NewRat(int64(za), int64(zb))
	opposite := new(big.Rat).Neg(ratio)
	switch b.rng.IntN(7) {
	case 0: // ring
		fmt.Fprintf(&b.text, "mesh { wheels = [%q, %q] }\n", b.wheel(from, za, ""), b.wheel(to, zb, "  kind = \"ring\"\n"))
		b.relate(from, to, carrier, ratio)
	case 1:
		fmt.Fprintf(&b.text, "chain { sprockets = [%q, %q] }\n", b.sprocket(from, za), b.sprocket(to, zb))
		b.relate(from, to, carrier, ratio)
	case 2:
		fmt.Fprintf(&b.text, "chain {\n  sprockets = [%q, %q]\n  crossed = true\n}\n", b.sprocket(from, za), b.sprocket(to, zb))
		b.relate(from, to, carrier, opposite)
	case 3:
		sense := []string{"same", "opposite"}[b.rng.IntN(2)]
		fmt.Fprintf(&b.text, "mesh {\n  wheels = [%q, %q]\n  sense = %q\n}\n", b.wheel(from, za, "  kind = \"bevel\"\n"), b.wheel(to, zb, "  kind = \"bevel\"\n"), sense)
		if sense == "same" {
			opposite = ratio
		}
		b.relate(from, to, carrier, opposite)
	default:
		fmt.Fprintf(&b.text, "mesh { wheels = [%q, %q] }\n", b.wheel(from, za, ""), b.wheel(to, zb, ""))
		b.relate(from, to, carrier, opposite)
	}
}

func (b *builder) any() int { return b.rng.IntN(len(b.arbors)) }

// grow adds one more mechanism to what is there.
func (b *builder) grow() {
	from := b.any()
	carrier := b.arbors[from].carrier
	x, y := b.spot()
	switch b.rng.IntN(8) {
	case 0, 1, 2: // a wheel further on, on the same carrier
		b.join(from, b.shaft(carrier, x, y), carrier)
	case 3: // a planet: an arm about the shaft's own axis, which may be driven or not
		pivot := b.shaft(carrier, b.arbors[from].x, b.arbors[from].y)
		b.arm(pivot)
		planet := b.shaft(pivot, x, y)
		b.join(from, planet, pivot)
		if b.rng.IntN(2) == 0 { // and a second sun: a differential
			sun := b.shaft(carrier, b.arbors[from].x, b.arbors[from].y)
			b.join(planet, sun, pivot)
		}
	case 4: // an arm on the shaft, with a train on it
		if b.hasArm(from) {
			return
		}
		b.arm(from)
		first := b.shaft(from, x, y)
		x, y = b.spot()
		b.join(first, b.shaft(from, x, y), from)
	case 5:
		to := b.shaft(carrier, x, y)
		fmt.Fprintf(&b.text, "coupling \"c%d\" { arbors = [\"s%d\", \"s%d\"] }\n", to, from, to)
		b.relate(from, to, carrier, big.NewRat(1, 1))
	case 6:
		to := b.shaft(carrier, x, y)
		steps := 3 + b.rng.IntN(60)
		fmt.Fprintf(&b.text, "counter \"c%d\" {\n  from = \"s%d\"\n  to = \"s%d\"\n  steps = %d\n}\n", to, from, to, steps)
		b.relate(from, to, carrier, big.NewRat(1, int64(steps)))
	case 7: // a loop back between two shafts of one carrier, which may lock them
		to := b.any()
		if to == from || b.arbors[to].carrier != carrier || b.rng.IntN(3) > 0 {
			return
		}
		b.join(from, to, carrier)
	}
}

func (b *builder) hasArm(on int) bool {
	for _, a := range b.arms {
		if a == on {
			return true
		}
	}
	return false
}

func TestRandomTrainsAgreeWithADenseSolver(t *testing.T) {
	dir := t.TempDir()
	settled, contradicted := 0, 0
	for seed := range uint64(1200) {
		b := &builder{rng: rand.New(rand.NewPCG(seed, 7)), placed: seed%3 > 0}
		b.text.WriteString("design { title = \"random\" }\n")
		for range 1 + b.rng.IntN(2) {
			x, y := b.spot()
			b.shaft(-1, x, y)
		}
		for range 2 + b.rng.IntN(14) {
			b.grow()
		}
		// One or two drives, or a clock, or both.
		type drive struct{ on, rpm int }
		var drives []drive
		for range b.rng.IntN(3) {
			v := drive{b.any(), 1 + b.rng.IntN(40)}
			fmt.Fprintf(&b.text, "drive \"d%d\" {\n  on = \"s%d\"\n  speed = %d\n}\n", len(drives), v.on, v.rpm)
			drives = append(drives, v)
		}
		clock := -1
		if len(drives) == 0 || b.rng.IntN(2) == 0 {
			clock = b.any()
			fmt.Fprintf(&b.text, "clock {\n  on = \"s%d\"\n  period = \"2 d\"\n}\n", clock)
		}
		name := filepath.Join(dir, fmt.Sprintf("%d.hcl", seed))
		require.NoError(t, os.WriteFile(name, []byte(b.text.String()), 0o644))
		d, problems := spec.Load(name)
		require.Empty(t, problems, "seed %d\n%s", seed, b.text.String())
		solved := train.Solve(d)

		system := dense{unknowns: len(b.arbors)}
		for _, terms := range b.equations {
			system.add(terms, new(big.Rat))
		}
		for _, v := range drives {
			terms := map[int]*big.Rat{v.on: big.NewRat(1, 1)}
			if c := b.arbors[v.on].carrier; c >= 0 {
				terms[c] = big.NewRat(-1, 1)
			}
			system.add(terms, big.NewRat(int64(v.rpm)*1440, 1))
		}
		if len(drives) == 0 {
			system.add(map[int]*big.Rat{clock: big.NewRat(1, 1)}, big.NewRat(1, 2))
		}
		want, ok := system.solve()
		if !ok {
			contradicted++
			require.NotEmpty(t, solved.Locks, "seed %d: contradiction not found\n%s", seed, b.text.String())
			for _, l := range solved.Locks {
				require.NotEmpty(t, l.Loop)
			}
			continue
		}
		if clock >= 0 && len(drives) > 0 {
			k := want[clock]
			if k == nil || k.Sign() == 0 {
				require.False(t, solved.Timed(), "seed %d", seed)
				continue
			}
			scale := new(big.Rat).Quo(big.NewRat(1, 2), new(big.Rat).Abs(k))
			for _, w := range want {
				if w != nil {
					w.Mul(w, scale)
				}
			}
		}
		require.True(t, solved.Timed(), "seed %d\n%s", seed, b.text.String())
		for i, w := range want {
			got, known := solved.ArborRate(d.ArborNamed(fmt.Sprintf("s%d", i)))
			require.Equal(t, w != nil, known, "seed %d arbor s%d settled\n%s", seed, i, b.text.String())
			if known {
				settled++
				require.Equal(t, w.String(), got.Fraction(), "seed %d arbor s%d\n%s", seed, i, b.text.String())
			}
		}
	}
	require.Greater(t, settled, 3000)
	require.Greater(t, contradicted, 30)
}
