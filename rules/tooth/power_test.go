package tooth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLewisFactor(t *testing.T) {
	// Shigley Table 14-2 (from memory), 20 deg full depth.
	table := []struct {
		teeth float64
		y     string
	}{
		{12, ".245"}, {13, ".261"}, {14, ".277"}, {15, ".290"}, {16, ".296"}, {17, ".303"}, {18, ".309"},
		{19, ".314"}, {20, ".322"}, {21, ".328"}, {22, ".331"}, {24, ".337"}, {26, ".346"}, {28, ".353"},
		{30, ".359"}, {34, ".371"}, {38, ".384"}, {43, ".397"}, {50, ".409"}, {60, ".422"}, {75, ".435"},
		{100, ".447"}, {150, ".460"}, {300, ".472"}, {1e6, ".485"},
	}
	for _, c := range table {
		printed(t, c.y, must(LewisFactor(c.teeth)), c.teeth)
	}
	for i := range table[1:] {
		low, high := table[i].teeth, table[i+1].teeth
		between := must(LewisFactor((low + high) / 2))
		assert.Greater(t, between, must(LewisFactor(low)))
		assert.Less(t, between, must(LewisFactor(high)))
	}
	// A curve fit to the table, in the help of a function library, gives 0.3192
	// for 20 teeth, 0.9 % below it.
	assert.InEpsilon(t, 0.3192, must(LewisFactor(20)), 0.0095)
	_, err := LewisFactor(11)
	require.ErrorIs(t, err, ErrRange)
}

func TestLewisStress(t *testing.T) {
	// Computed.
	for _, c := range []struct {
		torque, module, face, force, stress float64
		teeth                               int
	}{
		{50, 0.5, 3, 16.6667, 45.3515, 12}, {1000, 1, 8, 100, 38.8199, 20},
	} {
		force := must(TangentialForce(c.torque, c.module*float64(c.teeth)))
		y := must(LewisFactor(float64(c.teeth)))
		computed(t, c.force, force)
		computed(t, c.stress, must(LewisStress(force, c.face, c.module, y)))
		same(t, force, must(LewisForce(must(LewisStress(force, c.face, c.module, y)), c.face, c.module, y)))
	}
}

func TestLewisInInches(t *testing.T) {
	// Shigley Ex 14-1 (from memory): P 8, 16 teeth, face 1.5 in, 1200 rpm, 10
	// kpsi: V 628.3 ft/min, Kv 1.52, 365 lbf, 6.95 hp; unrounded, computed,
	// 364.27 lbf and 6.936 hp.
	const foot, pound, psi = 0.3048, 4.4482216152605, 0.0068947572931684
	m := must(ModuleOfPitch(8))
	speed := must(PitchLineSpeed(16*m, 1200))
	printed(t, "628.3", speed*60/foot)
	kv := must(VelocityFactor(speed))
	printed(t, "1.52", kv)
	force := must(LewisForce(10_000*psi/kv, 1.5*25.4, m, must(LewisFactor(16))))
	computed(t, 364.27, force/pound)
	computed(t, 6.936, force*speed/745.6998715822702)
}

func TestTorqueThrough(t *testing.T) {
	// Computed: 10 N mm through 5:1 twice at 0.98; ten meshes of 98 %.
	computed(t, 240.1, must(TorqueThrough(10, 25, 0.98, 2)))
	computed(t, 0.81707, must(TorqueThrough(1, 1, 0.98, 10)))
	same(t, 7, must(TorqueThrough(7, 1, 0.5, 0)))
}

func TestEfficiency(t *testing.T) {
	// Handbooks (from memory); clock trains are common practice.
	for kind, want := range map[Drive][2]float64{
		SpurDrive: {0.98, 0.99}, BevelDrive: {0.97, 0.98}, ChainDrive: {0.97, 0.98}, ClockDrive: {0.90, 0.95},
	} {
		low, high, err := Efficiency(kind)
		require.NoError(t, err)
		assert.Equal(t, want, [2]float64{low, high})
	}
	_, _, err := Efficiency(9)
	require.ErrorIs(t, err, ErrRange)
	// A worm, 40 to 90 % and falling with the lead (from memory).
	for lead, percent := range map[float64][2]float64{2: {35, 50}, 25: {85, 92}} {
		forward, _, err := WormEfficiency(lead, 20, 0.05)
		require.NoError(t, err)
		assert.Greater(t, 100*forward, percent[0])
		assert.Less(t, 100*forward, percent[1])
	}
}
