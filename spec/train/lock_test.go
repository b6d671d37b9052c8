package train_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

func solve(t *testing.T, text string) *train.Train {
	t.Helper()
	name := filepath.Join(t.TempDir(), "design.toml")
	require.NoError(t, os.WriteFile(name, []byte("[design]\ntitle = \"x\"\n"+text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems, text)
	return train.Solve(d)
}

// parts writes arbors and wheels from words such as "a.30", a wheel of 30 on
// arbor a, "a.30@arm" with what carries the arbor, "s!.30" on a stud; and meshes
// from "1-2", the first word's wheel with the second's.
func parts(words string) string {
	var s strings.Builder
	seen := map[string]bool{}
	for i, w := range strings.Fields(words) {
		if a, b, ok := strings.Cut(w, "-"); ok {
			s.WriteString("[[mesh]]\nwheels = [\"w" + a + "\", \"w" + b + "\"]\n")
			continue
		}
		w, carrier, carried := strings.Cut(w, "@")
		name, teeth, _ := strings.Cut(w, ".")
		kind := "arbor"
		if n, ok := strings.CutSuffix(name, "!"); ok {
			name, kind = n, "stud"
		}
		if !seen[name] {
			seen[name] = true
			s.WriteString("[" + kind + "." + name + "]\n")
			if carried {
				s.WriteString("carried_by = \"" + carrier + "\"\n")
			}
		}
		s.WriteString("[wheel.w" + string(rune('1'+i)) + "]\non = \"" + name + "\"\nteeth = " + teeth + "\n")
	}
	return s.String()
}

const turned = "[drive.motor]\non = \"a\"\nspeed = 30\n"

// Each loop and what it needs, worked by hand: round a loop on one carrier the
// product of all ratios is 1.
func TestLocks(t *testing.T) {
	for _, row := range []struct {
		name, text string
		loop       []string
		needs      string // of the joint the loop is named by, "" where no ratio would do
	}{
		{"turns", parts("a.30 b.31 c.32 1-2 2-3") + turned, nil, ""},
		// 3 drives 1: -32/30; from 1 over 2 to 3 it is 30/32, so 32/30 is needed
		{"three in a ring", parts("a.30 b.31 c.32 1-2 2-3 3-1") + turned, []string{"mesh w1/w2", "mesh w2/w3", "mesh w3/w1"}, "16/15"},
		// the second pair gives -37/23 of the lay for one of the tube, the first -31/29
		{"two pairs side by side", parts("lay.29 tube.31 lay.23 tube.37 1-2 3-4"), []string{"mesh w1/w2", "mesh w3/w4"}, "-29/31"},
		{"two pairs that agree", parts("lay.20 tube.30 lay.40 tube.60 1-2 3-4"), nil, ""},
		{"a wheel on the frame", parts("s!.30 a.30 1-2") + turned, []string{"mesh w1/w2"}, ""},
		{"a wheel on the frame, farther on", parts("a.30 b.40 s!.30 1-2 2-3") + turned, []string{"mesh w2/w3"}, ""},
		// a turns at 30 rpm and b at -30 x 30/60
		{"two drives", parts("a.30 b.60 1-2") + turned + "[drive.crank]\non = \"b\"\nspeed = 14\n", []string{"mesh w1/w2", "drive \"motor\"", "drive \"crank\""}, "-15"},
		{"two drives that agree", parts("a.30 b.60 1-2") + turned + "[drive.crank]\non = \"b\"\nspeed = -15\n", nil, ""},
		// on an arm that goes on turning
		{"on an arm", "[arm.arm]\non = \"a\"\n" + parts("a.7 lay.29@arm tube.31@arm lay.23@arm tube.37@arm 2-3 4-5") + turned, []string{"mesh w2/w3", "mesh w4/w5"}, "-29/31"},
		// the planet stands still on its cage, and nothing is locked
		{"both suns turn alike", "[arm.cage]\non = \"cage\"\n[arbor.cage]\n" +
			parts("a.20 s1.40 s2.40 s1.24 s2.24 planet.12@cage 1-2 1-3 4-6 5-6") + turned, []string{}, ""},
		{"a fixed wheel under an arm", "[arm.arm]\non = \"a\"\n" + parts("s!.30 planet.30@arm a.9 1-2") + turned, nil, ""},
		{"a coupling to a stud holds the drive", parts("s!.5 a.30") + "[coupling.brake]\narbors = [\"a\", \"s\"]\n" + turned, []string{"coupling \"brake\"", "drive \"motor\""}, ""},
	} {
		t.Run(row.name, func(t *testing.T) {
			tr := solve(t, row.text)
			if len(row.loop) == 0 {
				for _, l := range tr.Locks {
					t.Errorf("locked by %s", l.Joint.Name())
				}
				return
			}
			require.Len(t, tr.Locks, 1)
			l := &tr.Locks[0]
			var loop []string
			for _, j := range l.Loop {
				loop = append(loop, j.Name())
			}
			assert.Equal(t, row.loop, loop)
			needs, ok := tr.Needs(l, l.Joint)
			require.Equal(t, row.needs != "", ok)
			if ok {
				assert.Equal(t, row.needs, needs.String())
			}
		})
	}
}

// Two arbors on two arms, worked by hand: the arms' middles stand 100 apart, the
// arbors 30 and 20 from them.
func TestApart(t *testing.T) {
	tr := solve(t, `
[arbor.sun]
at = [0, 0]
[arbor.other]
at = [60, 80]
[arbor.lean]
at = [0, 0]
tilt = 10
[arbor.nowhere]
[arm.long]
on = "sun"
[arm.short]
on = "other"
[arbor.near]
carried_by = "long"
at = [0, 30]
[arbor.mate]
carried_by = "long"
at = [40, 0]
[arbor.far]
carried_by = "short"
radius = 20
bearing = 77
[arbor.lost]
carried_by = "short"
`)
	for _, row := range []struct {
		a, b        string
		least, most float64
	}{
		{"near", "far", 50, 150},
		{"far", "near", 50, 150},
		{"near", "other", 70, 130},
		{"sun", "far", 80, 120},
		{"near", "mate", 50, 50},
		{"sun", "other", 100, 100},
		{"near", "sun", 30, 30},
		{"lean", "far", -1, -1},
		{"near", "lost", -1, -1},
		{"nowhere", "far", -1, -1},
	} {
		t.Run(row.a+" "+row.b, func(t *testing.T) {
			d := tr.Design
			least, most, ok := tr.Apart(d.ArborNamed(row.a), d.ArborNamed(row.b))
			require.Equal(t, row.least >= 0, ok)
			if ok {
				assert.InDelta(t, row.least, least, 1e-9)
				assert.InDelta(t, row.most, most, 1e-9)
			}
		})
	}
}

func TestStands(t *testing.T) {
	tr := solve(t, "[arbor.sun]\nat = [1, 2]\n[arm.year]\non = \"sun\"\n[arbor.earth]\ncarried_by = \"year\"\nat = [3, 4]\n[arbor.tube]\ncarried_by = \"year\"\nat = [0, 0]\n")
	d := tr.Design
	frame, year := spec.Body{}, spec.Body{Arbor: d.ArborNamed("sun")}
	for _, row := range []struct {
		arbor string
		on    spec.Body
		x, y  float64
		ok    bool
	}{
		{"sun", frame, 1, 2, true},
		{"sun", year, 0, 0, true},
		{"earth", year, 3, 4, true},
		{"earth", frame, 0, 0, false},
		{"tube", frame, 1, 2, true},
		{"tube", year, 0, 0, true},
	} {
		x, y, ok := tr.Stands(d.ArborNamed(row.arbor), row.on)
		require.Equal(t, row.ok, ok, row.arbor)
		if ok {
			assert.Equal(t, [2]float64{row.x, row.y}, [2]float64{x, y}, row.arbor)
		}
	}
}
