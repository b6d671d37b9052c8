package tooth

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Sources stand beside the values they vouch for. "Computed" marks values
// computed from the formula, independently of this package; "from memory" a
// source that was not at hand.

// must returns v where nothing went wrong; a test dies of what did.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// computed asserts a value computed from the formula to 1e-4 of itself.
func computed(t *testing.T, want, got float64, what ...any) {
	t.Helper()
	assert.InDelta(t, want, got, 1e-4*math.Abs(want)+1e-12, what...)
}

// printed asserts a value as a source prints it, to half a unit of its last
// digit.
func printed(t *testing.T, want string, got float64, what ...any) {
	t.Helper()
	v, err := strconv.ParseFloat(want, 64)
	if !assert.NoError(t, err) {
		return
	}
	digits := 0
	if dot := strings.IndexByte(want, '.'); dot >= 0 {
		digits = len(want) - dot - 1
	}
	half := 0.5 * math.Pow10(-digits)
	assert.InDelta(t, v, got, half*(1+1e-6), what...)
}

// same asserts that two ways to one value agree to rounding.
func same(t *testing.T, want, got float64, what ...any) {
	t.Helper()
	assert.InDelta(t, want, got, 1e-9*(1+math.Abs(want)), what...)
}

// at returns a standard gear with another pressure angle.
func at(angle float64, teeth int, module float64) Gear {
	g := Standard(teeth, module)
	g.PressureAngle = angle
	return g
}

// shifted returns a standard gear with a profile shift.
func shifted(teeth int, module, x float64) Gear {
	g := Standard(teeth, module)
	g.Shift = x
	return g
}

// ring returns a standard ring with a profile shift.
func ring(teeth int, module, x float64) Gear {
	g := shifted(teeth, module, x)
	g.Ring = true
	return g
}
