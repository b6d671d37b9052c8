package rules_test

import (
	"fmt"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
)

const (
	wormAxes  = "\n  tilt = 90\n  toward = 90"
	bevelAxes = "\n  tilt = 90"
)

// leaning is a pair whose second axis leans.
func leaning(text, axes string) string {
	at := strings.Index(text, `arbor "b" {`) + len(`arbor "b" {`)
	return text[:at] + axes + text[at:]
}

// Sound worked examples stay without error or warning; those that their own
// source, or the formula, says are not sound are told exactly that.
func TestWorkedExamplesStayQuiet(t *testing.T) {
	cycloidal := func(n int, m float64) string {
		return fmt.Sprintf("teeth = %d\nmodule = %v\nform = \"cycloidal\"", n, m)
	}
	involute := func(n int, m float64) string { return fmt.Sprintf("teeth = %d\nmodule = %v", n, m) }
	ring := func(n int, m, shift float64) string {
		return involute(n, m) + fmt.Sprintf("\nkind = \"ring\"\nshift = %v", shift)
	}
	bevel := func(n int, face float64) string {
		return involute(n, 3) + fmt.Sprintf("\nkind = \"bevel\"\nface = %v", face)
	}
	for _, row := range []struct {
		name, source, text string
		want               []string
	}{
		{"shifted pair", "SDP/SI D785 Table 4-4, KHK (from memory)",
			pair(56.5, involute(12, 3)+"\nshift = 0.6", involute(24, 3)+"\nshift = 0.36", ""), nil},
		{"teeth from centre and ratio", "SDP/SI D785 Table 4-2",
			pair(54, involute(16, 3), involute(20, 3), ""), nil},
		{"opened centres, before opening", "Shigley Ex 13-1 (from memory)",
			pair(355.6, "teeth = 16\npitch = 2", "teeth = 40\npitch = 2", ""), nil},
		{"16 with 44", "contact ratio 1.6152, computed from the formula",
			pair(60, involute(16, 2), involute(44, 2), ""), nil},
		{"7.5:1 train of clock wheels", "computed from the geometry of radial flanks",
			pair(22.5, cycloidal(80, 0.5), cycloidal(10, 0.5), ""), nil},
		{"8 leaves", "computed from the geometry of radial flanks", pair(14.4, cycloidal(64, 0.4), cycloidal(8, 0.4), ""), nil},
		{"6 leaves", "computed from the geometry of radial flanks", pair(11.7, cycloidal(72, 0.3), cycloidal(6, 0.3), ""), nil},
		{"bevels", "SDP/SI D785 Table 8-3 (from memory)",
			leaning(pair(10, bevel(20, 22), bevel(40, 22), "sense = \"opposite\""), bevelAxes), nil},
		{"worm", "SDP/SI D785 Table 9-3 (from memory)",
			leaning(pair(67, involute(2, 3)+"\nkind = \"worm\"", involute(30, 3), "sense = \"same\""), wormAxes), nil},
		{"contrate", "computed from the rack that the wheel is at each radius",
			leaning(pair(10, involute(18, 0.5), involute(48, 0.5)+"\nkind = \"crown\"", "sense = \"same\""), bevelAxes), nil},
		{"ring of small difference", "SDP/SI D785 Table 5-4", pair(1.354, involute(48, 1), ring(50, 1, 0.6), ""), nil},
		{"ring of five more", "SDP/SI D785 Table 5-4", pair(2.666, involute(45, 1), ring(50, 1, 0.2), ""), nil},
		{"ring of Table 5-1, narrowly failing its own test by 0.0014", "SDP/SI D785 Table 5-1 (from memory)",
			pair(13.168, involute(16, 3), ring(24, 3, 0.5), ""), nil},

		{"standard pair of 12 teeth", "SDP/SI D785 Table 4-1; its eq 4-1 asks for 18 teeth, Shigley's limit for the ratio is 15 (from memory)",
			pair(54, involute(12, 3), involute(24, 3), ""), []string{"tip-interference error", "undercut warning"}},
		{"13 with 50", "Shigley section 13-7: at most 16 (from memory)",
			pair(31.5, involute(13, 1), involute(50, 1), ""), []string{"tip-interference error", "undercut warning"}},
		{"ring of one more", "SDP/SI D785 Table 5-4 prints a contact ratio of 1.105, below its least of 1.2",
			pair(0.971, involute(49, 1), ring(50, 1, 1), ""), []string{"contact-ratio warning"}},
		{"opened centres, after opening", "Shigley Ex 13-1 (from memory) opens them by half a module",
			pair(361.95, "teeth = 16\npitch = 2", "teeth = 40\npitch = 2", ""), []string{"backlash warning", "centre-distance warning", "contact-ratio warning"}},
	} {
		t.Run(row.name, func(t *testing.T) { assert.Equal(t, row.want, grave(t, row.text), row.source) })
	}
	t.Run("planetary set of 16, 16 and 48", func(t *testing.T) {
		// Ordinary in handbooks (SDP/SI D785 T-117), though the ring's tips scrape.
		got := grave(t, rules.Named("planets-assemble").Keeps())
		for _, f := range got {
			assert.Equal(t, "ring-interference warning", f)
		}
		assert.Len(t, got, 4, "one for each planet")
	})
}

// grave lists the errors and warnings about teeth.
func grave(t *testing.T, text string) []string {
	t.Helper()
	result, problems := rules.Check(loadText(t, "d.hcl", text))
	require.Empty(t, problems)
	var list []string
	for _, f := range result.Findings {
		if f.Rule.Group == rules.Teeth && f.Severity >= rules.Warning {
			list = append(list, f.Rule.Name+" "+f.Severity.String())
		}
	}
	sort.Strings(list)
	return list
}
