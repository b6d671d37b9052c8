package setting_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/setting"
	"wheelwork/spec/train"
)

// branches is a shaft that turns once a day with branches of one pair each: the
// hands are named by the teeth of their wheels, which turn once in so many 20ths
// of a day and should in so many days.
func branches(more string, teeth ...int) string {
	var b strings.Builder
	b.WriteString("design {\n  title = \"branches\"\n  epoch = \"2027-01-01\"\n}\narbor \"day\" {}\nclock {\n  on     = \"day\"\n  period = \"1 d\"\n}\n")
	b.WriteString("hand \"day\" {\n  on     = \"day\"\n  period = \"1 d\"\n}\nwheel \"p\" {\n  on    = \"day\"\n  teeth = 20\n}\n")
	for _, z := range teeth {
		fmt.Fprintf(&b, "arbor \"a%d\" {}\nwheel \"w%d\" {\n  on    = \"a%d\"\n  teeth = %d\n}\nmesh { wheels = [\"p\", \"w%d\"] }\nhand \"h%d\" {\n  on     = \"a%d\"\n  period = \"%d d\"\n%s}\n", z, z, z, z, z, z, z, z, more)
	}
	return b.String()
}

// Worked by hand. 10 d and 6 h after the epoch the day's hand stands at 90
// degrees: a quarter of a turn of the drive. The wheel of 50 goes a tenth of a
// turn with it, 36 degrees; wanted are 10.25/50 of a turn, 73.8 degrees. Of the
// 37.8 left, 5 teeth of 7.2 make 36, and 1.8 degrees are left behind: a quarter
// of a day of its 50. The wheel of 40 goes 45 degrees and should be at 92.25: 5
// teeth of 9 make 45, and 2.25 are left: again a quarter of a day.
func TestTeethByHand(t *testing.T) {
	s := on(t, solved(t, branches("", 50, 40)), day(t, "2027-01-11", 6))
	require.Len(t, s.Steps, 3)
	drive := s.Steps[0]
	assert.Equal(t, setting.ByDrive, drive.By)
	assert.Equal(t, "day", drive.Hand.Name.Text)
	assert.InDelta(t, 0.25, drive.Drive, 1e-12)
	assert.Len(t, drive.With, 2)
	for name, want := range map[string]struct {
		pitch, turn, left float64
		places            int
	}{
		"h50": {7.2, 36, -1.8, 5},
		"h40": {9, 45, -2.25, 5},
	} {
		p := step(t, s, name)
		assert.Equal(t, setting.ByTeeth, p.By)
		assert.Equal(t, "mesh p/w"+name[1:], p.Joint.Name())
		assert.InDelta(t, want.pitch, p.Pitch, 1e-12)
		assert.InDelta(t, want.turn, p.Turn, 1e-12)
		assert.InDelta(t, want.left, p.Error, 1e-9)
		assert.Equal(t, want.places, p.Places)
		days, ok := p.Days()
		require.True(t, ok)
		assert.InDelta(t, -0.25, days, 1e-9)
		assert.Equal(t, "day", p.After[0].Name.Text)
	}
}

// A hand that slips on its arbor, or a coupling, leaves nothing.
func TestSlipsLeaveNothing(t *testing.T) {
	s := on(t, solved(t, branches("  slip_torque = \"10 N mm\"\n", 50)), day(t, "2027-01-11", 6))
	p := step(t, s, "h50")
	assert.Equal(t, setting.BySlip, p.By)
	assert.InDelta(t, 73.8-36, p.Turn, 1e-9)
	assert.Zero(t, p.Error)

	text := strings.Replace(branches("", 50), `on     = "a50"`, `on     = "tube"`, 1) + "arbor \"tube\" {}\ncoupling \"clutch\" {\n  arbors = [\"a50\", \"tube\"]\n  slips  = true\n}\n"
	s = on(t, solved(t, text), day(t, "2027-01-11", 6))
	p = step(t, s, "h50")
	assert.Equal(t, setting.ByCoupling, p.By)
	assert.Equal(t, `coupling "clutch"`, p.Joint.Name())
	assert.InDelta(t, 73.8-36, p.Turn, 1e-9)
	assert.Zero(t, p.Error)
}

