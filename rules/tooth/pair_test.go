package tooth

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestStandardPair(t *testing.T) {
	// SDP/SI D785 Table 4-1 (from memory).
	f := must(Pair{Standard(12, 3), Standard(24, 3)}.Fit())
	printed(t, "54.000", f.Centre)
	printed(t, "20", f.WorkingAngle)
	// Tip clearance 0.25 m, which is h/9: Novexa glossary.
	same(t, 0.75, f.A.Clearance)
	same(t, f.A.Depth/9, f.B.Clearance)
}

func TestShiftedPair(t *testing.T) {
	// SDP/SI D785 Table 4-4 and KHK (from memory); m 3, 12 and 24 teeth, x 0.6
	// and 0.36. Beside the print, values computed from the formulas.
	full := Pair{shifted(12, 3, 0.6), shifted(24, 3, 0.36)}
	p := must(full.Shortened())
	f := must(p.Fit())
	printed(t, "0.034316", must(Involute(f.WorkingAngle)))
	computed(t, 0.0343161, must(Involute(f.WorkingAngle)))
	printed(t, "26.0886", f.WorkingAngle)
	computed(t, 26.088563, f.WorkingAngle)
	printed(t, "0.83329", f.Modification)
	computed(t, 0.8332899, f.Modification)
	printed(t, "56.4999", f.Centre)
	computed(t, 56.499870, f.Centre)
	printed(t, "1.202", f.ContactRatio)
	computed(t, 1.202102, f.ContactRatio)
	computed(t, 0.126710, p.A.Shortening)
	for _, c := range []struct {
		side                                        Side
		d, db, dw, ha, da, df                       string
		dbExact, dwExact, haExact, daExact, dfExact float64
	}{
		{f.A, "36.000", "33.8289", "37.667", "4.420", "44.840", "32.100", 33.828934, 37.666580, 4.419870, 44.839739, 32.100},
		{f.B, "72.000", "67.6579", "75.333", "3.700", "79.400", "66.660", 67.657869, 75.333160, 3.699870, 79.399739, 66.660},
	} {
		ha := (c.side.Tip - c.side.Reference) / 2
		printed(t, c.d, c.side.Reference)
		printed(t, c.db, c.side.Base)
		printed(t, c.dw, c.side.Working)
		printed(t, c.ha, ha)
		printed(t, "6.370", c.side.Depth)
		printed(t, c.da, c.side.Tip)
		printed(t, c.df, c.side.Root)
		computed(t, c.dbExact, c.side.Base)
		computed(t, c.dwExact, c.side.Working)
		computed(t, c.haExact, ha)
		computed(t, 6.369870, c.side.Depth)
		computed(t, c.daExact, c.side.Tip)
		computed(t, c.dfExact, c.side.Root)
		same(t, 0.75, c.side.Clearance, "shortening keeps the bottom clearance")
	}
	// Computed: without shortening.
	f = must(full.Fit())
	computed(t, 45.600, f.A.Tip)
	computed(t, 80.160, f.B.Tip)
	computed(t, 1.347796, f.UnclampedRatio)
}

func TestTeethForCentre(t *testing.T) {
	// SDP/SI D785 T-35 Table 4-2: m 3, a 54, ratio 0.8.
	z1, z2, err := TeethForCentre(3, 54, 0.8)
	require.NoError(t, err)
	printed(t, "16", z1)
	printed(t, "20", z2)
}

func TestMovedCentres(t *testing.T) {
	// Shigley Ex 13-1 (from memory): P 2, 16 and 40 teeth, C 14 to 14.25 in.
	// The angle is computed; the book's 22.56 is rounded.
	p := Pair{Standard(16, 12.7), Standard(40, 12.7)}
	printed(t, "14", must(p.NominalCentre())/25.4)
	f := must(p.At(14.25 * 25.4))
	printed(t, "8.143", f.A.Working/25.4)
	printed(t, "20.357", f.B.Working/25.4)
	computed(t, 22.6005, f.WorkingAngle)
}

func TestHelicalPair(t *testing.T) {
	// SDP/SI D785, helical gears in the normal system, and KHK (from memory):
	// m 3, helix 30, 12 and 60 teeth, x 0.09809 and 0. Tip and root of the
	// pinion are computed: the print, as remembered, cuts the last digit off.
	a, b := shifted(12, 3, 0.09809), Standard(60, 3)
	a.Helix, b.Helix = 30, -30
	_, alpha, err := a.Transverse()
	require.NoError(t, err)
	printed(t, "22.79588", alpha)
	f := must(must(Pair{a, b}.Shortened()).Fit())
	printed(t, "125.000", f.Centre)
	printed(t, "23.1126", f.WorkingAngle)
	printed(t, "0.023405", must(Involute(f.WorkingAngle)))
	printed(t, "41.569", f.A.Reference)
	printed(t, "207.846", f.B.Reference)
	printed(t, "38.322", f.A.Base)
	printed(t, "191.611", f.B.Base)
	computed(t, 48.15386, f.A.Tip)
	printed(t, "213.842", f.B.Tip)
	computed(t, 34.65776, f.A.Root)
	printed(t, "200.346", f.B.Root)
}

func TestHelicalSizes(t *testing.T) {
	// Computed: 20 teeth, m 2, helix 30: z/cos3 = 30.7920, lead = pi 20 2/sin 30.
	g := Standard(20, 2)
	g.Helix = -30
	computed(t, 30.7920, must(g.VirtualTeeth()))
	computed(t, 251.3274, must(g.Lead()))
	computed(t, 0.795775, must(g.OverlapRatio(10)))
	_, err := Standard(20, 2).Lead()
	require.ErrorIs(t, err, ErrRange)
}

func TestPairRefuses(t *testing.T) {
	good := Standard(20, 1)
	helical := good
	helical.Helix = 20
	for name, p := range map[string]Pair{
		"module":             {good, Standard(20, 1.25)},
		"pressure angle":     {good, at(14.5, 20, 1)},
		"same hand":          {helical, helical},
		"ring as first":      {ring(60, 1, 0), good},
		"ring of few teeth":  {good, ring(20, 1, 0)},
		"shifts beyond cure": {shifted(20, 1, -0.5), shifted(20, 1, -0.5)},
	} {
		_, err := p.Fit()
		require.ErrorIs(t, err, ErrNoMesh, name)
	}
	_, err := Pair{good, good}.At(18)
	require.ErrorIs(t, err, ErrNoMesh, "base circles overlap")
	_, err = Pair{good, good}.At(-1)
	require.ErrorIs(t, err, ErrRange)
	_, err = Pair{good, good}.At(5000)
	require.ErrorIs(t, err, ErrRange)
	inRing := ring(60, 1, 0)
	inRing.Helix = 20
	require.NoError(t, Pair{helical, inRing}.Check(), "same hand in a ring")
}
