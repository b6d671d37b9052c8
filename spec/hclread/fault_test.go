package hclread

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/text"
)

const sound = `design {
  title = "Table"
  uses  = ["stock.toml", "moon.hcl"]
}
given {
  m = 0.5
  n = (given.m + 1) * 2
}
wheel "idler" { on = "stud"  teeth = 31  module = given.m }
bounds {
  undercut { severity = "off" }
  tip-interference {
    severity = "note" # why
  }
}
mesh {
  wheels = [
    "fixed",
    "idler",
  ]
  train = "moon"
}
`

const soundEnd = `hand "age" {
  on    = "pipe"
  shows = "synodic month"
}
`

// One wrong byte anywhere, left out or put in, gives two problems at most, one
// of them on its line or the next or at the bracket that is left without its
// other half, and the block after it is read.
func TestOneFault(t *testing.T) {
	clean, problems := Parse(text.NewFile("a.hcl", []byte(sound+soundEnd)))
	require.Empty(t, problems)
	want := clean.blocks[len(clean.blocks)-1]

	try := func(at int, edit, src string) {
		f := text.NewFile("a.hcl", []byte(src+soundEnd))
		s, problems := Parse(f)
		name := fmt.Sprintf("%s at %d:\n%s\n%v", edit, at, src, problems)
		require.LessOrEqual(t, len(problems), 2, name)
		if strings.Contains(src, "/*") || strings.HasPrefix(src, "[") {
			return // all that follows is a comment, or TOML
		}
		require.NotEmpty(t, s.blocks, name)
		got := s.blocks[len(s.blocks)-1]
		require.Equal(t, want.Label, got.Label, name)
		require.Len(t, got.Attrs, len(want.Attrs), name)
		near := len(problems) == 0
		for _, p := range problems {
			line, fault := f.Position(p.Start).Line, f.Position(int32(at)).Line
			near = near || line == fault || line == fault+1 || strings.HasSuffix(p.Message, "is not closed") ||
				p.Message == "} closes nothing"
		}
		require.True(t, near, name)
	}
	step := 1
	if testing.Short() {
		step = 5
	}
	for i := 0; i < len(sound); i += step {
		try(i, "left out", sound[:i]+sound[i+1:])
		for _, c := range "{}[]()\"'`,=\n#/*$%x7_.-:;!?<\\" {
			try(i, fmt.Sprintf("%q put in", c), sound[:i]+string(c)+sound[i:])
		}
	}
}

// Faults in some of many blocks are all told, and all other blocks read as if
// there were none.
func TestFaultsAmongMany(t *testing.T) {
	lines := strings.SplitAfter(string(generated(300)), "\n")
	clean, problems := Parse(text.NewFile("a.hcl", []byte(strings.Join(lines, ""))))
	require.Empty(t, problems)
	var want []string
	faults := 0
	for i, line := range lines {
		if i%37 != 0 || !strings.Contains(line, " = ") {
			continue
		}
		fault := []string{"x = !", "x = [1", "x = \"a", "x = max(1)", "x = 1 = 2", "= 3", "x"}[faults%7]
		lines[i] = "  " + fault + "\n"
		want = append(want, fmt.Sprint(i+1))
		faults++
	}
	require.Greater(t, faults, 20)
	f := text.NewFile("a.hcl", []byte(strings.Join(lines, "")))
	broken, problems := Parse(f)
	var got []string
	wrong := map[int]bool{}
	for _, p := range problems {
		line := f.Position(p.Start).Line
		got = append(got, fmt.Sprint(line))
		wrong[line] = true
	}
	assert.Equal(t, want, got, "the lines at which something is told")
	require.Len(t, broken.blocks, len(clean.blocks))
	for i, b := range broken.blocks {
		first, last := f.Position(b.At.Start).Line, f.Position(b.At.End).Line
		sound := true
		for line := first; line <= last; line++ {
			sound = sound && !wrong[line]
		}
		if sound {
			assert.Equal(t, clean.blocks[i].moved(b.At.Start-clean.blocks[i].At.Start), b)
		}
		assert.Equal(t, clean.blocks[i].Label, b.Label)
	}
}

// Two files of a design each tell their own.
func TestFaultsOfSeveralFiles(t *testing.T) {
	a := text.NewFile("a.hcl", []byte("given {\n  m = 1 / 0\n}\n"))
	b := text.NewFile("b.hcl", []byte("wheel \"a\" {\n  module = given.m + given.x\n}\n"))
	sa, pa := Parse(a)
	sb, pb := Parse(b)
	require.Empty(t, append(pa, pb...))
	_, problems := Evaluate([]*Source{sa, sb})
	require.Len(t, problems, 2)
	assert.Equal(t, a, problems[0].File)
	assert.Equal(t, b, problems[1].File)
}
