package spec

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// repeated writes n blocks, in which {i} is the number of the block and {j}
// that of another.
func repeated(n int, block string) string {
	block = strings.NewReplacer("%", "%%", "{i}", "%[1]d", "{j}", "%[2]d").Replace(block)
	var s strings.Builder
	for i := range n {
		fmt.Fprintf(&s, block, i, (i+n/2)%n)
	}
	return s.String()
}

// A fault in each of 10,000 blocks. Whatever took time for each of them in
// proportion to their number would take minutes in all.
func TestFaultsWithoutEnd(t *testing.T) {
	const long = 1_000_000
	n := 10_000
	if testing.Short() {
		n = 1000
	}
	for name, c := range map[string]struct{ notation, text string }{
		"unknown arbors":     {"hcl", repeated(n, "arbor \"arbor_{i}\" {}\nwheel \"w{i}\" {\n  on = \"arbr_{i}\"\n  teeth = 30\n}\n")},
		"unknown wheels":     {"toml", repeated(n, "[arbor.arbor_{i}]\n[wheel.wheel_{i}]\non = \"arbor_{i}\"\nteeth = 30\n[[mesh]]\nwheels = [\"whel_{i}\", \"whel_{j}\"]\n")},
		"unknown bodies":     {"hcl", repeated(n, "arbor \"arbor_{i}\" {}\narm \"arm_{i}\" { on = \"arbor_{i}\" }\nhand \"h{i}\" {\n  on = \"arbor_{i}\"\n  against = \"amr_{i}\"\n}\n")},
		"arbors that carry":  {"hcl", repeated(n, "arbor \"arbor_{i}\" { carried_by = \"arbor_{j}\" }\narm \"a{i}\" { on = \"arbor_{i}\" }\n")},
		"parts of stages":    {"hcl", "stage \"all\" {\n  order = 1\n  parts = [\n" + repeated(n, "\"slot.slto_{i}\", \"coupling.x{i}\", \"stud.y{i}\",\n") + "]\n}\n" + repeated(n, "arbor \"arbor_{i}\" {}\nslot \"slot_{i}\" {\n  pin_on = \"arbor_{i}\"\n  slot_on = \"arbor_{j}\"\n  pin_radius = 3\n  offset = 1\n}\n")},
		"unknown blocks":     {"hcl", repeated(n, "weel \"w{i}\" {}\n")},
		"unknown attributes": {"toml", repeated(n, "[arbor.a{i}]\ndiametr = {i}\nfrmo = 3\n")},
		"unknown periods":    {"toml", repeated(n, "[hand.h{i}]\non = \"x\"\nshows = \"synodic mont {i}\"\n")},
		"unknown units":      {"hcl", repeated(n, "arbor \"a{i}\" { diameter = \"3 furlongs{i}\" }\n")},
		"doubled names":      {"hcl", strings.Repeat("arbor \"a\" {}\nwheel \"a\" {\n  on = \"a\"\n  teeth = 30\n}\nsprocket \"a\" {\n  on = \"a\"\n  teeth = 30\n}\n", n)},
		"doubled clocks":     {"hcl", strings.Repeat("clock {}\n", n)},
		"a ring of arms":     {"hcl", repeated(n, "arbor \"arbor_{i}\" { carried_by = \"arm_{j}\" }\narm \"arm_{i}\" { on = \"arbor_{i}\" }\n")},
		"one chain":          {"hcl", "chain { sprockets = [" + strings.Repeat("\"a\", \"b\", ", n) + "] }\narbor \"a\" {}\n" + "sprocket \"a\" {\n  on = \"a\"\n  teeth = 12\n}\n"},
		"one mesh":           {"toml", "[[mesh]]\nwheels = [" + strings.Repeat("\"a\", ", n) + "]\n"},
		"long names":         {"hcl", repeated(100, "arbor \"{i}"+strings.Repeat("x", 20_000)+"\" {}\nwheel \"w{i}\" { on = \"{i}"+strings.Repeat("y", 20_000)+"\" }\n")},
		"a long named value": {"hcl", "given { long = \"" + strings.Repeat("1", long) + "\" }\n" + repeated(n, "hand \"h{i}\" {\n  on = given.long\n  shows = given.long\n  sense = given.long\n  within = given.long\n  ratio = given.long\n}\n")},
		"a long word":        {"hcl", "given { long = \"" + strings.Repeat("x", long) + "\" }\n" + repeated(n, "hand \"h{i}\" {\n  on = given.long\n  shows = given.long\n  sense = given.long\n  within = given.long\n  ratio = given.long\n}\n")},
		"a long list":        {"hcl", "given { long = [" + strings.Repeat("\"x\", ", n) + "] }\nmesh { wheels = given.long }\nstage \"s\" {\n  order = 1\n  parts = given.long\n}\nstock {\n  teeth = given.long\n  modules = given.long\n}\n"},
		"empty uses":         {"toml", ""},
	} {
		t.Run(name, func(t *testing.T) {
			head := "design { title = \"x\" }\n"
			if c.notation == "toml" {
				head = "[design]\ntitle = \"x\"\n"
			}
			if name == "empty uses" {
				head = "[design]\ntitle = \"x\"\nuses = [" + strings.Repeat("\"nothing.toml\", ", n) + "]\n"
			}
			d, problems := loadNamed(t, "x."+c.notation, head+c.text)
			require.NotNil(t, d)
			require.NotEmpty(t, problems)
			require.LessOrEqual(t, len(problems), MostProblems+1)
			for _, p := range problems {
				assert.Less(t, len(p.Message)+len(p.Hint), 700)
				for _, r := range p.Related {
					assert.True(t, r.Known())
				}
			}
		})
	}
}

func TestAtMostSoManyProblemsAreTold(t *testing.T) {
	for n, want := range map[int]int{MostProblems - 1: MostProblems - 1, MostProblems: MostProblems, MostProblems + 1: MostProblems + 1, 3000: MostProblems + 1} {
		_, problems := loadNamed(t, "x.hcl", "design { title = \"x\" }\n"+repeated(n, "weel \"w{i}\" {}\n"))
		assert.Len(t, problems, want)
		last := problems[len(problems)-1]
		assert.Equal(t, n > MostProblems, strings.Contains(last.Message, "200 problems at most are told"), last.Message)
		assert.Equal(t, int32(min(n, MostProblems)), int32(last.File.Position(last.Start).Line-1), "it stands with the last that is told")
	}
}

// The sound design of 20,000 wheels is read and linked.
func TestManyWheels(t *testing.T) {
	n := 20_000
	if testing.Short() {
		n = 2000
	}
	for _, notation := range []string{"hcl", "toml"} {
		d, problems := loadNamed(t, "x."+notation, many(notation, n))
		require.Empty(t, problems)
		require.Len(t, d.Wheels, n)
		for i, w := range d.Wheels {
			if w.Index != i || w.Arbor != d.Arbors[i] || w.Name.Text != fmt.Sprint("wheel_", i) {
				t.Fatal("wheel", i, "is", w.Title(), "on", w.Arbor.Title())
			}
		}
		require.Same(t, d.Wheels[n-1], d.Meshes[n-2].B)
	}
}
