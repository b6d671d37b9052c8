package sky

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func float(r *big.Rat) float64 { f, _ := r.Float64(); return f }

// rateOfYears is the rate of a period in tropical years, backwards.
func rateOfYears(years string) *big.Rat {
	y, _ := new(big.Rat).SetString(years)
	y.Mul(y, TropicalYear())
	return y.Neg(y.Inv(y))
}

// The drift of node trains, computed from the formula: degrees a tropical year,
// positive where the node goes back too fast, and the years to 5 degrees.
func TestDriftOfNodeTrains(t *testing.T) {
	node, _ := Lookup("lunar node")
	for _, c := range []struct {
		years       string
		rate, tol   float64
		to5, to5Tol float64
	}{
		{"18.5", 0.1185, 5e-5, 42, 0.5},
		{"19", -0.394, 5e-4, 12.7, 0.05},
		{"223/12", 0.0313, 5.3e-5, 160, 0.5}, // 0.03125
		{"18.6", 0.0139, 5e-5, 360, 1},
		{"18.61", 0.0035, 5e-5, 1433, 2},
		{"242/13", -0.0021, 5e-5, 2358, 20},
	} {
		d := Drift{rateOfYears(c.years), node.Rate()}
		assert.InDelta(t, c.rate, -float(d.DegreesPerYear()), c.tol, c.years)
		years, ok := d.YearsPerDegree()
		require.True(t, ok)
		assert.InDelta(t, c.to5, 5*float(years), c.to5Tol, c.years)
	}
	d := Drift{node.Rate(), node.Rate()}
	_, ok := d.YearsPerDegree()
	assert.False(t, ok)
	_, ok = d.YearsPerDay()
	assert.False(t, ok)
	ppm, ok := d.PPM()
	assert.True(t, ok)
	assert.Zero(t, ppm.Sign())
}

// How Sun, node and Moon run against one another, computed from the formula.
func TestDailyMotions(t *testing.T) {
	d := func(n string) float64 { return days(t, n) }
	assert.InDelta(t, 30.6705, d("synodic month")/d("eclipse year")*360, 5e-5)
	daily := 360 / d("eclipse year")
	assert.InDelta(t, 1.03860, daily, 5e-6)
	assert.InDelta(t, 13.2294, 360/d("draconic month"), 5e-5)
	for limit, passage := range map[float64]float64{18.5: 35.6, 15.35: 29.6, 11: 21} {
		assert.InDelta(t, passage, 2*limit/daily, 0.2, limit)
	}
	// each season holds a solar eclipse, just, and half a lunation's advance is
	// the error at which the wrong lunation is picked
	assert.LessOrEqual(t, 30.67, 2*15.35)
	assert.InDelta(t, 15.34, d("synodic month")/d("eclipse year")*180, 0.01)
}

// Published approximations of the sky, computed from the formula.
func TestPPM(t *testing.T) {
	month, _ := Lookup("synodic month")
	for _, c := range []struct {
		days *big.Rat
		ppm  float64
		tol  float64
	}{
		{big.NewRat(59, 2), -1036, 0.5},
		{big.NewRat(443, 15), 93, 0.5},
		{big.NewRat(1447, 49), 0.79, 5e-3},
		{big.NewRat(945, 32), 22.4, 0.05},
	} {
		ppm, ok := Drift{new(big.Rat).Inv(c.days), month.Rate()}.PPM()
		require.True(t, ok)
		assert.InDelta(t, c.ppm, float(ppm), c.tol, c.days)
	}
	_, ok := Drift{big.NewRat(1, 3), big.NewRat(-1, 3)}.PPM()
	assert.False(t, ok)
	_, ok = Drift{new(big.Rat), big.NewRat(1, 3)}.PPM()
	assert.False(t, ok)
	// a hand of 29.5 d gains a day in 965 days
	years, ok := Drift{big.NewRat(2, 59), month.Rate()}.YearsPerDay()
	require.True(t, ok)
	assert.InDelta(t, 1/(29.530588858/29.5-1)/TropicalYearDays, float(years), 1e-9)
}

// Drift is linear in time, changes sign with its parts and does not touch
// them.
func TestDriftProperties(t *testing.T) {
	random := func() *big.Rat { return big.NewRat(rand.Int64N(2001)-1000, 1+rand.Int64N(1000)) }
	for range 300 {
		a, b, x, y := random(), random(), random(), random()
		ca, cb := new(big.Rat).Set(a), new(big.Rat).Set(b)
		d := Drift{a, b}
		sum := new(big.Rat).Add(x, y)
		parts := new(big.Rat).Add(d.Degrees(x), d.Degrees(y))
		assert.Zero(t, parts.Cmp(d.Degrees(sum)))
		back := Drift{b, a}.Degrees(x)
		assert.Zero(t, back.Cmp(new(big.Rat).Neg(d.Degrees(x))))
		assert.Zero(t, d.DegreesPerYear().Cmp(d.Degrees(TropicalYear())))
		d.YearsPerDegree()
		d.YearsPerDay()
		d.PPM()
		assert.Zero(t, a.Cmp(ca))
		assert.Zero(t, b.Cmp(cb))
	}
}
