package chain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/chain"
)

// 11/77 teeth need 20.967 pitches for 120 degrees of wrap, computed from the
// formula apart from this project.
func TestCentreForWrap(t *testing.T) {
	c, err := chain.CentreForWrap(11, 77, chain.WrapLeast)
	require.NoError(t, err)
	assert.InDelta(t, 20.967, c, half(3))
	w, _, err := chain.Wrap(11, 77, c)
	require.NoError(t, err)
	assert.InDelta(t, chain.WrapLeast, w, 1e-9)
	w, _, err = chain.Wrap(11, 77, c*0.99)
	require.NoError(t, err)
	assert.Less(t, w, chain.WrapLeast)
}

// A ratio up to 3:1 always gives 120 degrees: Diamond Chain, frequently asked
// questions, read. Touching, 17/51 has 120.25 degrees, computed from the formula.
func TestRatioForWrap(t *testing.T) {
	r1, _ := chain.PitchRadius(17)
	r2, _ := chain.PitchRadius(51)
	w, _, err := chain.Wrap(17, 51, (r1+r2)*(1+1e-12))
	require.NoError(t, err)
	assert.InDelta(t, 120.25, w, half(2))
	for z := 7; z <= 40; z++ {
		big := int(chain.RatioForWrap) * z
		r1, _ := chain.PitchRadius(z)
		r2, _ := chain.PitchRadius(big)
		w, _, err := chain.Wrap(z, big, (r1+r2)*(1+1e-9))
		require.NoError(t, err)
		assert.GreaterOrEqual(t, w, chain.WrapLeast, z)
	}
	w, _, err = chain.Wrap(17, 17*4, 14)
	require.NoError(t, err)
	assert.Less(t, w, chain.WrapLeast)
}

// A span of 46.5 in has 4 % of slack, 1.86 in: HKK, read. A sag of 4 % lengthens
// the span by 0.427 %: computed from the formula.
func TestSag(t *testing.T) {
	assert.InDelta(t, 1.86, 46.5*chain.SlackNormal, half(2))
	extra, err := chain.SagLength(46.5, 46.5*chain.SlackNormal)
	require.NoError(t, err)
	assert.InDelta(t, 0.427, 100*extra/46.5, half(3))
	sag, err := chain.Sag(46.5, extra)
	require.NoError(t, err)
	assert.InDelta(t, 46.5*chain.SlackNormal, sag, 1e-9)
	for _, part := range []float64{0, 0.01, 0.1, 0.2499} {
		extra, err := chain.SagLength(100, 100*part)
		require.NoError(t, err)
		sag, err := chain.Sag(100, extra)
		require.NoError(t, err)
		assert.InDelta(t, 100*part, sag, 1e-9)
	}
}

// links/gcd: 64 links on 17 teeth share no divisor, on 16 all of it.
func TestHuntingTurns(t *testing.T) {
	for _, row := range []struct{ teeth, links, gcd, turns int }{
		{17, 64, 1, 64}, {16, 64, 16, 4}, {21, 86, 1, 86}, {18, 86, 2, 43}, {15, 100, 5, 20},
	} {
		gcd, turns, err := chain.HuntingTurns(row.teeth, row.links)
		require.NoError(t, err)
		assert.Equal(t, row.gcd, gcd)
		assert.Equal(t, row.turns, turns)
		assert.Zero(t, row.teeth*turns%row.links, "the chain has come round whole")
		for n := 1; n < turns; n++ {
			assert.NotZero(t, row.teeth*n%row.links, "not sooner")
		}
	}
}

// The limits as their sources have them: Diamond Chain, HKK, Tsubaki, read;
// Shigley sec. 17-5 and handbooks, from memory.
func TestLimits(t *testing.T) {
	assert.Equal(t, []float64{120, 90, 3}, []float64{chain.WrapLeast, chain.WrapTensioned, chain.RatioForWrap})
	assert.Equal(t, []float64{30, 50, 20, 80}, []float64{chain.CentreLeast, chain.CentreMost, chain.CentrePulsating, chain.CentreLimit})
	assert.Equal(t, []float64{.04, .02}, []float64{chain.SlackNormal, chain.SlackTight})
	assert.InDelta(t, 3*304.8, chain.LongCentre, 1e-9)
	assert.Equal(t, []float64{.04, .06, .02, .03}, []float64{chain.MovementLeast, chain.MovementMost, chain.MovementTightLeast, chain.MovementTightMost})
	assert.Equal(t, []int{15, 13, 120}, []int{chain.TeethPreferred, chain.TeethAllowed, chain.TeethMost})
	assert.Equal(t, []int{12, 17, 25}, []int{chain.TeethSlow, chain.TeethMedium, chain.TeethFast})
	assert.Equal(t, []int{17, 9}, []int{chain.TeethSmooth, chain.TeethFewest})
	assert.Equal(t, []float64{7, 10, 60}, []float64{chain.RatioMost, chain.RatioSlowMost, chain.InclinationMost})
}
