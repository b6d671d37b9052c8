package figure

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDays(t *testing.T) {
	for want, x := range map[string]float64{
		"0 d":           0,
		"1 min":         1.0 / 1440,
		"23.9344696 h":  0.997269566,
		"29.5305889 d":  29.530588858,
		"-3 h":          -0.125,
		"18.6133575 yr": 6798.383474,
	} {
		assert.Equal(t, want, Days(&x))
	}
	assert.Empty(t, Days(nil))
}

func TestSigned(t *testing.T) {
	for want, x := range map[string]float64{
		"+22.4 ppm":    22.3891,
		"-4550 ppm":    -4550.4,
		"0 ppm":        0,
		"+1.2e-07 ppm": 1.2e-7,
	} {
		assert.Equal(t, want, PPM(&x))
	}
	assert.Empty(t, PPM(nil))
}

func TestRate(t *testing.T) {
	assert.Equal(t, "-29/10592", Rate("-29/10592"))
	assert.Equal(t, "3", Rate("3/1"))
	assert.Equal(t, "0.0333333333333", Rate("10000000000000000000000000000000/300000000000000000000000000000001"))
	assert.Empty(t, Rate(""))
}

func TestYears(t *testing.T) {
	for want, x := range map[string]float64{
		"1230 yr":  1232.4,
		"12 yr":    12,
		"183 d":    0.5,
		"8.77 h":   0.001,
		"5.26 min": 0.00001,
	} {
		assert.Equal(t, want, Years(&x))
	}
	assert.Empty(t, Years(nil))
}

func TestLate(t *testing.T) {
	for want, x := range map[string]float64{
		"+3.5 d":   3.5,
		"-7.25 h":  -7.25 / 24,
		"+15 min":  15.0 / 1440,
		"-2.74 yr": -1000,
		"0 min":    0,
	} {
		assert.Equal(t, want, Late(&x))
	}
	assert.Empty(t, Late(nil))
}

func TestUnquoted(t *testing.T) {
	for _, s := range []string{`"30 ppm"`, "'30 ppm'", "30 ppm"} {
		assert.Equal(t, "30 ppm", Unquoted(s))
	}
	assert.Equal(t, `"`, Unquoted(`"`))
}