// Two pairs at once: a tooth of the second, of 50, is 360/50 of the hand, one of
// the first 360/37 and half of that behind 25 over 50. Together they reach every
// multiple of 360/1850, for 37 x 2 and 50 have the factor 2 in common.
func TestTwoMeshesAtOnce(t *testing.T) {
	text := `
design {
  title = "two pairs"
  epoch = "2027-01-01"
}
arbor "day" {}
arbor "lay" {}
arbor "slow" {}
wheel "a" {
  on    = "day"
  teeth = 20
}
wheel "b" {
  on    = "lay"
  teeth = 37
}
wheel "c" {
  on    = "lay"
  teeth = 25
}
wheel "d" {
  on    = "slow"
  teeth = 50
}
mesh { wheels = ["a", "b"] }
mesh { wheels = ["c", "d"] }
clock {
  on     = "day"
  period = "1 d"
}
hand "day" {
  on     = "day"
  period = "1 d"
}
hand "slow" {
  on     = "slow"
  period = "3.65 d"
}
`
	found := 0
	for hours := range 60 {
		s := on(t, solved(t, text), day(t, "2027-01-02", float64(hours)))
		p := step(t, s, "slow")
		if p.By == setting.ByDrive || p.Pitch == 0 {
			continue
		}
		assert.InDelta(t, 360.0/37/2, p.Pitch, 1e-12)
		assert.LessOrEqual(t, math.Abs(p.Error), p.Pitch/2+1e-9)
		f := p.Finer
		if f == nil {
			continue
		}
		found++
		assert.LessOrEqual(t, math.Abs(f.Error), math.Abs(p.Error)/2)
		assert.LessOrEqual(t, math.Abs(f.Error), 360.0/1850/2+1e-9)
		moved := float64(f.Places[0])*360/50 + float64(f.Places[1])*360/37/2
		if f.Joints[0].Name() == "mesh a/b" {
			moved = float64(f.Places[1])*360/50 + float64(f.Places[0])*360/37/2
		}
		assert.InDelta(t, f.Error, moved-(p.Turn-p.Error), 1e-9)
	}
	assert.Greater(t, found, 20)
}

// The hour hand of twelve hours follows where the minute hand is run through
// whole hours; the drum behind a counter shows whole steps.
func TestWholeTurns(t *testing.T) {
	s := on(t, solved(t, clockwork), day(t, "2027-01-03", 8+1.0/3))
	minute, hour := step(t, s, "minute"), step(t, s, "hour")
	assert.Equal(t, setting.ByDrive, minute.By)
	assert.InDelta(t, 360*(2+1.0/3), minute.Turn, 1e-9, "50 h 20 min less four times twelve hours")
	assert.Equal(t, setting.ByFollows, hour.By)
	assert.InDelta(t, 0, hour.Error, 1e-9)

	text := strings.NewReplacer(`arbor "lay" {}`, `arbor "lay" {}
counter "star" {
  from  = "minute"
  to    = "other"
  steps = 24
}
hand "drum" {
  on    = "other"
  ratio = "1/24"
  of    = "minute"
}`).Replace(clockwork)
	s = on(t, solved(t, text), day(t, "2027-01-03", 8+1.0/3))
	drum := step(t, s, "drum")
	assert.InDelta(t, 2*15, hand(t, s, "drum").Degrees, 1e-9, "two hours and a third more than two days, in steps of 15 degrees")
	assert.Equal(t, setting.ByFollows, drum.By)
}

// A slow hand is run to its place by whole turns of the fast one: the wheel of
// 360 goes a degree a turn.
func TestARunBringsSlowHands(t *testing.T) {
	s := on(t, solved(t, strings.Replace(branches("", 7200), `period = "7200 d"`, `period = "360.5 d"`, 1)), day(t, "2027-07-01", 6))
	p := step(t, s, "day")
	want := 360 * 181.25 / 360.5 // degrees of the slow hand
	assert.InDelta(t, math.Round(want-0.25)*360+90, p.Turn, 1e-9)
	assert.LessOrEqual(t, math.Abs(step(t, s, "h7200").Error), 0.5)
}

