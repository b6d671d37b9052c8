package tooth

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCycloidalAddendum(t *testing.T) {
	// Practical factor, 0.95 of the theoretical: computed from the geometry of
	// radial flanks, not compared with the table of BS 978-2.
	leaves := []int{6, 7, 8, 9, 10, 12, 14, 15, 16}
	for _, row := range []struct {
		ratio   float64
		factors []float64
	}{
		{3, []float64{1.2591, 1.3350, 1.4033, 1.4655, 1.5228, 1.6262, 1.7179, 1.7604, 1.8009}},
		{4, []float64{1.2799, 1.3588, 1.4297, 1.4944, 1.5539, 1.6613, 1.7566, 1.8006, 1.8427}},
		{5, []float64{1.2934, 1.3742, 1.4469, 1.5131, 1.5741, 1.6841, 1.7817, 1.8268, 1.8698}},
		{6, []float64{1.3028, 1.3850, 1.4589, 1.5262, 1.5883, 1.7001, 1.7993, 1.8452, 1.8889}},
		{6.5, []float64{1.3065, 1.3893, 1.4636, 1.5314, 1.5939, 1.7064, 1.8063, 1.8524, 1.8965}},
		{7, []float64{1.3098, 1.3930, 1.4677, 1.5359, 1.5987, 1.7119, 1.8124, 1.8588, 1.9031}},
		{7.5, []float64{1.3126, 1.3962, 1.4714, 1.5399, 1.6030, 1.7168, 1.8177, 1.8643, 1.9088}},
		{8, []float64{1.3151, 1.3991, 1.4746, 1.5434, 1.6068, 1.7211, 1.8224, 1.8693, 1.9139}},
		{10, []float64{1.3228, 1.4079, 1.4844, 1.5541, 1.6184, 1.7342, 1.8369, 1.8844, 1.9296}},
		{12, []float64{1.3281, 1.4139, 1.4911, 1.5615, 1.6264, 1.7432, 1.8468, 1.8947, 1.9404}},
	} {
		for i, n := range leaves {
			g := generating{row.ratio, float64(n)}
			computed(t, row.factors[i], practice*g.addendum(g.pointed()), row.ratio, n)
			if teeth := row.ratio * g.leaves; teeth == math.Trunc(teeth) {
				computed(t, row.factors[i], must(Cycloidal{int(teeth), n, 1}.PracticalFactor()), row.ratio, n)
			}
		}
	}
}

func TestCycloidalSizes(t *testing.T) {
	// Computed, with the standard's coefficients from BS 978-2 (from memory).
	c := Cycloidal{Teeth: 80, Leaves: 10, Module: 0.5}
	computed(t, 1.6914, must(c.AddendumFactor()))
	s := must(c.Sizes())
	same(t, 40, s.WheelPitch)
	same(t, 5, s.PinionPitch)
	same(t, 22.5, s.Centre)
	computed(t, 41.6068, s.WheelTip)
	computed(t, 38.4292, s.WheelRoot)
	computed(t, 2.9932, s.PinionRoot)
	computed(t, 5.525, s.PinionTip)
	computed(t, 1.40*1.6914*0.5, s.FlankArc)

	c = Cycloidal{Teeth: 64, Leaves: 8, Module: 0.4}
	computed(t, 1.5522, must(c.AddendumFactor()))
	computed(t, 14.400, must(c.Sizes()).Centre)
	computed(t, 26.7797, must(c.Sizes()).WheelTip)

	c = Cycloidal{Teeth: 72, Leaves: 6, Module: 0.3}
	computed(t, 1.3980, must(c.AddendumFactor()))
	computed(t, 11.700, must(c.Sizes()).Centre)
	computed(t, 22.3968, must(c.Sizes()).WheelTip)
}

