package tooth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTolerance(t *testing.T) {
	// ISO 286-1 (from memory), microns for IT6 to IT9; js7 and the swing of the
	// backlash at 20 deg computed.
	for _, c := range []struct {
		above, upTo float64
		grades      [4]float64
		js7         float64
		swing       string
	}{
		{0.5, 3, [4]float64{6, 10, 14, 25}, 5, "3.6"},
		{3, 6, [4]float64{8, 12, 18, 30}, 6, "4.4"},
		{6, 10, [4]float64{9, 15, 22, 36}, 7.5, "5.5"},
		{10, 18, [4]float64{11, 18, 27, 43}, 9, "6.6"},
		{18, 30, [4]float64{13, 21, 33, 52}, 10.5, "7.6"},
		{30, 50, [4]float64{16, 25, 39, 62}, 12.5, "9.1"},
		{50, 80, [4]float64{19, 30, 46, 74}, 15, "10.9"},
		{80, 120, [4]float64{22, 35, 54, 87}, 17.5, "12.7"},
		{120, 180, [4]float64{25, 40, 63, 100}, 20, "14.6"},
	} {
		for _, size := range []float64{c.above + 0.01, c.upTo} {
			for i, microns := range c.grades {
				same(t, microns, 1000*must(Tolerance(size, 6+i)), size)
			}
			js, swing, err := CentreTolerance(size, 7, 20)
			require.NoError(t, err)
			same(t, c.js7, 1000*js)
			printed(t, c.swing, 1000*swing)
		}
	}
	_, err := Tolerance(501, 7)
	require.ErrorIs(t, err, ErrRange)
	_, err = Tolerance(50, 4)
	require.ErrorIs(t, err, ErrRange)
}

func TestToleranceGrowsWithSizeAndGrade(t *testing.T) {
	// ISO 286-1 (from memory): IT6 is 10 i, and each grade a step of R5 on, which
	// rounding bends by a few per cent.
	steps := []float64{7, 10, 16, 25, 40, 64, 100}
	for _, size := range []float64{15, 40, 100, 220, 360, 450} {
		for grade := 6; grade <= 11; grade++ {
			assert.InEpsilon(t, steps[grade-5]/steps[1], must(Tolerance(size, grade))/must(Tolerance(size, 6)), 0.06, grade)
			assert.Greater(t, must(Tolerance(size, grade)), must(Tolerance(size, grade-1)))
		}
	}
}
