package tooth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCutterRanges(t *testing.T) {
	for _, c := range []struct {
		set  CutterSet
		want map[string][2]int
	}{
		// Brown & Sharpe numbering by Rose, Modern Machine-Shop Practice.
		{EightCutters, map[string][2]int{
			"1": {135, RackTeeth}, "2": {55, 134}, "3": {35, 54}, "4": {26, 34},
			"5": {21, 25}, "6": {17, 20}, "7": {14, 16}, "8": {12, 13},
		}},
		// DIN 3972 sets (from memory): the other way.
		{EightMetric, map[string][2]int{
			"8": {135, RackTeeth}, "7": {55, 134}, "6": {35, 54}, "5": {26, 34},
			"4": {21, 25}, "3": {17, 20}, "2": {14, 16}, "1": {12, 13},
		}},
		// From memory: the half numbers.
		{FifteenCutters, map[string][2]int{
			"1.5": {80, 134}, "2.5": {42, 54}, "3.5": {30, 34}, "4.5": {23, 25},
			"5.5": {19, 20}, "6.5": {15, 16}, "7.5": {13, 13},
		}},
		// Rose for A to D and M to P, the rest from memory.
		{LetterCutters, map[string][2]int{
			"A": {12, 12}, "B": {13, 13}, "C": {14, 14}, "D": {15, 15}, "E": {16, 16}, "F": {17, 17},
			"G": {18, 18}, "H": {19, 19}, "I": {20, 20}, "J": {21, 22}, "K": {23, 24}, "L": {25, 26},
			"M": {27, 29}, "N": {30, 33}, "O": {34, 37}, "P": {38, 42}, "Q": {43, 49}, "R": {50, 59},
			"S": {60, 74}, "T": {75, 99}, "U": {100, 149}, "V": {150, 249}, "X": {RackTeeth, RackTeeth},
		}},
	} {
		for name, ends := range c.want {
			for _, teeth := range ends {
				got, found, err := c.set.For(teeth)
				require.NoError(t, err)
				require.True(t, found)
				assert.Equal(t, name, got.Name, teeth)
				assert.Equal(t, ends, [2]int{got.From, got.To}, name)
			}
		}
	}
	got, _, err := LetterCutters.For(250)
	require.NoError(t, err)
	assert.Equal(t, "W", got.Name)
}

func TestExactCutterForms(t *testing.T) {
	// Rose, Modern Machine-Shop Practice: the count each form is exact for.
	for name, exact := range map[string]int{"1": 200, "2": 68, "3": 40, "4": 29, "5": 22, "6": 18, "7": 16, "8": 13} {
		got, found, err := EightCutters.For(exact)
		require.NoError(t, err)
		require.True(t, found)
		assert.Equal(t, name, got.Name)
		assert.Equal(t, exact, got.Exact)
	}
}

func TestCutterSetsHaveNoGaps(t *testing.T) {
	for set := EightCutters; set <= LetterCutters; set++ {
		for teeth := 1; teeth <= 400; teeth++ {
			_, found, err := set.For(teeth)
			require.NoError(t, err)
			assert.Equal(t, teeth >= 12, found, "set %d, %d teeth", set, teeth)
		}
		_, _, err := set.For(0)
		require.ErrorIs(t, err, ErrRange)
	}
	assert.Len(t, must(FifteenCutters.Cutters()), 15)
	assert.Len(t, must(LetterCutters.Cutters()), 24)
	_, err := CutterSet(9).Cutters()
	require.ErrorIs(t, err, ErrRange)
}

// The plates named below: SCHSM for Brown & Sharpe, OD1644 for Cincinnati.
var (
	brownSharpe = []int{15, 16, 17, 18, 19, 20, 21, 23, 27, 29, 31, 33, 37, 39, 41, 43, 47, 49}
	cincinnati  = []int{24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43, 46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66}
)