// Hands that others hold fast are said to be held, with what that leaves.
func TestHeldHands(t *testing.T) {
	text := branches("", 50) + "hand \"second\" {\n  on     = \"a50\"\n  period = \"60 d\"\n}\n"
	s := on(t, solved(t, text), day(t, "2027-01-11", 6))
	p := step(t, s, "second")
	assert.Equal(t, setting.ByTied, p.By)
	assert.InDelta(t, 72-360*10.25/60, p.Error, 1e-9)
	assert.Len(t, p.After, 2)
}

// Three planets between sun and ring hold one another: none can be let in
// elsewhere by itself.
func TestClosedLoopsAreNotLiftedOut(t *testing.T) {
	tr := demo(t, "harbour-table/table.hcl")
	s := on(t, tr, day(t, "2027-05-01", 0))
	for _, p := range s.Steps {
		if p.Joint != nil {
			assert.NotContains(t, p.Joint.Name(), "planet")
		}
	}
}

// Replayed from the zero marks, the steps of the demo and of the planets bring
// every hand to its place but for what is said to be left, and no step moves a
// hand that was set before.
func TestReplay(t *testing.T) {
	for _, path := range []string{"harbour-table/table.hcl", "harbour-table-toml/table.toml", "planet-wall/wall.hcl"} {
		tr := demo(t, path)
		for _, date := range []string{"2027-01-01", "2031-08-17", "1950-02-28", "-0584-05-28"} {
			s := on(t, tr, day(t, date, 7.25))
			at := replayed(t, tr, s)
			for i := range s.Steps {
				p := &s.Steps[i]
				h := p.Hand
				stands := at[h.Name.Text]
				if h.Name.Text == "years" || h.Name.Text == "decades" {
					stands = 36 * math.Floor(stands/36+1e-9)
				}
				if h.Sense == "cw" && h.Name.Text != "decades" {
					stands = -stands
				}
				if h.Name.Text == "decades" {
					stands = 36 * math.Floor(-at["decades"]/36+1e-9)
				}
				assert.InDelta(t, 0, apart(h.Degrees+p.Error, stands), 1e-6, "%s %s hand %q by %s", path, date, h.Name.Text, p.By)
			}
		}
	}
}

// replayed turns the model as the steps say, in degrees counter-clockwise.
func replayed(t *testing.T, tr *train.Train, s *setting.Setting) map[string]float64 {
	t.Helper()
	var all []int
	index := map[*train.Joint]int{}
	for i := range tr.Joints {
		all = append(all, i)
		index[&tr.Joints[i]] = i
	}
	shifts := tr.NewShifts(all)
	at := map[string]float64{}
	for i := range s.Steps {
		p := &s.Steps[i]
		sign := map[string]float64{"ccw": 1, "cw": -1}[p.Hand.Sense]
		switch {
		case p.By == setting.ByDrive:
			require.NotNil(t, s.Master)
			for _, d := range tr.Design.Drives {
				rate, ok := tr.Against(d.Arbor, tr.Carrier(d.Arbor))
				require.True(t, ok)
				for _, h := range tr.Design.Hands {
					if own, ok := tr.Against(h.Arbor, h.Base); ok {
						at[h.Name.Text] += 360 * p.Drive * own.Quo(rate).Float()
					}
				}
			}
		case p.By == setting.BySlip:
			at[p.Hand.Name.Text] += p.Turn * sign
		case p.Turn != 0:
			j := index[p.Joint]
			own := 0.0
			for _, shift := range shifts.Of(p.Hand.Arbor, p.Hand.Base) {
				if shift.Joint == j {
					own = shift.Turns.Float()
				}
			}
			require.NotZero(t, own)
			for _, h := range tr.Design.Hands {
				for _, shift := range shifts.Of(h.Arbor, h.Base) {
					if shift.Joint == j {
						at[h.Name.Text] += p.Turn * sign * shift.Turns.Float() / own
					}
				}
			}
		}
	}
	return at
}