func TestLeafForms(t *testing.T) {
	// BS 978-2 (from memory): pinion tip diameter over the leaf count, rounding
	// and width in modules; the backlash of the form is computed.
	for _, c := range []struct {
		leaves                         []int
		tip, rounding, width, backlash float64
	}{
		{[]int{6, 7}, 1.71, 1.05, 1.05, 0.521},
		{[]int{8, 9}, 1.34, 0.7, 1.05, 0.521},
		{[]int{10}, 1.05, 0, 1.05, 0.521},
		{[]int{11, 12, 16}, 1.25, 0, 1.25, 0.321},
	} {
		for _, n := range c.leaves {
			s := must(Cycloidal{Teeth: 8 * n, Leaves: n, Module: 1}.Sizes())
			same(t, float64(n)+c.tip, s.PinionTip, n)
			same(t, c.rounding, s.LeafTipRadius, n)
			same(t, c.width, s.LeafWidth, n)
			assert.InDelta(t, c.backlash, s.Backlash, 5e-4, n)
		}
	}
}

func TestRecessAction(t *testing.T) {
	// Computed at a ratio of 8, full tip; 10 leaves as the fewest that nearly do
	// without engaging friction agree with Goodrich.
	for n, pointed := range map[int]string{
		6: ".699", 7: ".770", 8: ".838", 9: ".903", 10: ".966", 11: "1.026", 12: "1.085", 16: "1.306",
	} {
		full, cut, err := Cycloidal{Teeth: 8 * n, Leaves: n, Module: 0.5}.RecessAction()
		require.NoError(t, err)
		printed(t, pointed, full, n)
		assert.Less(t, cut, full)
	}
}

func TestToothHeightForEightLeaves(t *testing.T) {
	// Goodrich gives 7/20 of the pinion's pitch radius, 1.40 m; computed, 1.403
	// at a ratio of 3 and 1.475 at 8.
	low := must(Cycloidal{Teeth: 24, Leaves: 8, Module: 1}.PracticalFactor())
	high := must(Cycloidal{Teeth: 64, Leaves: 8, Module: 1}.PracticalFactor())
	printed(t, "1.403", low)
	printed(t, "1.475", high)
	assert.InDelta(t, 7.0/20*4, low, 0.005)
}

func TestTradeRule(t *testing.T) {
	// Trade cutter tables (from memory, unverified) turn every wheel to N + 2.76
	// modules and small pinions to n + 1.71: the practical addendum of a wheel
	// for 7 leaves, and the tip of 6 and 7.
	c := Cycloidal{Teeth: 42, Leaves: 7, Module: 1}
	s := must(c.Sizes())
	assert.InDelta(t, 2.76, s.WheelTip-42, 0.02)
	same(t, 1.71, s.PinionTip-7)
}

func TestPointLiesOnTheToothsMiddle(t *testing.T) {
	// The point by another way: an epicycloid traced by a circle of half the
	// pinion's pitch radius, from the flank at the pitch circle, reaches the
	// middle line of a tooth of half the pitch at the pointed addendum.
	for _, c := range []Cycloidal{{80, 10, 1}, {48, 8, 1}, {36, 12, 1}, {75, 6, 1}} {
		rolling, fixed := float64(c.Leaves)/4, float64(c.Teeth)/2
		tipRadius := fixed + must(c.AddendumFactor())
		var angle, radius float64
		for u := 0.0; radius < tipRadius; u += 1e-6 {
			x := (fixed+rolling)*math.Cos(u) - rolling*math.Cos((fixed+rolling)/rolling*u)
			y := (fixed+rolling)*math.Sin(u) - rolling*math.Sin((fixed+rolling)/rolling*u)
			radius, angle = math.Hypot(x, y), math.Atan2(y, x)
		}
		assert.InDelta(t, math.Pi/2/float64(c.Teeth), angle, 1e-6, c)
	}
}

func TestUseOfLeaves(t *testing.T) {
	// Common practice: 6 the fewest, 10 to 12 good work, 14 to 16 regulators.
	for n, use := range map[int]LeafUse{
		5: TooFewLeaves, 6: ClockLeaves, 8: ClockLeaves, 9: ClockLeaves, 10: GoodLeaves, 12: GoodLeaves,
		14: RegulatorLeaves, 16: RegulatorLeaves,
	} {
		assert.Equal(t, use, must(UseOfLeaves(n)), n)
	}
}

func TestCycloidalRefuses(t *testing.T) {
	for _, c := range []Cycloidal{{8, 10, 1}, {80, 4, 1}, {80, 10, 0}} {
		_, err := c.Sizes()
		require.ErrorIs(t, err, ErrRange)
		_, _, err = c.RecessAction()
		require.ErrorIs(t, err, ErrRange)
	}
}
