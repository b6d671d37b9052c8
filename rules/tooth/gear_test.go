package tooth

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStandardBlank(t *testing.T) {
	// SDP/SI D785 Table 4-1 (from memory): m 3, 12 and 24 teeth.
	for _, c := range []struct {
		teeth                int
		d, db, da, df, depth string
	}{
		{12, "36", "33.8289", "42", "28.5", "6.75"},
		{24, "72", "67.6579", "78", "64.5", "6.75"},
	} {
		b := must(Standard(c.teeth, 3).Blank())
		printed(t, c.d, b.Reference)
		printed(t, c.db, b.Base)
		printed(t, c.da, b.Tip)
		printed(t, c.df, b.Root)
		printed(t, c.depth, b.Depth)
	}
}

func TestInchBlank(t *testing.T) {
	// Mott p. 320: P 12, 11 and 18 teeth: db 0.8614 and 1.4095 in, tooth 0.1309 in.
	m := must(ModuleOfPitch(12))
	a, b := must(Standard(11, m).Blank()), must(Standard(18, m).Blank())
	printed(t, "0.8614", a.Base/25.4)
	printed(t, "1.4095", b.Base/25.4)
	printed(t, "0.1309", a.Thickness/25.4)
	printed(t, "1.2083", must(Pair{Standard(11, m), Standard(18, m)}.NominalCentre())/25.4)
}

func TestTopLand(t *testing.T) {
	// Computed from the top land formula.
	p := must(Pair{shifted(12, 3, 0.6), shifted(24, 3, 0.36)}.Shortened())
	computed(t, 1.26397, must(p.A.Blank()).TopLand)
	computed(t, 0.4213, must(p.A.Blank()).TopLand/3)
	pointed := must(shifted(10, 1, 0.5).Blank())
	same(t, 13, pointed.Tip)
	computed(t, 0.198922, pointed.TopLand)
	assert.Negative(t, must(shifted(10, 1, 0.9).Blank()).TopLand, "pointed before its tip")
}

func TestTipDiameterForIsInverseOfTopLand(t *testing.T) {
	for _, x := range []float64{-0.2, 0, 0.3, 0.6} {
		for _, z := range []int{7, 12, 30, 100} {
			g := shifted(z, 1, x)
			b := must(g.Blank())
			if b.TopLand < 0 {
				continue
			}
			same(t, b.Tip, must(g.TipDiameterFor(b.TopLand)), z, x)
			tip := must(g.TipDiameterFor(0))
			g.Shortening = (b.Tip - tip) / 2
			assert.InDelta(t, 0, must(g.Blank()).TopLand, 1e-9, "pointed")
		}
	}
	_, err := Standard(20, 1).TipDiameterFor(2)
	require.ErrorIs(t, err, ErrRange)
	_, err = ring(60, 1, 0).TipDiameterFor(0)
	require.ErrorIs(t, err, ErrRange)
}

func TestRingTeethFillTheSpacesOfAWheel(t *testing.T) {
	for _, x := range []float64{-0.3, 0, 0.5} {
		wheel, space := must(shifted(40, 2, x).Blank()), must(ring(40, 2, x).Blank())
		same(t, math.Pi*2, wheel.Thickness+space.Thickness, "one pitch")
		same(t, wheel.Reference, space.Reference)
	}
}

func TestRingTipReachesItsBaseCircle(t *testing.T) {
	// Computed: from 34 teeth on, at 20 deg and full addendum.
	few, enough := must(ring(33, 1, 0).Blank()), must(ring(34, 1, 0).Blank())
	assert.Less(t, few.Tip, few.Base)
	assert.GreaterOrEqual(t, enough.Tip, enough.Base)
}

func TestChord(t *testing.T) {
	// SDP/SI D785 Table 10-1: m 10, 12 teeth, x 0.3.
	g := shifted(12, 10, 0.3)
	c := must(g.Chord())
	printed(t, "17.8918", must(g.Blank()).Thickness)
	printed(t, "8.54270", c.HalfAngle)
	printed(t, "17.8256", c.Thickness)
	printed(t, "13.6657", c.Height)
}

func TestBaseTangent(t *testing.T) {
	// KHK Gear Technical Reference, span measurement (from memory): m 3, 24
	// teeth, x 0.4: 4 teeth, 32.8266.
	k, w, err := shifted(24, 3, 0.4).BaseTangent()
	require.NoError(t, err)
	assert.Equal(t, 4, k)
	printed(t, "32.8266", w)
}

func TestBaseTangentIsTeethAndSpacesOnTheBaseCircle(t *testing.T) {
	// The span is k-1 base pitches and one tooth at the base circle.
	for _, x := range []float64{-0.3, 0, 0.4} {
		for _, z := range []int{9, 24, 57, 130} {
			g := shifted(z, 0.8, x)
			k, w, err := g.BaseTangent()
			require.NoError(t, err)
			onBase := 2 * g.base() * g.halfAngle(g.base())
			same(t, float64(k-1)*math.Pi*0.8*math.Cos(20*degree)+onBase, w, z, x)
		}
	}
}

func TestBasicRack(t *testing.T) {
	// ISO 53 (from memory); SDP/SI D785 T-9 confirms 20 deg, 1 and 1.25.
	for _, c := range []struct {
		profile                     byte
		clearance, dedendum, fillet float64
	}{
		{'A', 0.25, 1.25, 0.38}, {'B', 0.25, 1.25, 0.30}, {'C', 0.25, 1.25, 0.25}, {'D', 0.40, 1.40, 0.39},
	} {
		r := must(BasicRack(c.profile))
		assert.Equal(t, Rack{20, 1, c.clearance, c.dedendum, c.fillet}, r)
		same(t, r.Dedendum, r.Addendum+r.Clearance)
	}
	g := Standard(20, 1)
	assert.Equal(t, []float64{20, 1, 1.25}, []float64{g.PressureAngle, g.Addendum, g.Dedendum})
}

func TestDepths(t *testing.T) {
	// metrication.com, Metric Gears: 2.4 m below module 1.25, else 2.25 m.
	same(t, 2.4, must(WorkshopDepth(1)))
	same(t, 2.8125, must(WorkshopDepth(1.25)))
	// ANSI/AGMA 1003, Machinery's Handbook (from memory), computed: P 48.
	dedendum, depth, err := FinePitchDepth(48)
	require.NoError(t, err)
	computed(t, 0.0270, dedendum/25.4)
	computed(t, 0.047833, depth/25.4)
	computed(t, 1.2150, depth)
}

func TestGearRefuses(t *testing.T) {
	for name, change := range map[string]func(*Gear){
		"no teeth":        func(g *Gear) { g.Teeth = 0 },
		"no module":       func(g *Gear) { g.Module = 0 },
		"no angle":        func(g *Gear) { g.PressureAngle = 0 },
		"NaN shift":       func(g *Gear) { g.Shift = math.NaN() },
		"root vanished":   func(g *Gear) { g.Teeth = 2 },
		"tip within root": func(g *Gear) { g.Shortening = 2.3 },
		"steep helix":     func(g *Gear) { g.Helix = 61 },
	} {
		g := Standard(20, 1)
		change(&g)
		require.ErrorIs(t, g.Check(), ErrRange, name)
		_, err := g.Blank()
		require.ErrorIs(t, err, ErrRange, name)
	}
}
