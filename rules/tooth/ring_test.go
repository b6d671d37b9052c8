package tooth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestInternalPair(t *testing.T) {
	// SDP/SI D785 Table 5-1 and KHK (from memory): m 3, 16 and 24 teeth, x 0 and
	// 0.5. The angle and y are computed; the print rounds on the way.
	f := must(Pair{Standard(16, 3), ring(24, 3, 0.5)}.Fit())
	printed(t, "0.060401", must(Involute(f.WorkingAngle)))
	computed(t, 31.0936, f.WorkingAngle)
	computed(t, 0.389423, f.Modification)
	printed(t, "13.1683", f.Centre)
	computed(t, 13.16827, f.Centre)
	for _, c := range []struct {
		side               Side
		db, dw, ha, da, df string
	}{
		{f.A, "45.105", "52.673", "3.000", "54.000", "40.500"},
		{f.B, "67.658", "79.010", "1.500", "69.000", "82.500"},
	} {
		printed(t, c.db, c.side.Base)
		printed(t, c.dw, c.side.Working)
		printed(t, c.da, c.side.Tip)
		printed(t, c.df, c.side.Root)
	}
	printed(t, "3.000", (f.A.Tip-f.A.Reference)/2)
	printed(t, "1.500", (f.B.Reference-f.B.Tip)/2)
	// Computed from the plain formula.
	computed(t, 1.679495, f.UnclampedRatio)

	// Computed: the involute condition fails by 0.0014, the others hold.
	c := must(f.RingClearance())
	computed(t, 0.666667, c.Involute.Have)
	computed(t, 0.668093, c.Involute.Need)
	assert.False(t, c.Involute.Holds)
	computed(t, 0.837612, c.Trochoid.Have)
	computed(t, 0.797514, c.Trochoid.Need)
	assert.True(t, c.Trochoid.Holds)
	computed(t, 0.794920, c.Trimming.Have)
	computed(t, 0.786792, c.Trimming.Need)
	assert.True(t, c.Trimming.Holds)
	assert.True(t, f.B.Interferes)
	assert.Less(t, f.ContactRatio, f.UnclampedRatio)
}

func TestSmallDifferences(t *testing.T) {
	// SDP/SI D785 T-46 Table 5-4: ring of 50, m 1. Computed: the involute and
	// trochoid conditions hold and trimming does not, as the page says.
	for _, c := range []struct {
		pinion        int
		x             float64
		angle, a, eps string
	}{
		{49, 1.00, "61.0605", "0.971", "1.105"},
		{48, 0.60, "46.0324", "1.354", "1.512"},
		{47, 0.40, "37.4155", "1.775", "1.726"},
		{46, 0.30, "32.4521", "2.227", "1.835"},
		{45, 0.20, "28.2019", "2.666", "1.933"},
	} {
		f := must(Pair{Standard(c.pinion, 1), ring(50, 1, c.x)}.Fit())
		printed(t, c.angle, f.WorkingAngle, c.pinion)
		printed(t, c.a, f.Centre, c.pinion)
		printed(t, c.eps, f.ContactRatio, c.pinion)
		r := must(f.RingClearance())
		assert.True(t, r.Involute.Holds, c.pinion)
		assert.True(t, r.Trochoid.Holds, c.pinion)
		assert.False(t, r.Trimming.Holds, c.pinion)
	}
}

// leastRing is the fewest teeth, up to most, of a standard ring in which the
// pinion meets a condition, 0 where there is none. The pinion's addendum is in
// modules.
func leastRing(pinion int, addendum float64, most int, holds func(RingClearance) bool) int {
	for z := pinion + 1; z <= most; z++ {
		a := Standard(pinion, 1)
		a.Addendum = addendum
		if f, err := (Pair{a, ring(z, 1, 0)}).Fit(); err == nil && holds(must(f.RingClearance())) {
			return z
		}
	}
	return 0
}

