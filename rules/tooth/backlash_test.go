package tooth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBacklash(t *testing.T) {
	// Computed, 20 deg; the tooth counts only make up the centre distance.
	for _, c := range []struct {
		a0, opening, approx, normal, exact, angle float64
	}{
		{40, 0.1, 0.07279, 0.06840, 0.07366, 20.3889},
		{20, 0.05, 0.03640, 0.03420, 0.03683, 20.3889},
		{15, 0.1, 0.07279, 0.06840, 0.07508, 21.0177},
	} {
		m := c.a0 / 30
		f := must(Pair{Standard(20, m), Standard(40, m)}.At(c.a0 + c.opening))
		approx := must(ApproxBacklash(c.opening, 20))
		assert.InDelta(t, c.approx, approx, 5.1e-6)
		assert.InDelta(t, c.normal, must(NormalBacklash(approx, 20)), 5.1e-6)
		assert.InDelta(t, c.exact, f.Backlash, 5.1e-6)
		computed(t, c.angle, f.WorkingAngle)
		same(t, must(NormalBacklash(f.Backlash, f.WorkingAngle)), f.NormalBacklash)
	}
}

func TestOpeningForBacklash(t *testing.T) {
	// SDP/SI D190 T47 eq 21-22c; QTC Q410 p. 388 eq 14-2, 14-3; and computed.
	printed(t, "1.933", must(OpeningForBacklash(1, 14.5)))
	printed(t, "1.374", must(OpeningForBacklash(1, 20)))
	computed(t, 1.93336, must(OpeningForBacklash(1, 14.5)))
	computed(t, 1.37374, must(OpeningForBacklash(1, 20)))
	same(t, 0.3, must(OpeningForBacklash(must(ApproxBacklash(0.3, 25)), 25)))
}

func TestPlayAngle(t *testing.T) {
	// Computed.
	computed(t, 0.19099, must(PlayAngle(0.05, 30)))
	computed(t, 11.459, must(PlayAngle(0.05, 30))*60)
	computed(t, 0.57296, must(PlayAngle(0.05, 10)))
	computed(t, 34.377, must(PlayAngle(0.05, 10))*60)
	f := must(Pair{Standard(10, 1), Standard(30, 1)}.At(20.05))
	same(t, must(PlayAngle(f.Backlash, f.A.Working)), f.A.Play)
	same(t, f.A.Play, 3*f.B.Play)
}

func TestTrainPlay(t *testing.T) {
	// Computed: 0.6 deg behind which the train still gears down 3:1, then 0.1.
	same(t, 0.3, must(TrainPlay(Play{0.6, -3}, Play{0.1, 1})))
	same(t, 0, must(TrainPlay()))
	_, err := TrainPlay(Play{0.1, 0})
	require.ErrorIs(t, err, ErrRange)
}

func TestThinning(t *testing.T) {
	// SDP/SI D785 eq 14-1: the backlash is the sum of the thinning.
	p := Pair{Standard(20, 1), Standard(40, 1)}
	p.A.Thinning, p.B.Thinning = 0.03, 0.05
	same(t, 0.08, must(p.At(30)).Backlash)
	same(t, 1.570796326794897-0.03, must(p.A.Blank()).Thickness)
}

func TestCentreForBacklashRoundTrip(t *testing.T) {
	for _, p := range somePairs(300) {
		nominal := must(p.NominalCentre())
		assert.InDelta(t, nominal, must(p.CentreForBacklash(0)), 1e-9, "%+v", p)
		p.A.Thinning = 0.02 * p.A.Module
		for _, share := range []float64{0, 0.01, 0.02} {
			centre := must(p.CentreForBacklash(share * p.A.Module))
			assert.InDelta(t, share*p.A.Module, must(p.At(centre)).Backlash, 1e-9)
			if share == 0 {
				assert.Equal(t, !p.B.Ring, centre < nominal, "thinned teeth jam later")
			}
		}
	}
}

func TestIndustrialBacklash(t *testing.T) {
	// ISO/TR 10064-2 and the AGMA 2002 metric table (from memory): two printed
	// digits, more computed. Below module 1.5 it is an extrapolation.
	for _, c := range []struct {
		m, a, exact float64
		table       string
	}{
		{1.5, 50, 0.0867, "0.09"}, {2, 100, 0.1133, "0.11"}, {3, 100, 0.1333, "0.13"}, {5, 200, 0.2067, "0.21"},
		{1, 30, 0.070, ""}, {0.5, 20, 0.0567, ""},
	} {
		least, extrapolated, err := IndustrialBacklash(c.m, c.a)
		require.NoError(t, err)
		assert.InDelta(t, c.exact, least, 5.1e-5)
		assert.Equal(t, c.table == "", extrapolated)
		if c.table != "" {
			printed(t, c.table, least)
		}
	}
}

func TestFinePitchBacklash(t *testing.T) {
	// Machinery's Handbook (from memory; to be verified): inches.
	for _, c := range []struct {
		class            byte
		coarsest, finest float64
		least, most      float64
	}{
		{'A', 20, 45, .004, .008}, {'A', 46, 70, .003, .006}, {'A', 71, 90, .002, .00375}, {'A', 91, 200, .0015, .003},
		{'B', 20, 60, .002, .004}, {'B', 61, 120, .0015, .003}, {'B', 121, 200, .001, .002},
		{'C', 20, 60, .001, .002}, {'C', 61, 120, .0007, .0014}, {'C', 121, 200, .0004, .0008},
		{'D', 20, 60, .0005, .001}, {'D', 61, 120, .0004, .0008}, {'D', 121, 200, .0002, .0004},
		{'E', 20, 200, 0, 0},
	} {
		for _, pitch := range []float64{c.coarsest, c.finest} {
			least, most, err := FinePitchBacklash(c.class, pitch)
			require.NoError(t, err)
			same(t, c.least*25.4, least, c.class, pitch)
			same(t, c.most*25.4, most, c.class, pitch)
		}
	}
	_, _, err := FinePitchBacklash('F', 48)
	require.ErrorIs(t, err, ErrRange)
	_, _, err = FinePitchBacklash('A', 16)
	require.ErrorIs(t, err, ErrRange)
}

func TestBacklashByModule(t *testing.T) {
	// Common practice for instruments: 0.04 to 0.10 m.
	least, most, err := InstrumentBacklash(0.5)
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{0.02, 0.05}, []float64{least, most}, 1e-12)
	// Novexa glossary: 3 to 6 % of the module, new equipment.
	least, most, err = MachineBacklash(20)
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{0.6, 1.2}, []float64{least, most}, 1e-12)
}
