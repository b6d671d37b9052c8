package tooth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestGeneva(t *testing.T) {
	// Computed; the right angle at entry by KMODDL, the formulas as in Mechanisms
	// and Mechanical Devices Sourcebook (from memory). Four slots: 90 and 270 deg
	// also by everything2, Geneva star.
	for _, c := range []struct {
		slots                    int
		step, move, dwell        float64
		dwellShare, crank, mouth float64
		speed, accel, accelAt    float64
	}{
		{3, 120, 60, 300, .83333, .86603, .50000, 6.4641, 31.392, 4.76},
		{4, 90, 90, 270, .75000, .70711, .70711, 2.41421, 5.40698, 11.46},
		{8, 45, 135, 225, .62500, .38268, .92388, 0.61991, 0.69976, 31.64},
		{12, 30, 150, 210, .58333, .25882, .96593, 0.34920, 0.34765, 44.00},
	} {
		s := must(Geneva{Slots: c.slots, Pins: 1, Centre: 1}.Sizes())
		same(t, c.step, s.Step)
		same(t, c.move, s.Move)
		same(t, c.dwell, s.Dwell)
		computed(t, c.dwellShare, 1-s.MoveShare)
		computed(t, c.crank, s.Crank)
		computed(t, c.mouth, s.Mouth)
		computed(t, c.speed, s.MostSpeed)
		computed(t, c.accel, s.MostAccel)
		assert.InDelta(t, c.accelAt, s.MostAt, 0.0051)
		same(t, 1-s.Crank, s.Bottom)
		same(t, s.Mouth-s.Bottom, s.SlotDepth)
		same(t, c.move/360, s.MoveShare)
		same(t, 1, s.Crank*s.Crank+s.Mouth*s.Mouth, "a right angle at entry")
	}
	s := must(Geneva{Slots: 4, Pins: 1, Centre: 50}.Sizes())
	computed(t, 35.3553, s.Crank)
	computed(t, 35.3553, s.Mouth)
	s = must(Geneva{Slots: 12, Pins: 1, Centre: 50}.Sizes())
	computed(t, 12.9410, s.Crank)
	computed(t, 48.2963, s.Mouth)
}

func TestGenevaAngle(t *testing.T) {
	// Computed.
	for _, c := range []struct {
		slots         int
		driver, wheel float64
	}{
		{4, 45, 45}, {4, 30, 42.36781}, {4, 15, 30}, {12, 75, 15}, {12, 45, 12.62634}, {12, 30, 9.46952},
	} {
		g := Geneva{Slots: c.slots, Pins: 1, Centre: 50}
		computed(t, c.wheel, must(g.WheelAngle(c.driver)), c)
		same(t, -must(g.WheelAngle(c.driver)), must(g.WheelAngle(-c.driver)))
	}
	_, err := Geneva{Slots: 4, Pins: 1, Centre: 50}.WheelAngle(46)
	require.ErrorIs(t, err, ErrRange)
}

func TestGenevaMotionByDifferences(t *testing.T) {
	const h = 1e-3
	for _, slots := range []int{3, 4, 6, 12} {
		g := Geneva{Slots: slots, Pins: 1, Centre: 20}
		s := must(g.Sizes())
		angle := func(driver float64) float64 { return must(g.WheelAngle(driver)) }
		assert.InDelta(t, s.MostSpeed, (angle(h)-angle(-h))/(2*h), 1e-5)
		accel := func(driver float64) float64 {
			return -(angle(driver+h) - 2*angle(driver) + angle(driver-h)) / (h * h) / degree
		}
		assert.InEpsilon(t, s.MostAccel, accel(s.MostAt), 1e-4)
		assert.Less(t, accel(s.MostAt+1), s.MostAccel)
		assert.Less(t, accel(s.MostAt-1), s.MostAccel)
		assert.InEpsilon(t, s.EntryAccel, accel(s.Move/2-2*h), 1e-2)
	}
}

func TestGenevaPins(t *testing.T) {
	// Computed: k pins need k (n - 2)/(2 n) below 1.
	require.NoError(t, Geneva{Slots: 3, Pins: 5, Centre: 10}.Check())
	require.ErrorIs(t, Geneva{Slots: 3, Pins: 6, Centre: 10}.Check(), ErrNoMesh)
	require.ErrorIs(t, Geneva{Slots: 4, Pins: 4, Centre: 10}.Check(), ErrNoMesh)
	require.ErrorIs(t, Geneva{Slots: 2, Pins: 1, Centre: 10}.Check(), ErrRange)
	s := must(Geneva{Slots: 6, Pins: 2, Centre: 10}.Sizes())
	same(t, 180, s.Move+s.Dwell)
	same(t, 2.0/3, s.MoveShare)
	assert.Equal(t, 4, must(Geneva{Slots: 5, Pins: 1, Centre: 10}.StopTurns()))
}

func TestStar(t *testing.T) {
	// Computed.
	for teeth, step := range map[int]float64{7: 51.42857, 12: 30, 31: 11.61290, 59: 6.10169} {
		computed(t, step, must(StarStep(teeth)), teeth)
	}
	_, err := StarStep(2)
	require.ErrorIs(t, err, ErrRange)
}

func TestRatchet(t *testing.T) {
	// Computed.
	tooth, catch, err := Ratchet{Teeth: 60, Pawls: 3}.Steps()
	require.NoError(t, err)
	same(t, 6, tooth)
	same(t, 2, catch)
}
