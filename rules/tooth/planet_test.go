package tooth

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPlanetary(t *testing.T) {
	// SDP/SI D785 T-116 eq 13-5 to 13-10, values computed for 16, 16, 48.
	p := Planetary{Sun: 16, Planet: 16, Ring: 48}
	assert.True(t, must(p.Coaxial()))
	for n, assembles := range map[int]bool{2: true, 3: false, 4: true, 5: false, 6: false} {
		assert.Equal(t, assembles, must(p.Assembles(n)), n)
	}
	for _, c := range []struct {
		planets int
		limit   float64
		clear   bool
	}{
		{2, 32.0, true}, {3, 27.713, true}, {4, 22.627, true}, {5, 18.809, true}, {6, 16.0, false},
	} {
		clear, limit, err := p.PlanetsClear(c.planets)
		require.NoError(t, err)
		computed(t, c.limit, limit)
		assert.Equal(t, c.clear, clear, c.planets)
		// The general condition, computed from the tip circles at module 1.
		gap := must(PlanetGap(16, 360/float64(c.planets), 18))
		assert.Equal(t, clear, gap > 0, c.planets)
		same(t, limit-18, gap)
	}
	computed(t, 5.625, must(p.UnitPosition()))
	assert.False(t, must(Planetary{Sun: 16, Planet: 17, Ring: 48}.Coaxial()))
}

func TestPlanetPositions(t *testing.T) {
	p := Planetary{Sun: 16, Planet: 16, Ring: 48}
	for n := 2; n <= 8; n++ {
		fits, _, err := p.AssemblesAt(360 / float64(n))
		require.NoError(t, err)
		assert.Equal(t, must(p.Assembles(n)), fits, n)
	}
	// (zs + zr) t/180 is whole at t half of 118.125 deg, 21 unit positions.
	fits, move, err := p.AssemblesAt(120)
	require.NoError(t, err)
	assert.False(t, fits)
	same(t, -1.875, move)
	fits, _, err = p.AssemblesAt(118.125)
	require.NoError(t, err)
	assert.True(t, fits)
}

func TestRevertedTrain(t *testing.T) {
	// Computed: motion works of 12:1 at module 0.5.
	centre := func(a, b int) float64 { return must(Pair{Standard(a, 0.5), Standard(b, 0.5)}.NominalCentre()) }
	same(t, 10, centre(10, 30))
	same(t, 10, centre(8, 32))
	same(t, 12, centre(12, 36))
	same(t, 12.5, centre(10, 40))
}

func TestWillis(t *testing.T) {
	rat := func(s string) *big.Rat {
		r, ok := new(big.Rat).SetString(s)
		require.True(t, ok)
		return r
	}
	equal := func(want string, got *big.Rat, what ...any) {
		t.Helper()
		assert.Equal(t, rat(want).RatString(), got.RatString(), what...)
	}
	still := rat("0")
	sunToRing := func(sun, planet, ring int) *big.Rat {
		return must(TrainValue([]int{sun, planet}, []int{planet, ring}, 1))
	}

	// SDP/SI D785 T-117, T-118: 16, 16, 48.
	e := sunToRing(16, 16, 48)
	equal("1/4", must(ArmRate(e, rat("1"), still)))
	equal("4/3", new(big.Rat).Inv(must(ArmRate(e, still, rat("1")))), "printed 1.3333333 in to 1 out")
	equal("-1/3", LastRate(e, rat("1"), still))
	// Shigley Ex 13-6 (from memory): sun 20 at -100 rpm, planet 30, ring 80.
	arm := must(ArmRate(sunToRing(20, 30, 80), rat("-100"), still))
	equal("-20", arm)
	equal("100/3", LastRate(must(TrainValue([]int{20}, []int{30}, 1)), rat("-100"), arm))
	// Computed: sun 20, planets 35, ring 90 held.
	equal("2/11", must(ArmRate(sunToRing(20, 35, 90), rat("1"), still)))
	// Computed: first sun held, two outside meshes on the arm.
	equal("1/10000", LastRate(must(TrainValue([]int{101, 99}, []int{100, 100}, 2)), still, rat("1")))
	equal("2/3", LastRate(must(TrainValue([]int{20, 24}, []int{40, 36}, 2)), still, rat("1")))
	// Computed: wheel of 100 held, one idler on the arm.
	for last, rate := range map[int]string{99: "-1/99", 100: "0", 101: "1/101"} {
		equal(rate, LastRate(must(TrainValue([]int{100, 31}, []int{31, last}, 2)), still, rat("1")), last)
	}
	// Computed: bevel differential, train value -1: the mean of 100 and 60.
	equal("80", must(ArmRate(rat("-1"), rat("100"), rat("60"))))
	_, err := ArmRate(rat("1"), rat("1"), rat("2"))
	require.ErrorIs(t, err, ErrRange)
}

func TestHunting(t *testing.T) {
	// Foiles; the frequencies from handbooks of vibration (from memory), values
	// computed.
	for _, c := range []struct {
		a, b          int
		rpm           float64
		want          Hunt
		mesh, hunting float64
	}{
		{23, 67, 1800, Hunt{GCD: 1, Teeth: 1541, TurnsA: 67, TurnsB: 23}, 690, 0.447761},
		{15, 40, 1000, Hunt{GCD: 5, Teeth: 120, TurnsA: 8, TurnsB: 3}, 250, 2.083333},
	} {
		h := must(NewHunt(c.a, c.b))
		assert.Equal(t, c.want, h)
		assert.Equal(t, c.want.GCD == 1, h.Hunting())
		mesh, hunting, err := h.Frequencies(c.rpm)
		require.NoError(t, err)
		computed(t, c.mesh, mesh)
		computed(t, c.hunting, hunting)
	}
}
