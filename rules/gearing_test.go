package rules_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
)

// pair is a design of one mesh whose axes stand so far apart; 0 leaves the
// positions out.
func pair(distance float64, a, b, mesh string) string {
	at := [2]string{"", ""}
	if distance > 0 {
		at = [2]string{"at = [0, 0]", fmt.Sprintf("at = [%v, 0]", distance)}
	}
	return fmt.Sprintf(`
design { title = "x" }
arbor "a" {
  %s
}
arbor "b" {
  %s
}
wheel "a" {
  on = "a"
  %s
}
wheel "b" {
  on = "b"
  %s
}
mesh {
  wheels = ["a", "b"]
  %s
}
`, at[0], at[1], a, b, mesh)
}

// The printed figures of worked examples follow from what a spec says.
func TestMeasuresOfWorkedExamples(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		name, source string
		text         string
		want         rules.Measures // what is 0 is not compared
		digits       float64
	}{
		{"standard pair", "SDP/SI D785 Table 4-1 (from memory)",
			pair(54, "teeth = 12\nmodule = 3", "teeth = 24\nmodule = 3", ""),
			rules.Measures{Centre: 54, Wanted: 54, WorkingAngle: 20, Tip: [2]float64{42, 78}, Root: [2]float64{28.5, 64.5}, Diameter: [2]float64{36, 72}}, 5e-4},
		{"shifted pair", "SDP/SI D785 Table 4-4, KHK (from memory)",
			pair(0, "teeth = 12\nmodule = 3\nshift = 0.6", "teeth = 24\nmodule = 3\nshift = 0.36", ""),
			rules.Measures{Centre: nan, Wanted: 56.4999, WorkingAngle: 26.0886, ContactRatio: 1.202, Backlash: nan, Tip: [2]float64{44.840, 79.400}, Root: [2]float64{32.1, 66.66}}, 5e-4},
		{"ring pair, the ring first", "SDP/SI D785 Table 5-1, KHK (from memory)",
			pair(0, "teeth = 24\nkind = \"ring\"\nmodule = 3\nshift = 0.5", "teeth = 16\nmodule = 3", ""),
			rules.Measures{Wanted: 13.1683, WorkingAngle: 31.0937, Tip: [2]float64{69, 54}, Root: [2]float64{82.5, 40.5}}, 5e-4},
		{"inch pair", "Mott p. 320",
			pair(0, "teeth = 11\npitch = 12", "teeth = 18\npitch = 12", ""),
			rules.Measures{Wanted: 1.2083 * 25.4}, 5e-5 * 25.4},
		{"opened centres", "computed from the formula",
			pair(40.1, "teeth = 40\nmodule = 1", "teeth = 40\nmodule = 1", ""),
			rules.Measures{Centre: 40.1, Wanted: 40, WorkingAngle: 20.3889, Backlash: 0.07366}, 5e-5},
		{"play stated", "computed from the formula",
			pair(0, "teeth = 40\nmodule = 1", "teeth = 40\nmodule = 1", "backlash = 0.07366"),
			rules.Measures{Wanted: 40.1, Backlash: 0.07366}, 5e-5},
		{"clock pair, the pinion first", "computed from the formula",
			pair(0, "teeth = 10\nmodule = 0.5\nform = \"cycloidal\"", "teeth = 80\nmodule = 0.5\nform = \"cycloidal\"", ""),
			rules.Measures{Wanted: 22.5, ContactRatio: nan, Tip: [2]float64{5.525, 41.6068}, Root: [2]float64{2.9932, 38.4292}}, 5e-5},
		{"worm", "SDP/SI D785 Table 9-3 (from memory)",
			pair(67, "teeth = 2\nkind = \"worm\"\nmodule = 3", "teeth = 30\nmodule = 3", "sense = \"same\""),
			rules.Measures{Centre: 67, Wanted: 67, LeadAngle: 7.76517, Diameter: [2]float64{44, 90}}, 5e-6},
		{"worm by its helix", "SDP/SI D785 Table 9-3 (from memory)",
			pair(0, "teeth = 30\nmodule = 3", "teeth = 2\nkind = \"worm\"\nmodule = 3\nhelix = 82.23483", "sense = \"same\""),
			rules.Measures{Centre: nan, Wanted: 67, LeadAngle: 7.76517, Diameter: [2]float64{90, 44}}, 5e-5},
	} {
		t.Run(row.name, func(t *testing.T) {
			list := rules.Gearings(rules.NewFacts(loadText(t, "d.hcl", row.text)))
			require.Len(t, list, 1)
			g := list[0]
			require.Empty(t, g.Lacks)
			require.NoError(t, g.Fault)
			got := g.Measure()
			same := func(what string, want, got float64) {
				switch {
				case math.IsNaN(want):
					assert.True(t, math.IsNaN(got), "%s: %v", what, got)
				case want != 0:
					assert.InDelta(t, want, got, row.digits, "%s, %s", what, row.source)
				}
			}
			same("centre distance", row.want.Centre, got.Centre)
			same("wanted", row.want.Wanted, got.Wanted)
			same("working angle", row.want.WorkingAngle, got.WorkingAngle)
			same("contact ratio", row.want.ContactRatio, got.ContactRatio)
			same("backlash", row.want.Backlash, got.Backlash)
			same("lead angle", row.want.LeadAngle, got.LeadAngle)
			for i := range 2 {
				same("tip", row.want.Tip[i], got.Tip[i])
				same("root", row.want.Root[i], got.Root[i])
				same("reference", row.want.Diameter[i], got.Diameter[i])
			}
		})
	}
}