func TestIndexings(t *testing.T) {
	head := DividingHead{Ratio: 40, Circles: brownSharpe}
	// OD1644: 6 parts, 6 turns and 12/18 or 26/39; 42 parts, 20/21.
	six := must(head.Indexings(6))
	assert.Contains(t, six, Indexing{6, 12, 18})
	assert.Contains(t, six, Indexing{6, 26, 39})
	assert.Equal(t, Indexing{0, 20, 21}, must(head.Indexings(42))[0])
	assert.Equal(t, []Indexing{{Turns: 2}}, must(head.Indexings(20)))
	// SCHSM: 127 needs compound or differential indexing, or a plate of 127.
	assert.Empty(t, must(head.Indexings(127)))
	head.Circles = append([]int{127, 127}, brownSharpe...)
	assert.Equal(t, []Indexing{{0, 40, 127}}, must(head.Indexings(127)))
}

func TestDivisible(t *testing.T) {
	// Computed: what plain indexing cannot do, up to 120.
	for ratio, missing := range map[int][]int{
		40: {51, 53, 57, 59, 61, 63, 67, 69, 71, 73, 77, 79, 81, 83, 87, 89, 91, 93, 96, 97, 99,
			101, 102, 103, 106, 107, 109, 111, 112, 113, 114, 117, 118, 119},
		60: {53, 56, 59, 61, 67, 71, 73, 77, 79, 83, 88, 89, 91, 97, 101, 103, 104, 106, 107, 109, 112, 113, 118, 119},
		90: {28, 44, 52, 53, 56, 59, 61, 64, 67, 68, 71, 73, 76, 77, 79, 83, 84, 88, 89, 91, 92, 97,
			101, 103, 104, 106, 107, 109, 112, 113, 116, 118, 119},
	} {
		head := DividingHead{Ratio: ratio, Circles: brownSharpe}
		var want []int
		for n, next := 1, 0; n <= 120; n++ {
			if next < len(missing) && missing[next] == n {
				next++
				continue
			}
			want = append(want, n)
		}
		assert.Equal(t, want, must(head.Divisible(1, 120)), ratio)
	}
	// Treatise on the milling machine of Brown & Sharpe, p. 80: all to 50 and
	// all even numbers to 100 except 96.
	head := DividingHead{Ratio: 40, Circles: brownSharpe}
	for n := 1; n <= 100; n++ {
		if n <= 50 || n%2 == 0 && n != 96 {
			assert.True(t, must(head.Divides(n)), n)
		}
	}
	assert.False(t, must(head.Divides(96)))
}

func TestDividesLargeNumbers(t *testing.T) {
	// Computed, in the order 40:1 and 60:1 with one set of plates, 40:1 with the
	// other.
	heads := []DividingHead{{40, brownSharpe}, {60, brownSharpe}, {40, cincinnati}}
	for n, want := range map[int][3]bool{
		127: {}, 151: {}, 223: {}, 53: {false, false, true}, 188: {true, true, true}, 235: {true, true, true},
	} {
		for i, head := range heads {
			assert.Equal(t, want[i], must(head.Divides(n)), "%d on head %d", n, i)
		}
	}
	for _, n := range []int{188, 235} {
		assert.Equal(t, 47, must(heads[0].Indexings(n))[0].Circle)
	}
}

func TestIndexingsAddUp(t *testing.T) {
	for _, ratio := range []int{1, 40, 60, 90} {
		head := DividingHead{Ratio: ratio, Circles: cincinnati}
		for parts := 1; parts <= 300; parts++ {
			for _, w := range must(head.Indexings(parts)) {
				circle := max(w.Circle, 1)
				assert.Equal(t, ratio*circle, parts*(w.Turns*circle+w.Holes))
				assert.Less(t, w.Holes, circle)
			}
		}
	}
	_, err := DividingHead{}.Indexings(10)
	require.ErrorIs(t, err, ErrRange)
	_, err = DividingHead{Ratio: 40, Circles: []int{0}}.Divides(10)
	require.ErrorIs(t, err, ErrRange)
	_, err = DividingHead{Ratio: 40}.Divisible(10, 9)
	require.ErrorIs(t, err, ErrRange)
}
