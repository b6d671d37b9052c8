package cutting_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
	"wheelwork/rules/cutting"
	"wheelwork/spec"
)

func list(t *testing.T, text string) cutting.List {
	t.Helper()
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	return cutting.Of(rules.NewFacts(d))
}

const head = `
dividing {
  ratio   = 40
  circles = [15, 16, 17, 18, 19, 20, 21, 23, 27, 29, 31, 33, 37, 39, 41, 43, 47, 49]
}
stock { cutters = ["involute 3 12-13"] }
`

// Diameters of a standard pair of module 3, 12 and 24 teeth: 42 and 78 across,
// roots 28.5 and 64.5 (SDP/SI D785 Table 4-1, from memory), so 6.75 deep.
// Indexing at 40 to 1 (OD1644): 42 teeth by 20 holes in the 21 circle.
func TestWheels(t *testing.T) {
	l := list(t, `design { title = "Pair" }`+head+`
arbor "a" { diameter = 6 }
arbor "b" {}
wheel "pinion" {
  on       = "a"
  teeth    = 12
  module   = 3
  face     = 8
  material = "steel"
}
wheel "great" {
  on       = "b"
  teeth    = 24
  module   = 3
  face     = 8
  bore     = 10
  material = "steel"
}
wheel "divided" {
  on     = "b"
  teeth  = 42
  module = 3
}
wheel "prime" {
  on     = "b"
  teeth  = 127
  module = 3
}
wheel "bare" {
  on    = "b"
  teeth = 30
}
mesh { wheels = ["pinion", "great"] }
`)
	w := map[string]cutting.Wheel{}
	for _, one := range l.Wheels {
		w[one.Name] = one
	}
	assert.InDelta(t, 42, w["pinion"].Blank, 1e-9)
	assert.InDelta(t, 78, w["great"].Blank, 1e-9)
	assert.InDelta(t, 6.75, w["pinion"].Depth, 1e-9)
	assert.InDelta(t, 6.75, w["great"].Depth, 1e-9)
	assert.Equal(t, 6.0, w["pinion"].Bore, "its arbor's diameter")
	assert.Equal(t, 10.0, w["great"].Bore)
	assert.Equal(t, "involute 3, 12-13 teeth", w["pinion"].Cutter)
	assert.True(t, w["pinion"].AtHand)
	// Brown & Sharpe's cutter 5 is for 21 to 25 teeth (Rose, Modern
	// Machine-Shop Practice).
	assert.Equal(t, "involute 3, 21-25 teeth", w["great"].Cutter)
	assert.False(t, w["great"].AtHand)
	assert.Equal(t, "20 holes in the 21 circle", w["divided"].Indexing)
	assert.Empty(t, w["prime"].Indexing, "40/127 wants a circle of 127 (SCHSM)")
	assert.Contains(t, w["prime"].Remark, "does not index")
	assert.True(t, math.IsNaN(w["bare"].Blank), "nothing is guessed")
	assert.True(t, math.IsNaN(w["bare"].Module))

	require.Len(t, l.Stock, 1)
	assert.Equal(t, cutting.Stock{Material: "steel", Face: 8, Blanks: 2, Largest: w["great"].Blank}, l.Stock[0])
	gaps := int64(0)
	for _, c := range l.Cutters {
		gaps += c.Gaps
	}
	assert.Equal(t, int64(12+24+42+127), gaps, "each wheel with a module is cut once")
}

// A sprocket of 17 teeth for 08B: 69.116 across the pins, 60.606 at the root,
// 72.111 to 76.481 outside (computed from the formulas of ISO 606).
func TestChains(t *testing.T) {
	l := list(t, `design { title = "Chain" }`+head+`
arbor "a" { diameter = 10 }
arbor "b" {}
sprocket "small" {
  on    = "a"
  teeth = 17
}
sprocket "large" {
  on    = "b"
  teeth = 34
}
chain {
  sprockets = ["small", "large"]
  size      = "08B"
  links     = 86
}
`)
	require.Len(t, l.Chains, 1)
	c := l.Chains[0]
	assert.Equal(t, int64(86), c.Links)
	assert.InDelta(t, 86*12.7, c.Length, 1e-9)
	assert.Equal(t, []string{"small", "large"}, c.Sprockets)
	require.Len(t, l.Sprockets, 2)
	s := l.Sprockets[0]
	assert.InDelta(t, 69.116, s.Reference, 5e-4)
	assert.InDelta(t, 60.606, s.Root, 5e-4)
	assert.InDelta(t, 72.111, s.TipLeast, 5e-4)
	assert.InDelta(t, 76.481, s.TipMost, 5e-4)
	assert.Equal(t, 10.0, s.Bore)
	assert.Equal(t, "2 turns and 6 holes in the 17 circle", s.Indexing)
}

func TestCautionsAreThere(t *testing.T) {
	all := ""
	for _, c := range cutting.Cautions {
		all += c
	}
	for _, word := range []string{"eye protection", "pinch", "Mains", "lamp", "children", "local rules", "certifies no safety"} {
		assert.Contains(t, all, word)
	}
}
