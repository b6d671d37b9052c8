package tomlread

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/text"
)

// Statements that are decoded apart can be at odds with each other where the
// whole is valid: the header [mesh.x] belongs to the [[mesh]] before it, and
// without that makes mesh a table.
func TestDecodedApart(t *testing.T) {
	src := strings.Repeat("[[mesh]]\nname = \"a name\"\n[mesh.x]\ny = 1\n", 3000)
	tree, problems := parse(src)
	require.Empty(t, problems)
	require.Len(t, tree.Blocks, 3000)
	_, problems = parse(src + "epoch = 2027-13-01\n")
	require.Len(t, problems, 1)
	assert.Equal(t, int32(len(src)+len("epoch = ")), problems[0].Start)
}

// Every value that does not exist is told, wherever it stands.
func TestFaultsOfManyJobs(t *testing.T) {
	var src strings.Builder
	var want []int32
	for i := range 2000 {
		fmt.Fprintf(&src, "[hand.h%d]\nperiod = \"29.530589 d\"\nwithin = \"30 ppm\"\n", i)
		if i%40 == 7 {
			src.WriteString("epoch = ")
			want = append(want, int32(src.Len()))
			src.WriteString("2027-02-30\n")
		}
	}
	_, problems := parse(src.String())
	var got []int32
	for _, p := range problems {
		got = append(got, p.Start)
	}
	assert.Equal(t, want, got)
}

// A Reader has decoded only what changed, and tells of it what a new one does.
func TestReaderRemembers(t *testing.T) {
	src := manyWheels(300)
	at := strings.Index(src, "[wheel.w150]")
	var m Reader
	read := func(src string) []text.Problem {
		tree, problems := m.Parse(text.NewFile("t.toml", []byte(src)), forms)
		want, wantProblems := Parse(text.NewFile("t.toml", []byte(src)), forms)
		require.Equal(t, show(want.Blocks), show(tree.Blocks))
		require.Equal(t, len(wantProblems), len(problems))
		return problems
	}
	require.Empty(t, read(src))
	decoded := 0
	in := at + len("[wheel.w150")
	known := m.knows(src[:in] + "x" + src[in:])
	for i, start := range m.starts {
		end := int32(len(src))
		if i+1 < len(m.starts) {
			end = m.starts[i+1]
		}
		if start > int32(in) { // all that follows moves on by one byte
			start++
		}
		if end > int32(in) {
			end++
		}
		if !known(start, end) {
			decoded++
		}
	}
	require.Equal(t, 1, decoded)

	require.NotEmpty(t, read(src[:at]+"epoch = 2027-02-30\n"+src[at:]))
	require.NotEmpty(t, read(src[:at]+"a = \"\"\"\n"+src[at:]))
	require.NotEmpty(t, read(src[:len(src)-1]+"\ndate = 2027-02-3"))
	require.Empty(t, read(src[:at]+"\n"+src[at:]))
	require.Empty(t, read(src+"[design.x]\ndate = 2027-02-03"))
	require.NotEmpty(t, read(src+"[design.x]\ndate = 2027-02-0")) // less of what was valid
	require.Empty(t, read(src))
}
