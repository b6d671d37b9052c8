package cutting_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
	"wheelwork/rules/cutting"
	"wheelwork/spec"
)

func listOf(t *testing.T, text string) *cutting.List {
	t.Helper()
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	return cutting.Of(rules.NewFacts(d))
}

func load(t *testing.T, name string) *cutting.List {
	t.Helper()
	d, problems := spec.Load("../../fixtures/designs/" + name)
	require.Empty(t, problems)
	return cutting.Of(rules.NewFacts(d))
}

const printed = `
design { title = "Printed examples" }
dividing {
  ratio   = 40
  circles = [18, 21, 23, 27, 51]
}
stock { cutters = ["involute 3 12-13"] }
arbor "a" { diameter = 6 }
arbor "b" {}
wheel "standard" {
  on     = "a"
  teeth  = 12
  module = 3
}
wheel "mate" {
  on     = "b"
  teeth  = 24
  module = 3
  bore   = 10
}
wheel "six" {
  on    = "a"
  teeth = 6
}
wheel "forty_two" {
  on     = "a"
  teeth  = 42
  module = 1
}
wheel "prime" {
  on     = "a"
  teeth  = 127
  module = 1
}
wheel "ring" {
  on     = "b"
  teeth  = 24
  kind   = "ring"
  module = 3
  shift  = 0.5
}
wheel "ring_pinion" {
  on     = "a"
  teeth  = 16
  module = 3
}
mesh { wheels = ["ring_pinion", "ring"] }
wheel "great" {
  on     = "a"
  teeth  = 80
  form   = "cycloidal"
  module = 0.5
}
wheel "leaves" {
  on     = "b"
  teeth  = 10
  form   = "cycloidal"
  module = 0.5
}
mesh { wheels = ["great", "leaves"] }
sprocket "s17" {
  on    = "a"
  teeth = 17
}
sprocket "s34" {
  on    = "b"
  teeth = 34
}
chain {
  sprockets = ["s17", "s34"]
  size      = "08B"
  links     = 87
}
`

func TestPrintedExamples(t *testing.T) {
	l := listOf(t, printed)
	w := map[string]cutting.Wheel{}
	for _, one := range l.Wheels {
		w[one.Name] = one
	}

	// SDP/SI D785 Table 4-1 (from memory): module 3, 12 and 24 teeth, tips 42 and
	// 78, roots 28.5 and 64.5.
	assert.InDelta(t, 42, w["standard"].Blank, 1e-9)
	assert.InDelta(t, (42-28.5)/2, w["standard"].Depth, 1e-9)
	assert.InDelta(t, 78, w["mate"].Blank, 1e-9)

	assert.Equal(t, 6.0, w["standard"].Bore, "its arbor's diameter")
	assert.Equal(t, 10.0, w["mate"].Bore)
	assert.Zero(t, w["ring"].Bore)

	// SDP/SI D785 Table 5-1 (from memory): ring of 24, shift 0.5, tip 69, root 82.5.
	assert.InDelta(t, 69, w["ring"].Blank, 1e-9)
	assert.InDelta(t, 82.5, w["ring"].Outside, 1e-9)
	assert.InDelta(t, (82.5-69)/2, w["ring"].Depth, 1e-9)
	assert.False(t, w["ring"].ByCutter)

	// 80 and 10 at module 0.5, da 41.6068 and 5.525, df 38.4292 and 2.9932
	// (computed from the formula).
	assert.InDelta(t, 41.6068, w["great"].Blank, 5e-5)
	assert.InDelta(t, (41.6068-38.4292)/2, w["great"].Depth, 5e-5)
	assert.InDelta(t, 5.525, w["leaves"].Blank, 5e-5)
	assert.InDelta(t, (5.525-2.9932)/2, w["leaves"].Depth, 5e-5)

	// OD1644: 6 teeth at 40 to 1 are 6 turns and 12 holes of 18, 42 teeth 20 of 21.
	assert.Equal(t, "6 turns and 12 holes in the 18 circle", indexing(w["six"]))
	assert.Equal(t, "20 holes in the 21 circle", indexing(w["forty_two"]))
	assert.Equal(t, "", indexing(w["prime"]))
	assert.Contains(t, w["prime"].Note, "cannot index 127")

	// Rose, Modern Machine-Shop Practice: number 8 for 12 and 13 teeth, 5 for 21 to
	// 25, 3 for 35 to 54, 2 for 55 to 134. The letters S and A are from memory.
	assert.Equal(t, "8 (metric 1)", w["standard"].Number)
	assert.True(t, w["standard"].AtHand)
	assert.Equal(t, "involute 3 12-13", w["standard"].Cutter)
	assert.Equal(t, "5 (metric 4)", w["mate"].Number)
	assert.Equal(t, "involute 3 21-25", w["mate"].Cutter)
	assert.False(t, w["mate"].AtHand)
	assert.Equal(t, "3 (metric 6)", w["forty_two"].Number)
	assert.Equal(t, "2 (metric 7)", w["prime"].Number)
	assert.Empty(t, w["six"].Cutter, "no module")

	// 08B, 17 teeth: d 69.116, tips to 76.481, root 60.606 (computed from the
	// formula); the width is 0.93 of 7.75 (Tandwiel).
	require.Len(t, l.Sprockets, 2)
	s := l.Sprockets[0]
	assert.InDelta(t, 69.116, s.Diameter, 5e-4)
	assert.InDelta(t, 72.111, s.Least, 5e-4)
	assert.InDelta(t, 76.481, s.Outside, 5e-4)
	assert.Equal(t, 6.0, s.Bore)
	assert.Equal(t, "2 turns and 18 holes in the 51 circle", s.Indexing())
	assert.Equal(t, "1 turn and 9 holes in the 51 circle", l.Sprockets[1].Indexing())
	assert.InDelta(t, 60.606, s.Root, 5e-4)
	assert.InDelta(t, 0.93*7.75, s.Width, 1e-9)
	require.Len(t, l.Chains, 1)
	assert.InDelta(t, 87*12.7, l.Chains[0].Length, 1e-9)
	assert.Contains(t, l.Chains[0].Note, "offset link")
}

