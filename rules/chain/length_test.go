package chain_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/chain"
)

// Computed from the formulas of Shigley, eq. 17-34 and 17-35 (from memory), and by
// tangents, apart from this project.
func TestTwoSprockets(t *testing.T) {
	for _, row := range []struct {
		c                     float64
		z1, z2                int
		approx, tangent, wrap float64
		links                 int
		cApprox, cTangent     float64
	}{
		{30, 17, 34, 85.7440, 85.7442, 169.681, 86, 30.1285, 30.1284},
		{40, 19, 57, 118.9144, 118.9162, 162.634, 118, 39.5374, 39.5365},
		{30, 17, 17, 77, 77, 180, 76, 29.5, 29.5},
	} {
		approx, err := chain.LengthApprox(row.z1, row.z2, row.c)
		require.NoError(t, err)
		assert.InDelta(t, row.approx, approx, half(4))
		exact, err := chain.Length(row.z1, row.z2, row.c)
		require.NoError(t, err)
		assert.InDelta(t, row.tangent, exact, half(4))
		wrap, other, err := chain.Wrap(row.z1, row.z2, row.c)
		require.NoError(t, err)
		assert.InDelta(t, row.wrap, wrap, half(3))
		assert.InDelta(t, 360, wrap+other, 1e-9)
		links, err := chain.EvenLinks(exact)
		require.NoError(t, err)
		assert.Equal(t, row.links, links)
		c, err := chain.CentreApprox(row.z1, row.z2, float64(links))
		require.NoError(t, err)
		assert.InDelta(t, row.cApprox, c, half(4))
		c, err = chain.Centre(row.z1, row.z2, float64(links))
		require.NoError(t, err)
		assert.InDelta(t, row.cTangent, c, half(4))
	}
}

// 17/34 teeth at 30 pitches, 85.74 rounded to 86 links: Shigley, example 17-5, from
// memory. In 04C chain that is 191.3155 mm, computed from the formula.
func TestWorkedExample(t *testing.T) {
	l, err := chain.LengthApprox(17, 34, 30)
	require.NoError(t, err)
	assert.InDelta(t, 85.74, l, half(2))
	links, err := chain.EvenLinks(l)
	require.NoError(t, err)
	assert.Equal(t, 86, links)
	c, err := chain.Centre(17, 34, float64(links))
	require.NoError(t, err)
	near(t, 191.3155, c*6.35)
	assert.InDelta(t, 191.3155, c*6.35, half(4))
}

func TestEvenLinks(t *testing.T) {
	for length, want := range map[float64]int{
		77: 76, 77.0000000001: 76, 77.001: 78, 76.999: 76, 78: 78, 78.99: 78, 0.3: 2, 5.5: 6,
	} {
		got, err := chain.EvenLinks(length)
		require.NoError(t, err)
		assert.Equal(t, want, got, length)
	}
}

// length -> centre -> length, and a longer chain always needs a longer distance.
func TestLengthAndCentreAgree(t *testing.T) {
	rng := rand.New(rand.NewSource(606))
	for range 3000 {
		z1, z2 := chain.LeastTeeth+rng.Intn(150), chain.LeastTeeth+rng.Intn(150)
		r1, _ := chain.PitchRadius(z1)
		r2, _ := chain.PitchRadius(z2)
		c := (r1 + r2) * (1.0001 + math.Pow(rng.Float64(), 3)*40)

		l, err := chain.Length(z1, z2, c)
		require.NoError(t, err)
		back, err := chain.Centre(z1, z2, l)
		require.NoError(t, err)
		assert.InDelta(t, c, back, 1e-7*c, "%d/%d", z1, z2)
		swapped, err := chain.Length(z2, z1, c)
		require.NoError(t, err)
		assert.InDelta(t, l, swapped, 1e-9*l)
		longer, err := chain.Length(z1, z2, c*1.001)
		require.NoError(t, err)
		assert.Greater(t, longer, l)
		assert.GreaterOrEqual(t, l, 2*c)

		x, err := chain.CrossedLength(z1, z2, c)
		require.NoError(t, err)
		assert.Greater(t, x, l, "crossing takes chain")
		back, err = chain.CrossedCentre(z1, z2, x)
		require.NoError(t, err)
		assert.InDelta(t, c, back, 1e-7*c, "%d/%d crossed", z1, z2)
	}
}

// The handbook series comes back through its own solution, and stays near the
// exact length over the centre distances it is meant for.
func TestSeriesAgrees(t *testing.T) {
	rng := rand.New(rand.NewSource(1734))
	for range 3000 {
		z1, z2 := 9+rng.Intn(60), 9+rng.Intn(60)
		c := 30 + 50*rng.Float64()
		approx, err := chain.LengthApprox(z1, z2, c)
		require.NoError(t, err)
		back, err := chain.CentreApprox(z1, z2, approx)
		require.NoError(t, err)
		assert.InDelta(t, c, back, 1e-9*c)
		exact, err := chain.Length(z1, z2, c)
		require.NoError(t, err)
		assert.InDelta(t, exact, approx, 0.02, "%d/%d at %v", z1, z2, c)
	}
}

// Equal sprockets: the open chain is two distances and one round of teeth. The
// crossed one at twice the touching distance turns 240 degrees on each sprocket.
func TestPlainCases(t *testing.T) {
	r, err := chain.PitchRadius(20)
	require.NoError(t, err)
	l, err := chain.Length(20, 20, 4*r)
	require.NoError(t, err)
	assert.InDelta(t, 8*r+20, l, 1e-9)
	x, err := chain.CrossedLength(20, 20, 4*r)
	require.NoError(t, err)
	assert.InDelta(t, 2*math.Sqrt(12)*r+2*20*240./360, x, 1e-9)
	w, err := chain.CrossedWrap(20, 20, 4*r)
	require.NoError(t, err)
	assert.InDelta(t, 240, w, 1e-9)
	s, err := chain.CrossedSpan(20, 20, 4*r)
	require.NoError(t, err)
	assert.InDelta(t, math.Sqrt(12)*r, s, 1e-9)
	s, err = chain.Span(20, 20, 4*r)
	require.NoError(t, err)
	assert.InDelta(t, 4*r, s, 1e-9)
}
