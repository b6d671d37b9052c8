package tooth

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLeastTeeth(t *testing.T) {
	// Computed; SDP/SI D785 T-36 prints 32 at 14.5 and 18 at 20 deg.
	for _, c := range []struct {
		angle, exact float64
		whole        int
	}{
		{14.5, 31.9029, 32}, {17.5, 22.1180, 23}, {20, 17.0973, 18}, {22.5, 13.6569, 14}, {25, 11.1978, 12},
	} {
		z := must(LeastTeeth(c.angle, 1, 0))
		computed(t, c.exact, z, c.angle)
		assert.Equal(t, c.whole, int(math.Ceil(z)), c.angle)
	}
	assert.Zero(t, must(LeastTeeth(20, 1, 1.2)))
}

func TestUndercutShift(t *testing.T) {
	// Computed from 1 - z sin2(20)/2, to the four places given.
	for _, c := range []struct {
		teeth int
		exact string
	}{
		{6, "0.6491"}, {7, "0.5906"}, {8, "0.5321"}, {9, "0.4736"}, {10, "0.4151"}, {11, "0.3566"},
		{12, "0.2981"}, {13, "0.2396"}, {14, "0.1812"}, {15, "0.1227"}, {16, "0.0642"}, {17, "0.0057"},
	} {
		exact, practical, err := Standard(c.teeth, 1).UndercutShift()
		require.NoError(t, err)
		printed(t, c.exact, exact, c.teeth)
		// DIN 3960 (from memory): 14 teeth tolerated, (14 - z)/17.
		same(t, float64(14-c.teeth)/17, practical, c.teeth)
	}
	// 17 teeth are undercut by 0.6 % of a module, and held sound.
	exact, practical, err := Standard(17, 1).UndercutShift()
	require.NoError(t, err)
	assert.Positive(t, exact)
	assert.Negative(t, practical)
	_, _, err = ring(40, 1, 0).UndercutShift()
	require.ErrorIs(t, err, ErrRange)
}

func TestUndercutShiftCures(t *testing.T) {
	for _, helix := range []float64{0, 15, 30} {
		for z := 5; z < 40; z++ {
			g := at(17.5, z, 2)
			g.Helix = helix
			x, _, err := g.UndercutShift()
			require.NoError(t, err)
			if helix == 0 {
				same(t, float64(z), must(LeastTeeth(17.5, 1, math.Min(x, 1))), z)
			}
			// With it, the rack's tip line meets the line of action where it
			// touches the base circle.
			g.Shift = x
			depth := g.reference() * math.Pow(math.Sin(g.alphaT()), 2)
			same(t, (g.Addendum-g.Shift)*g.Module, depth, z, helix)
		}
	}
}

func TestLeastPinion(t *testing.T) {
	rack := math.Inf(1)
	// Computed; 13 at 1:1, 16 at 1:4 and 18 for a rack at 20 deg are printed by
	// Shigley section 13-7 (from memory), 32 for a rack at 14.5 deg by Mott
	// p. 320.
	for _, c := range []struct {
		angle, addendum, ratio, exact float64
		whole                         int
	}{
		{14.5, 1, 1, 22.226, 23}, {14.5, 1, 2, 26.013, 27}, {14.5, 1, 3, 27.675, 28}, {14.5, 1, 4, 28.606, 29},
		{14.5, 1, 5, 29.201, 30}, {14.5, 1, 10, 30.483, 31}, {14.5, 1, rack, 31.903, 32},
		{20, 1, 1, 12.323, 13}, {20, 1, 2, 14.161, 15}, {20, 1, 3, 14.981, 15}, {20, 1, 4, 15.444, 16},
		{20, 1, 5, 15.740, 16}, {20, 1, 10, 16.383, 17}, {20, 1, rack, 17.097, 18},
		{25, 1, 1, 8.358, 9}, {25, 1, 2, 9.433, 10}, {25, 1, 3, 9.921, 10}, {25, 1, 4, 10.198, 11},
		{25, 1, 5, 10.376, 11}, {25, 1, 10, 10.764, 11}, {25, 1, rack, 11.198, 12},
		{20, 0.8, rack, 13.678, 14}, {20, 0.8, 1, 9.858, 10},
	} {
		z := must(LeastPinion(c.ratio, c.angle, c.addendum))
		computed(t, c.exact, z, c)
		assert.Equal(t, c.whole, int(math.Ceil(z)), c)
	}
	_, err := LeastPinion(0.5, 20, 1)
	require.ErrorIs(t, err, ErrRange)
}