func indexing(w cutting.Wheel) string { return w.Indexing() }

// The totals are the sums of the lists, whatever the design.
func TestTotalsAddUp(t *testing.T) {
	for _, l := range []*cutting.List{listOf(t, printed), load(t, "harbour-table/table.hcl"), load(t, "planet-wall/wall.hcl"), listOf(t, `design { title = "Nothing" }`)} {
		wheels, blanks := 0, 0
		teeth, cut := int64(0), int64(0)
		for _, c := range l.Cutters {
			wheels += c.Wheels
			cut += c.Teeth
		}
		for _, s := range l.Stock {
			blanks += s.Blanks
			assert.LessOrEqual(t, s.Least, s.Most)
		}
		for _, w := range l.Wheels {
			if w.Kind != "worm" {
				teeth += w.Teeth
			}
		}
		assert.Equal(t, len(l.Wheels), wheels)
		assert.Equal(t, len(l.Wheels), blanks)
		assert.Equal(t, teeth, cut)
		links, strands := int64(0), 0
		for _, s := range l.Strands {
			links += s.Links
			strands += s.Strands
		}
		for _, c := range l.Chains {
			links -= c.Links
		}
		assert.Zero(t, links)
		assert.Equal(t, len(l.Chains), strands)
	}
}

// Everything of the harbour table can be cut from what its workshop has, and its
// list is the same in both notations.
func TestHarbourTableCanBeCut(t *testing.T) {
	l := load(t, "harbour-table/table.hcl")
	for _, w := range l.Wheels {
		assert.NotZero(t, w.Blank, w.Name)
		assert.NotZero(t, w.Depth, w.Name)
		assert.NotEmpty(t, w.Material, w.Name)
		assert.True(t, w.AtHand || !w.ByCutter, w.Name)
		assert.True(t, w.Indexed || w.Kind == "worm", w.Name)
	}
	assert.Equal(t, l, load(t, "harbour-table-toml/table.toml"))
}

// Crown wheels and worms, and what the spec leaves open.
func TestWhatFollowsFromAMesh(t *testing.T) {
	l := listOf(t, `
design { title = "Crossed axes" }
arbor "a" {}
arbor "b" {
  tilt = 90
}
wheel "pinion" {
  on     = "b"
  teeth  = 8
  module = 0.5
}
wheel "contrate" {
  on     = "a"
  teeth  = 48
  kind   = "crown"
  module = 0.5
}
mesh {
  wheels = ["contrate", "pinion"]
  sense  = "same"
}
wheel "lone" {
  on     = "a"
  teeth  = 30
  kind   = "bevel"
  module = 0.5
}
wheel "worm" {
  on     = "a"
  teeth  = 2
  kind   = "worm"
  module = 3
  helix  = 82.23483
}
wheel "worm_wheel" {
  on     = "b"
  teeth  = 30
  module = 3
  helix  = 7.76517
}
mesh {
  wheels = ["worm", "worm_wheel"]
  sense  = "same"
}
`)
	crown, lone, worm := l.Wheels[1], l.Wheels[2], l.Wheels[3]
	// The face ends one module outside the pitch radius at most (common practice).
	assert.Greater(t, crown.Blank, 24.0)
	assert.LessOrEqual(t, crown.Blank, 25.0)
	assert.InDelta(t, 2.25*0.5, crown.Depth, 1e-9)
	assert.Zero(t, lone.Blank)
	assert.Contains(t, lone.Note, "follows from a mesh")
	// SDP/SI Table 9-3 (from memory): axial module 3, 2 starts, d1 44, lead 18.8496
	// at 7.76517 degrees.
	assert.Contains(t, worm.Note, "2 starts")
	assert.Contains(t, worm.Note, "lead 18.85 mm at 7.765 deg")
	assert.InDelta(t, 50, worm.Blank, 1e-3)
	assert.Contains(t, l.Wheels[4].Note, "hob")
	assert.Contains(t, l.Notes[len(l.Notes)-1], "no dividing head")
}

// No list goes without its cautions.
func TestCautions(t *testing.T) {
	for _, l := range []*cutting.List{listOf(t, printed), listOf(t, `design { title = "Nothing" }`)} {
		all := ""
		for _, c := range l.Cautions {
			all += c
		}
		for _, word := range []string{"eye protection", "Clamps", "swarf", "Chains", "Mains", "Lamps", "young children", "Local rules", "licensed", "does not certify"} {
			assert.Contains(t, all, word)
		}
	}
}