func TestPinionCutterTable(t *testing.T) {
	// SDP/SI D785 T-45 Table 5-3a: least ring for a pinion cutter that must not
	// trim it, 20 deg, addendum 1.25 m, ring tip m (z2 - 2), and that ring's tip
	// at or outside its base circle, which takes 34 teeth.
	for cutter, least := range map[int]int{
		15: 34, 16: 34, 17: 35, 18: 36, 19: 37, 20: 38, 21: 39, 22: 40, 24: 42, 25: 43, 27: 45, 28: 46,
		30: 48, 31: 49, 32: 50, 33: 51, 34: 52, 35: 53, 38: 56, 40: 58, 42: 60, 44: 62, 48: 66, 50: 68,
		56: 74, 60: 78, 64: 82, 66: 84, 80: 98, 96: 114, 100: 118,
	} {
		got := leastRing(cutter, 1.25, 200, func(c RingClearance) bool { return c.Trimming.Holds })
		assert.Equal(t, least, max(got, 34), cutter)
		a := Standard(cutter, 1)
		a.Addendum = 1.25
		c := must(must(Pair{a, ring(least, 1, 0)}.Fit()).RingClearance())
		assert.Equal(t, cutter > 22, c.Involute.Holds, "the page notes cutters 15 to 22: %d", cutter)
	}
}

func TestRingDifferences(t *testing.T) {
	// SDP/SI D785 T-45: the trochoid is avoided beyond a difference of 9;
	// computed, from 9 on, and not at 8, for pinions of 30 to 60.
	trochoid := func(c RingClearance) bool { return c.Trochoid.Holds }
	for _, z := range []int{30, 36, 45, 60} {
		assert.Equal(t, z+9, leastRing(z, 1, z+20, trochoid), z)
	}
	// Computed: trimming needs 17 for pinions of 18 to 40, 16 at 60 and 100.
	trimming := func(c RingClearance) bool { return c.Trimming.Holds }
	for z, difference := range map[int]int{18: 17, 25: 17, 40: 17, 60: 16, 100: 16} {
		assert.Equal(t, z+difference, leastRing(z, 1, z+30, trimming), z)
	}
}

func TestLeastRingWithoutInvoluteInterference(t *testing.T) {
	// Computed, full addendum.
	involute := func(c RingClearance) bool { return c.Involute.Holds }
	for pinion, least := range map[int]int{
		18: 161, 19: 86, 20: 64, 21: 53, 22: 46, 23: 42, 24: 40, 25: 38, 26: 37, 27: 36, 28: 35, 29: 34,
		12: 0, 17: 0,
	} {
		got := leastRing(pinion, 1, 2000, involute)
		assert.Equal(t, least, got, pinion)
	}
}

func TestLargestRingAddendum(t *testing.T) {
	// Computed from z2/2 - sqrt((z2 cos(a)/2)^2 + ((z2 - z1) sin(a)/2)^2).
	for _, c := range []struct {
		pinion, ring int
		addendum     float64
	}{
		{16, 48, 0.7930}, {18, 72, 0.9333}, {20, 60, 0.9912}, {12, 48, 0.6222}, {15, 45, 0.7434},
	} {
		f := must(Pair{Standard(c.pinion, 1), ring(c.ring, 1, 0)}.Fit())
		computed(t, c.addendum, must(f.LargestRingAddendum()), c)
	}
}

func TestLargestRingAddendumCures(t *testing.T) {
	for _, p := range somePairs(300) {
		f := must(p.Fit())
		if !p.B.Ring {
			_, err := f.LargestRingAddendum()
			require.ErrorIs(t, err, ErrRange)
			_, err = f.RingClearance()
			require.ErrorIs(t, err, ErrRange)
			continue
		}
		most := must(f.LargestRingAddendum())
		for _, c := range []struct {
			addendum float64
			holds    bool
		}{{most - 1e-6, true}, {most, true}, {most + 1e-6, false}} {
			p.B.Addendum = c.addendum
			if p.Check() != nil {
				continue
			}
			f := must(p.Fit())
			assert.Equal(t, c.holds, must(f.RingClearance()).Involute.Holds)
			assert.Equal(t, !c.holds, f.B.Interferes)
		}
	}
}
