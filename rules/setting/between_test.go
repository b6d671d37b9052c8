package setting_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/setting"
	"wheelwork/spec/exact"
)

// Worked by hand: the demo's day tube makes 10621/10592 turns a day, the motor
// 33/17 x 51/10 of its turns at 300 rpm. The crank of the wall makes (128/19)^2
// turns a sidereal year of 365.256362959 d.
func TestBetween(t *testing.T) {
	tr := demo(t, "harbour-table/table.hcl")
	for _, days := range []int64{213, -213, 0, 1} {
		list := setting.Between(tr, exact.Int(days))
		require.Len(t, list, 1)
		turns := exact.Int(days).Mul(exact.Frac(10621, 10592)).Mul(exact.Frac(33, 17)).Mul(exact.Frac(51, 10))
		assert.Equal(t, turns.String(), list[0].Turns.String())
		require.True(t, list[0].Timed)
		assert.Equal(t, turns.Abs().Quo(exact.Int(300)).String(), list[0].Minutes.String())
	}
	wall := setting.Between(demo(t, "planet-wall/wall.hcl"), exact.Frac(365256362959, 1_000_000_000))
	require.Len(t, wall, 1)
	assert.Equal(t, "16384/361", wall[0].Turns.String())
}

// A drive that nothing ties to the clock, and a design without time, say so;
// without a clock, time is the watch's.
func TestBetweenWithoutTime(t *testing.T) {
	list := setting.Between(solved(t, `
design { title = "apart" }
arbor "a" {}
arbor "b" {}
drive "d" {
  on    = "a"
  speed = 3
}
clock {
  on     = "b"
  period = "1 d"
}
`), exact.Int(1))
	require.Len(t, list, 1)
	assert.NotEmpty(t, list[0].Why)
	list = setting.Between(solved(t, `
design { title = "watch" }
arbor "a" {}
drive "d" {
  on    = "a"
  speed = -3
}
`), exact.Int(1))
	assert.Empty(t, list[0].Why)
	assert.Equal(t, "-4320", list[0].Turns.String())
	assert.Equal(t, "1440", list[0].Minutes.String())
}
