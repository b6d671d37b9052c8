package sky

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Meeus, Astronomical Algorithms, 2nd ed., examples 54.a, 54.b and 54.d, to the
// digits printed.
func TestEclipsesOfMeeus(t *testing.T) {
	for _, c := range []struct {
		name       string
		year, part float64
		k, f       float64
		tt         float64
		gamma, u   float64
		kind       Kind
		central    bool
	}{
		{"54.a", 1993.38, 0, -82, 165.7296, 2449129.0978, 1.1348, 0.0097, Partial, false},
		{"54.b", 2009.56, 0, 118, 179.8301, 2455034.6088, 0.0695, -0.0157, Total, true},
		{"54.d", 1997.7, 0.5, -28.5, 186.6015, 2450708.2835, -0.3791, -0.0131, Total, false},
	} {
		k := LunationNear(c.year, c.part)
		require.Equal(t, c.k, k, c.name)
		a := lunationAt(k)
		assert.InDelta(t, c.f, turn360(a.f), 5.1e-5, c.name)
		x, err := Approximate(k)
		require.NoError(t, err)
		assert.InDelta(t, c.tt, x.TT, 5.1e-5, c.name)
		assert.InDelta(t, c.gamma, x.Gamma, 5.1e-5, c.name)
		assert.InDelta(t, c.u, x.U, 5.1e-5, c.name)
		assert.Equal(t, c.kind, x.Kind, c.name)
		assert.Equal(t, c.central, x.Central, c.name)
	}
	a, _ := SyzygyAt(-82)
	assert.InDelta(t, -14.27, a.NodeDistance, 5.1e-3)
	x, _ := Approximate(-82)
	assert.InDelta(t, 0.740, x.Magnitude, 5.1e-4)
	x, _ = Approximate(-28.5)
	assert.InDelta(t, 1.1868, x.Magnitude, 5.1e-5)
	assert.InDelta(t, 30, x.SemiTotal, 0.51)
	assert.InDelta(t, 98, x.SemiPartial, 0.51)
	assert.InDelta(t, 153, x.SemiPenumbral, 0.51)
	x, _ = Approximate(3) // far from the node
	assert.Equal(t, None, x.Kind)
}

// Chapter 54 stays within 0.008 of the shadow's geometry in our centuries, and
// its time within five minutes.
func TestApproximationIsNear(t *testing.T) {
	for _, e := range between(t, 1900, 2100) {
		x, err := Approximate(e.K)
		require.NoError(t, err)
		assert.InDelta(t, e.Gamma, x.Gamma, 0.008)
		assert.InDelta(t, e.TT, x.TT, 5.0/1440)
	}
}

// The kind by gamma and u, Meeus, chapter 54: with the right gamma the rule gets
// all 222 total, annular and hybrid eclipses of 1950-2100 of the canon
// (NASA/TP-2006-214141).
func TestKindByShadowRadius(t *testing.T) {
	right, all := 0, 0
	for _, e := range only(between(t, 1950, 2100), true) {
		if e.Kind == Partial {
			continue
		}
		a := lunationAt(e.K)
		g, ok := a.guess()
		require.True(t, ok)
		kind, central := solarKind(e.Gamma, g.u)
		all++
		if kind == e.Kind {
			right++
		}
		assert.Equal(t, e.Central, central)
	}
	assert.Equal(t, 222, all)
	assert.Equal(t, 222, right)
}
