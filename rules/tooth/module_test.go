package tooth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestModuleChoice(t *testing.T) {
	// ISO 54:1996, JIS B 1701-2 and DIN 780-1 (from memory).
	iso, jis, din := "ISO 54:1996", "JIS B 1701-2", "DIN 780-1"
	for _, c := range []struct {
		choice    Choice
		standards []string
		modules   []float64
	}{
		{FirstChoice, []string{iso, din}, []float64{1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50}},
		{SecondChoice, []string{iso, din}, []float64{1.125, 1.375, 1.75, 2.25, 2.75, 3.5, 4.5, 5.5, 7, 9, 11, 14, 18, 22, 28, 36, 45}},
		{Avoid, []string{iso}, []float64{6.5}},
		{FirstChoice, []string{jis, din}, []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8}},
		{SecondChoice, []string{jis}, []float64{0.15}},
		{SecondChoice, []string{jis, din}, []float64{0.35, 0.45, 0.55, 0.75}},
		// DIN and JIS disagree here; DIN's first choice counts.
		{FirstChoice, []string{din}, []float64{0.05, 0.06, 0.08, 0.12, 0.16, 0.25, 0.7, 0.9, 60}},
		{SecondChoice, []string{din}, []float64{0.055, 0.07, 0.09, 0.11, 0.14, 0.18, 0.22, 0.28, 0.65, 0.85, 0.95, 55, 70}},
		{NoStandard, nil, []float64{0.13, 0.47, 0.529167, 1.27, 3.175, 48, 100}},
	} {
		for _, m := range c.modules {
			choice, standards, err := ModuleChoice(m)
			require.NoError(t, err)
			assert.Equal(t, c.choice, choice, m)
			assert.Equal(t, c.standards, standards, m)
		}
	}
	assert.Equal(t, "series I", FirstChoice.String())
	assert.Equal(t, "no standard series", NoStandard.String())
}

func TestNearestModule(t *testing.T) {
	for given, nearest := range map[float64]float64{
		0.5: 0.5, 0.529167: 0.55, 0.51: 0.5, 1.27: 1.25, 6.4: 6, 100: 70, 0.01: 0.05,
	} {
		same(t, nearest, must(NearestModule(given)), given)
	}
}

func TestDiametralPitch(t *testing.T) {
	// Computed from m = 25.4/P.
	for pitch, module := range map[float64]float64{
		16: 1.5875, 20: 1.27, 24: 1.058333, 32: 0.79375, 40: 0.635, 48: 0.529167, 64: 0.396875,
		72: 0.352778, 80: 0.3175, 96: 0.264583, 120: 0.211667, 200: 0.127,
	} {
		computed(t, module, must(ModuleOfPitch(pitch)), pitch)
		same(t, pitch, must(PitchOfModule(must(ModuleOfPitch(pitch)))))
	}
	for module, pitch := range map[float64]float64{
		0.2: 127, 0.3: 84.667, 0.4: 63.5, 0.5: 50.8, 0.6: 42.333, 0.8: 31.75, 1: 25.4,
	} {
		computed(t, pitch, must(PitchOfModule(module)), module)
	}
	// Shigley Table 13-2 (from memory), and 72.
	for _, pitch := range []float64{2, 2.25, 2.5, 3, 4, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48, 64, 72, 80, 96, 120, 150, 200} {
		nearest, larger, err := NearestPitch(25.4 / pitch)
		require.NoError(t, err)
		same(t, pitch, nearest)
		assert.InDelta(t, 0, larger, 1e-12)
	}
}

func TestNearMisses(t *testing.T) {
	// Computed: pitches that a module is easily taken for, by which percentage.
	for _, c := range []struct {
		module, pitch float64
		percent       string
	}{
		{0.5, 48, "5.8"}, {0.4, 64, "-0.8"}, {0.8, 32, "-0.8"},
	} {
		pitch, larger, err := NearestPitch(c.module)
		require.NoError(t, err)
		same(t, c.pitch, pitch)
		printed(t, c.percent, 100*larger)
	}
}

func TestDisguisedPitch(t *testing.T) {
	for _, c := range []struct {
		module, pitch float64
		disguised     bool
	}{
		{0.529167, 48, true}, {0.529, 48, true}, {0.635, 40, true}, {0.353, 72, true}, {48, 48, true}, {64, 64, true},
		{0.5, 0, false}, {20, 0, false}, {0.53, 0, false}, {0.47, 0, false},
	} {
		pitch, disguised, err := DisguisedPitch(c.module)
		require.NoError(t, err)
		assert.Equal(t, c.disguised, disguised, c.module)
		same(t, c.pitch, pitch, c.module)
	}
}
