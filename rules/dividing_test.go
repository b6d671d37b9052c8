package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

// A head with its circles as ranges divides as one whose circles are listed, and
// indexes by what comes to one tooth: Ratio/z turns of the crank.
func TestHeadsIndexAsListedCirclesDo(t *testing.T) {
	ranges := []spec.Range{{From: 15, To: 20}, {From: 21, To: 21}, {From: 23, To: 23}, {From: 27, To: 27}, {From: 29, To: 29}, {From: 31, To: 31},
		{From: 33, To: 33}, {From: 37, To: 37}, {From: 39, To: 39}, {From: 41, To: 41}, {From: 43, To: 43}, {From: 47, To: 47}, {From: 49, To: 49}}
	var circles []int
	for _, r := range ranges {
		for c := r.From; c <= r.To; c++ {
			circles = append(circles, int(c))
		}
	}
	for _, ratio := range []int{1, 40, 60, 90} {
		head := Head{ratio, ranges}
		for z := 1; z <= 400; z++ {
			divides, err := tooth.DividingHead{Ratio: ratio, Circles: circles}.Divides(z)
			require.NoError(t, err)
			x, ok := head.Index(int64(z))
			require.Equal(t, divides, ok, "%d to 1, %d teeth", ratio, z)
			if !ok {
				continue
			}
			holes := max(x.Circle, 1)
			assert.Equal(t, ratio*holes, z*(x.Turns*holes+x.Holes), "%d to 1, %d teeth: %s", ratio, z, Indexed(x))
		}
	}
}

// OD1644's example: 42 teeth at 40 to 1 by 20 holes of 21; six by six turns and
// two thirds.
func TestIndexingInWords(t *testing.T) {
	head := Head{40, []spec.Range{{From: 21, To: 21}}}
	for teeth, want := range map[int64]string{42: "20 holes in the 21 circle", 6: "6 turns and 14 holes in the 21 circle", 40: "1 turn", 20: "2 turns"} {
		x, ok := head.Index(teeth)
		assert.True(t, ok)
		assert.Equal(t, want, Indexed(x))
	}
}
