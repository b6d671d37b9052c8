package chain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/chain"
)

// Computed from the formula d = p/sin(180/z) of ISO 606 apart from this project.
func TestPitchDiameter(t *testing.T) {
	for _, row := range []struct {
		pitch float64
		teeth int
		want  float64
	}{
		{12.7, 8, 33.187}, {12.7, 14, 57.073}, {12.7, 16, 65.098}, {12.7, 17, 69.116},
		{12.7, 19, 77.159}, {12.7, 40, 161.868}, {12.7, 45, 182.062},
		{8, 12, 30.910}, {19.05, 40, 242.802},
		{6.35, 9, 18.566}, {6.35, 17, 34.558}, {6.35, 21, 42.605},
		{9.525, 17, 51.837}, {9.525, 19, 57.870},
	} {
		d, err := chain.PitchDiameter(row.pitch, row.teeth)
		require.NoError(t, err)
		near(t, row.want, d, "%v x %d", row.pitch, row.teeth)
		r, err := chain.PitchRadius(row.teeth)
		require.NoError(t, err)
		assert.InDelta(t, d, 2*r*row.pitch, 1e-9)
	}
}

// A maker's stock list of chain wheels, read. Three of its figures are off by up
// to a unit of the last digit.
func TestPitchDiameterStockList(t *testing.T) {
	for _, row := range []struct {
		pitch       float64
		teeth       int
		want, delta float64
	}{
		{12.7, 14, 57.07, half(2)}, {12.7, 16, 65.10, half(2)},
		{12.7, 40, 161.87, half(2)}, {8, 12, 30.91, half(2)},
		{12.7, 8, 33.18, 0.01}, {12.7, 45, 182.07, 0.01}, {19.05, 40, 242.81, 0.01},
	} {
		d, err := chain.PitchDiameter(row.pitch, row.teeth)
		require.NoError(t, err)
		assert.InDelta(t, row.want, d, row.delta, "%v x %d", row.pitch, row.teeth)
	}
}

// 08B with 17 teeth, computed from the formulas of Tandwiel, chain wheels, and of
// American practice apart from this project.
func TestSprocketDiameters(t *testing.T) {
	s, ok := chain.Lookup("08B")
	require.True(t, ok)
	df, err := chain.RootDiameter(s.Pitch, 17, s.Roller)
	require.NoError(t, err)
	assert.InDelta(t, 60.606, df, half(3))
	least, greatest, err := chain.TipDiameters(s.Pitch, 17, s.Roller)
	require.NoError(t, err)
	assert.InDelta(t, 72.111, least, half(3))
	assert.InDelta(t, 76.481, greatest, half(3))
	us, err := chain.OutsideDiameter(s.Pitch, 17)
	require.NoError(t, err)
	assert.InDelta(t, 75.559, us, half(3))
}

// 0.93 b1 up to a pitch of 12.7 mm, 0.95 b1 above: Tandwiel, chain wheels, read.
func TestToothWidth(t *testing.T) {
	for name, part := range map[string]float64{"04C": .93, "08B": .93, "10B": .95, "16B": .95} {
		s, ok := chain.Lookup(name)
		require.True(t, ok)
		w, err := chain.ToothWidth(s.Pitch, s.InnerWidth)
		require.NoError(t, err)
		assert.InDelta(t, part*s.InnerWidth, w, 1e-12, name)
	}
}

// Percent, computed from the formula apart from this project. The spread of 9
// teeth is 6.15497, which rounded twice is sometimes given as 6.16.
func TestChordalRipple(t *testing.T) {
	for _, row := range []struct {
		teeth        int
		drop, spread float64
		digits       int
	}{
		{8, 7.61, 7.81, 2}, {9, 6.03, 6.15, 2}, {11, 4.05, 4.11, 2}, {13, 2.91, 2.93, 2},
		{17, 1.703, 1.712, 3}, {21, 1.117, 1.121, 3}, {25, 0.789, 0.791, 3},
	} {
		drop, spread, err := chain.ChordalRipple(row.teeth)
		require.NoError(t, err)
		assert.InDelta(t, row.drop, 100*drop, half(row.digits), row.teeth)
		assert.InDelta(t, row.spread, 100*spread, half(row.digits), row.teeth)
	}
	last := 1.0
	for z := chain.LeastTeeth; z < 500; z++ {
		drop, spread, err := chain.ChordalRipple(z)
		require.NoError(t, err)
		assert.Less(t, drop, last, "more teeth run smoother")
		assert.Greater(t, spread, drop)
		last = drop
	}
}
