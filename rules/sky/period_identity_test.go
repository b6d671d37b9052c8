package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Identities between the lengths, computed from the formula.
func TestIdentities(t *testing.T) {
	d := func(n string) float64 { return days(t, n) }
	inv := func(n string) float64 { return 1 / d(n) }
	for _, c := range []struct {
		name string
		want float64
	}{
		{"synodic month", 1 / (inv("tropical month") - inv("tropical year"))},
		{"synodic month", 1 / (inv("sidereal month") - inv("sidereal year"))},
		{"draconic month", 1 / (inv("tropical month") + inv("lunar node"))},
		{"draconic month", 1 / (inv("sidereal month") + inv("lunar node sidereal"))},
		{"anomalistic month", 1 / (inv("tropical month") - inv("lunar apse"))},
		{"anomalistic month", 1 / (inv("sidereal month") - inv("lunar apse sidereal"))},
		{"eclipse year", 1 / (inv("tropical year") + inv("lunar node"))},
		{"eclipse year", 1 / (inv("sidereal year") + inv("lunar node sidereal"))},
		{"lunar day", 1 / (1 - inv("synodic month"))},
		{"sidereal day", 1 / (1 + inv("tropical year"))},
		{"half eclipse year", d("eclipse year") / 2},
	} {
		assert.InDelta(t, c.want, d(c.name), 1e-9, c.name)
	}
	// Laplace's relation of Io, Europa and Ganymede, in turns a day; it holds
	// to the last digit of Meeus's rates, 1e-9 degree a day.
	assert.InDelta(t, 0, inv("Io sidereal")-3*inv("Europa sidereal")+2*inv("Ganymede sidereal"), 1e-9)
	// The same of lengths printed to six decimals holds to half a unit there,
	// magnified as the slope of the formula tells.
	assert.InDelta(t, 1/(inv("lunar node")+inv("precession")), d("lunar node sidereal"), 1e-5)
	assert.InDelta(t, 1/(inv("lunar apse")-inv("precession")), d("lunar apse sidereal"), 1e-5)
	assert.InDelta(t, 1/(inv("lunar apse")+inv("lunar node")), d("apse to node"), 1e-6)
	assert.InDelta(t, 1/(inv("tropical year")-inv("lunar apse")), d("full-moon cycle"), 1e-6)
	assert.InDelta(t, 1/(inv("Sun rotation sidereal")-1/365.25636), d("Carrington"), 1e-6)
}

// The lengths follow from the arguments' rates: Simon et al. 1994 as coded in
// ERFA 2.0.0, to half a unit of the last printed decimal.
func TestPeriodsFollowFromArguments(t *testing.T) {
	l, f, d, node, p := ArgMoonAnomaly, ArgLatitude, ArgElongation, ArgNode, ArgPrecession
	moon := f.Plus(node)
	sun := moon.Minus(d)
	apse := moon.Minus(l)
	for _, c := range []struct {
		name string
		arg  Argument
		tol  float64
	}{
		{"synodic month", d, 1e-9},
		{"tropical month", moon, 1e-9},
		{"sidereal month", moon.Minus(p), 1e-9},
		{"anomalistic month", l, 1e-9},
		{"draconic month", f, 1e-9},
		{"tropical year", sun, 1e-9},
		{"sidereal year", sun.Minus(p), 1e-9},
		{"anomalistic year", ArgSunAnomaly, 1e-9},
		{"eclipse year", sun.Minus(node), 1e-9},
		{"lunar node", node, 5e-7},
		{"lunar node sidereal", node.Minus(p), 5e-7},
		{"lunar apse", apse, 5e-7},
		{"lunar apse sidereal", apse.Minus(p), 5e-7},
		{"apse to node", f.Minus(l), 5e-7},
		{"full-moon cycle", sun.Minus(apse), 5e-7},
		{"precession", p, 5e-3},
		{"solar perigee", sun.Minus(ArgSunAnomaly), 5e-2},
	} {
		got := c.arg.PeriodDays()
		e, _ := Lookup(c.name)
		if c.name != "precession" { // the equinox goes back, its longitudes go forward
			assert.Equal(t, got < 0, e.Retrograde, c.name)
		}
		assert.InDelta(t, math.Abs(got), days(t, c.name), c.tol*1.02, c.name)
	}
	// the turn of the Earth against the mean equinox
	assert.InDelta(t, 1/(1+1/sun.PeriodDays()), days(t, "sidereal day"), 1e-11)
}
