package chain_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"wheelwork/rules/chain"
)

// Whatever the arguments, a function gives finite numbers or says which argument
// was out of range.
func TestArguments(t *testing.T) {
	odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, math.Copysign(0, -1),
		math.SmallestNonzeroFloat64, 1e-7, 0.5, 6.35, 30, 120, 180, 360, 1e8, 1e9, 1e10, math.MaxFloat64}
	counts := []int{math.MinInt, -17, -1, 0, 1, 2, 3, 4, 17, 120, 1e6, 1e6 + 1, math.MaxInt}
	check := func(name string, err error, results ...float64) {
		t.Helper()
		var r *chain.RangeError
		if err != nil {
			assert.True(t, errors.As(err, &r), "%s: %v", name, err)
			assert.NotEmpty(t, r.What)
		}
		for _, v := range results {
			assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%s gives %v", name, v)
		}
	}
	one := func(name string) func(float64, error) {
		return func(v float64, err error) { t.Helper(); check(name, err, v) }
	}
	two := func(name string) func(float64, float64, error) {
		return func(a, b float64, err error) { t.Helper(); check(name, err, a, b) }
	}
	for _, a := range odd {
		for _, b := range odd {
			one("ToothWidth")(chain.ToothWidth(a, b))
			one("SagLength")(chain.SagLength(a, b))
			one("Sag")(chain.Sag(a, b))
		}
		links, err := chain.EvenLinks(a)
		check("EvenLinks", err, float64(links))
		for _, z := range counts {
			one("PitchDiameter")(chain.PitchDiameter(a, z))
			one("OutsideDiameter")(chain.OutsideDiameter(a, z))
			for _, b := range odd {
				one("RootDiameter")(chain.RootDiameter(a, z, b))
				two("TipDiameters")(chain.TipDiameters(a, z, b))
			}
			for _, y := range counts {
				one("Length")(chain.Length(z, y, a))
				one("LengthApprox")(chain.LengthApprox(z, y, a))
				one("CrossedLength")(chain.CrossedLength(z, y, a))
				one("Centre")(chain.Centre(z, y, a))
				one("CrossedCentre")(chain.CrossedCentre(z, y, a))
				one("CentreApprox")(chain.CentreApprox(z, y, a))
				two("Wrap")(chain.Wrap(z, y, a))
				one("CrossedWrap")(chain.CrossedWrap(z, y, a))
				one("CentreForWrap")(chain.CentreForWrap(z, y, a))
				one("Span")(chain.Span(z, y, a))
				one("CrossedSpan")(chain.CrossedSpan(z, y, a))
			}
		}
	}
	for _, z := range counts {
		one("PitchRadius")(chain.PitchRadius(z))
		two("ChordalRipple")(chain.ChordalRipple(z))
		for _, n := range counts {
			gcd, turns, err := chain.HuntingTurns(z, n)
			check("HuntingTurns", err, float64(gcd), float64(turns))
		}
	}
}

func TestRangeErrors(t *testing.T) {
	_, err := chain.Length(17, 2, 30)
	assert.EqualError(t, err, "number of sprocket teeth is 2, must be from 3 to 1000000")
	_, err = chain.Length(17, 34, 8)
	assert.EqualError(t, err, "centre distance in pitches is 8, must be above 8.1401, where sprockets of 17 and 34 teeth touch, and at most 1e+09")
	_, err = chain.Centre(17, 34, 20)
	assert.ErrorContains(t, err, "chain length in pitches is 20, must be above")
	_, err = chain.CentreApprox(17, 34, 20)
	assert.ErrorContains(t, err, "longer for sprockets of 17 and 34 teeth")
	_, err = chain.CentreForWrap(17, 34, 180)
	assert.ErrorContains(t, err, "angle of wrap")
	_, err = chain.RootDiameter(6.35, 17, 6.35)
	assert.ErrorContains(t, err, "roller diameter is 6.35, must be above 0 and below the pitch")
	_, err = chain.Sag(100, 20)
	assert.ErrorContains(t, err, "a sag of a quarter of the span")
}