func TestLargestWheel(t *testing.T) {
	// Computed; the 20 deg column is printed by Shigley section 13-7, Mott Table
	// 8-6 and Norton (from memory).
	for pinion, exact := range map[int]float64{13: 16.451, 14: 26.121, 15: 45.489, 16: 101.072, 17: 1309.861} {
		computed(t, exact, must(LargestWheel(pinion, 20, 1)), pinion)
	}
	for pinion, whole := range map[int]int{
		23: 26, 24: 32, 25: 40, 26: 51, 27: 67, 28: 92, 29: 133, 30: 219, 31: 496,
	} {
		assert.Equal(t, whole, int(must(LargestWheel(pinion, 14.5, 1))), pinion)
	}
	assert.True(t, math.IsInf(must(LargestWheel(18, 20, 1)), 1))
	assert.True(t, math.IsInf(must(LargestWheel(32, 14.5, 1)), 1))
}

func TestThirteenWithFiftyInterferes(t *testing.T) {
	// Computed: the limit of 13 teeth at 20 deg is 16.
	assert.True(t, must(Pair{Standard(13, 1), Standard(50, 1)}.Fit()).B.Interferes)
	assert.False(t, must(Pair{Standard(13, 1), Standard(16, 1)}.Fit()).B.Interferes)
	assert.True(t, must(Pair{Standard(13, 1), Standard(17, 1)}.Fit()).B.Interferes)
}

func TestLimitsAgreeWithGeneralTest(t *testing.T) {
	for _, angle := range []float64{14.5, 20, 25} {
		for pinion := 8; pinion < 40; pinion++ {
			largest := must(LargestWheel(pinion, angle, 1))
			for wheel := pinion; wheel < 150; wheel += 7 {
				f := must(Pair{at(angle, pinion, 1), at(angle, wheel, 1)}.Fit())
				assert.Equal(t, float64(wheel) > largest, f.B.Interferes, "%d with %d", pinion, wheel)
				least := must(LeastPinion(float64(wheel)/float64(pinion), angle, 1))
				assert.Equal(t, float64(pinion) < least, f.B.Interferes, "%d with %d", pinion, wheel)
			}
		}
	}
}

func TestContactRatio(t *testing.T) {
	// Computed. The unclamped figures are what the plain formula gives; those of
	// 14.5 deg below 32 teeth and of 25 deg are given unclamped only.
	for _, c := range []struct {
		z1, z2                    int
		angle, unclamped, clamped float64
	}{
		{12, 24, 14.5, 1.7203, 0}, {16, 44, 14.5, 1.8913, 0}, {17, 17, 14.5, 1.7217, 0}, {20, 40, 14.5, 1.9199, 0},
		{12, 24, 20, 1.5111, 1.4053}, {16, 44, 20, 1.6152, 1.6152}, {17, 17, 20, 1.5148, 1.5148},
		{20, 40, 20, 1.6352, 1.6352}, {10, 60, 20, 1.5771, 1.2640}, {8, 60, 20, 1.5458, 1.1169},
		{12, 24, 25, 1.3777, 0}, {16, 44, 25, 1.4465, 0}, {17, 17, 25, 1.3816, 0}, {20, 40, 25, 1.4608, 0},
	} {
		f := must(Pair{at(c.angle, c.z1, 1), at(c.angle, c.z2, 1)}.Fit())
		computed(t, c.unclamped, f.UnclampedRatio, c)
		if c.clamped != 0 {
			computed(t, c.clamped, f.ContactRatio, c)
		}
	}
}

func TestContactRatioLimit(t *testing.T) {
	// Computed from two racks.
	for angle, limit := range map[float64]float64{14.5: 2.6263, 20: 1.9808, 25: 1.6621} {
		computed(t, limit, must(ContactRatioLimit(angle, 1)), angle)
		f := must(Pair{at(angle, 5000, 1), at(angle, 90000, 1)}.Fit())
		assert.Less(t, f.ContactRatio, limit)
		assert.InDelta(t, limit, f.ContactRatio, 0.02)
	}
}