// Bevels at 90 deg: SDP/SI D785 Table 8-3 (from memory).
func TestConesOfTheWorkedExample(t *testing.T) {
	text := strings.Replace(pair(0, "teeth = 20\nkind = \"bevel\"\nmodule = 3", "teeth = 40\nkind = \"bevel\"\nmodule = 3", "sense = \"opposite\""),
		"arbor \"b\" {", "arbor \"b\" {\n  tilt = 90", 1)
	g := rules.Gearings(rules.NewFacts(loadText(t, "d.hcl", text)))[0]
	c, ok := g.Cones()
	require.True(t, ok)
	assert.InDelta(t, 26.56505, c.PinionAngle, 5e-6)
	assert.InDelta(t, 63.43495, c.WheelAngle, 5e-6)
	assert.InDelta(t, 67.08204, c.Distance, 5e-6)
	m := g.Measure()
	assert.InDelta(t, 65.3666, m.Tip[0], 5e-5, "d + 2 m cos(d1), computed from the formula")
}

// What cannot be computed says why, and nothing panics.
func TestGearingsThatCannotBe(t *testing.T) {
	for _, row := range []struct {
		name, text   string
		fault, lacks bool
	}{
		{"no module", pair(0, "teeth = 12", "teeth = 24\nmodule = 3", ""), false, true},
		{"two modules", pair(0, "teeth = 12\nmodule = 2", "teeth = 24\nmodule = 3", ""), true, false},
		{"two forms", pair(0, "teeth = 12\nmodule = 3\nform = \"cycloidal\"", "teeth = 24\nmodule = 3", ""), true, false},
		{"bevel on spur", pair(0, "teeth = 12\nmodule = 3\nkind = \"bevel\"", "teeth = 24\nmodule = 3", "sense = \"same\""), true, false},
		{"small ring", pair(0, "teeth = 12\nmodule = 3\nkind = \"ring\"", "teeth = 24\nmodule = 3", ""), true, false},
		{"helices of one hand", pair(0, "teeth = 12\nmodule = 3\nhelix = 15", "teeth = 24\nmodule = 3\nhelix = 15", ""), true, false},
		{"helices of both hands", pair(0, "teeth = 12\nmodule = 3\nhelix = 15", "teeth = 24\nmodule = 3\nhelix = 15\nhand = \"left\"", ""), false, false},
		{"cycloidal in a ring", pair(0, "teeth = 12\nmodule = 3\nform = \"cycloidal\"", "teeth = 24\nmodule = 3\nform = \"cycloidal\"\nkind = \"ring\"", ""), false, true},
		{"absurd shift", pair(0, "teeth = 12\nmodule = 3\nshift = -9", "teeth = 24\nmodule = 3", ""), true, false},
		{"far apart", pair(400, "teeth = 12\nmodule = 3", "teeth = 24\nmodule = 3", ""), false, false},
		{"one in the other", pair(1, "teeth = 12\nmodule = 3", "teeth = 24\nmodule = 3", ""), false, false},
	} {
		t.Run(row.name, func(t *testing.T) {
			f := rules.NewFacts(loadText(t, "d.hcl", row.text))
			g := rules.Gearings(f)[0]
			assert.Equal(t, row.fault, g.Fault != nil, "%v", g.Fault)
			assert.Equal(t, row.lacks, g.Lacks != "", g.Lacks)
			g.Measure()
			for _, w := range f.Design.Wheels {
				rules.SizeOf(f, w)
			}
		})
	}
}
