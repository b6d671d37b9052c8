package tooth

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBevel(t *testing.T) {
	// SDP/SI D785 Table 8-3 (from memory) and computed: m 3, 20 and 40 teeth.
	c := must(Bevel{Pinion: 20, Wheel: 40, Module: 3, ShaftAngle: 90}.Cones())
	printed(t, "26.56505", c.PinionAngle)
	printed(t, "63.43495", c.WheelAngle)
	printed(t, "67.08204", c.Distance)
	printed(t, "22.36", c.MostFace)
	computed(t, 22.3607, c.PinionVirtual)
	computed(t, 89.4427, c.WheelVirtual)
}

func TestBevelConesShareAnApex(t *testing.T) {
	for _, shafts := range []float64{30, 60, 90, 110} {
		b := Bevel{Pinion: 17, Wheel: 41, Module: 0.8, ShaftAngle: shafts}
		c := must(b.Cones())
		same(t, shafts, c.PinionAngle+c.WheelAngle)
		same(t, 17*0.8/2, c.Distance*math.Sin(c.PinionAngle*degree))
		same(t, 41*0.8/2, c.Distance*math.Sin(c.WheelAngle*degree))
		assert.LessOrEqual(t, c.MostFace, 8.0)
	}
	_, err := Bevel{Pinion: 17, Wheel: 41, Module: 1, ShaftAngle: 120}.Cones()
	require.ErrorIs(t, err, ErrNoMesh, "hollow cone")
	_, err = Bevel{Pinion: 17, Wheel: 41, Module: 1, ShaftAngle: 180}.Cones()
	require.ErrorIs(t, err, ErrRange)
}

func TestCrownGear(t *testing.T) {
	// Problem from tutorsglobe, Gleason crown gear (24 and 48 teeth, m 2.12);
	// numbers computed.
	shafts := must(CrownGearShaftAngle(24, 48))
	printed(t, "120", shafts)
	c := must(Bevel{Pinion: 24, Wheel: 48, Module: 2.12, ShaftAngle: shafts}.Cones())
	printed(t, "30", c.PinionAngle)
	printed(t, "90", c.WheelAngle)
	assert.True(t, math.IsInf(c.WheelVirtual, 1))
}

func TestWorm(t *testing.T) {
	// SDP/SI D785 Table 9-3 (from memory): m 3, 2 starts, d1 44, 30 teeth; tip by
	// Tandwiel.
	s := must(Worm{Starts: 2, Teeth: 30, Module: 3, Diameter: 44}.Sizes())
	printed(t, "7.76517", s.LeadAngle)
	printed(t, "67.000", s.Centre)
	printed(t, "18.8496", s.Lead)
	printed(t, "15", s.Ratio)
	same(t, 50, s.WormTip)
	same(t, 44.0/3, s.Quotient)
	same(t, 90, s.WheelDiameter)
	assert.Greater(t, s.LeadAngle, SelfLockingLead)
	// The wheel shifted by 0.4 modules draws the worm out by as much (computed
	// from the formula).
	same(t, 67+0.4*3, must(Worm{Starts: 2, Teeth: 30, Module: 3, Diameter: 44, Shift: 0.4}.Sizes()).Centre)
}

func TestWormEfficiency(t *testing.T) {
	// Shigley Table 13-6 (from memory): 14.5 deg, friction 0.05, per cent.
	for lead, percent := range map[float64]string{1: "25.2", 2.5: "45.7", 10: "76.6", 20: "85.9"} {
		forward, _, err := WormEfficiency(lead, 14.5, 0.05)
		require.NoError(t, err)
		printed(t, percent, 100*forward, lead)
	}
	// A wheel drives back where the lead is steeper than friction holds.
	_, back, err := WormEfficiency(2, 20, 0.05)
	require.NoError(t, err)
	assert.Zero(t, back)
	_, back, err = WormEfficiency(4, 20, 0.05)
	require.NoError(t, err)
	assert.Positive(t, back)
	forward, back, err := WormEfficiency(4, 20, 0)
	require.NoError(t, err)
	same(t, 1, forward)
	same(t, 1, back)
}

func TestCrownWheel(t *testing.T) {
	// Computed from the local pressure angle: m 0.5, 48 teeth.
	c := Crown{Teeth: 48, Pinion: 12, Module: 0.5, PressureAngle: 20}
	for radius, angle := range map[float64]float64{11.5: 11.319, 12: 20.000, 12.5: 25.564, 13: 29.841} {
		computed(t, angle, must(c.LocalPressureAngle(radius)), radius)
	}
	same(t, 12, must(c.PitchRadius()))
	computed(t, 11.276311, must(c.LeastRadius()))
	_, err := c.LocalPressureAngle(11.2)
	require.ErrorIs(t, err, ErrRange)
	inner, outer, err := c.UsualFace()
	require.NoError(t, err)
	same(t, 11.5, inner)
	assert.Greater(t, outer, 12.0)
	assert.LessOrEqual(t, outer, 12.5)
}

func TestCrownWheelTeethPointOutside(t *testing.T) {
	// At the pitch radius the tooth is that of the basic rack, pi/2 - 2 tan(20)
	// modules wide at its tip, so that the point lies outside it, and the
	// farther the larger the wheel.
	last := 0.0
	for _, z := range []int{24, 48, 96} {
		c := Crown{Teeth: z, Pinion: 12, Module: 1, PressureAngle: 20}
		most := must(c.MostRadius())
		assert.Greater(t, most, must(c.PitchRadius()))
		assert.Greater(t, most-must(c.PitchRadius()), last)
		last = most - must(c.PitchRadius())
	}
}
