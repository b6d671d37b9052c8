package rules_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
)

// oddities are values that a wheel may be given, sound and unsound.
var oddities = map[string][]string{
	"kind":           {`"spur"`, `"ring"`, `"bevel"`, `"crown"`, `"worm"`},
	"form":           {`"involute"`, `"cycloidal"`},
	"module":         {"1", "0.5", "48", "0.5292", "1e-6", "5000"},
	"pitch":          {"48", "25.4", "1e-5"},
	"pressure_angle": {"14.5", "20", "1e-9", "44.9", "90", "400"},
	"shift":          {"0.3", "-0.3", "5", "-9", "40"},
	"addendum":       {"0.8", "1e-9", "4", "100"},
	"dedendum":       {"1.25", "1e-9", "4", "100"},
	"helix":          {"0", "15", "45", "59", "85.4", "89.999", "90", "1000"},
	"hand":           {`"left"`, `"right"`},
	"face":           {"3", "1e-9", "1e9"},
	"z":              {"0", "-5", "2"},
}

// Whatever a spec says of its wheels, no rule panics, no figure is infinite and
// what is measured is what the rules judged.
func TestOddWheelsDoNoHarm(t *testing.T) {
	keys := []string{"kind", "form", "module", "pitch", "pressure_angle", "shift", "addendum", "dedendum", "helix", "hand", "face", "z"}
	found := map[string]bool{}
	for seed := range uint64(12) {
		rng := rand.New(rand.NewPCG(seed, 3))
		pick := func(list []string) string { return list[rng.IntN(len(list))] }
		var s strings.Builder
		s.WriteString("design { title = \"odd\" }\narbor \"pivot\" { at = [0, 0] }\narm \"arm\" { on = \"pivot\" }\n")
		const arbors, wheels, meshes = 30, 90, 120
		on := make([]int, wheels)
		for i := range arbors {
			fmt.Fprintf(&s, "arbor \"a%d\" {\n", i)
			if rng.IntN(4) == 0 {
				s.WriteString("  carried_by = \"arm\"\n")
			}
			if rng.IntN(3) > 0 {
				fmt.Fprintf(&s, "  at = [%s, %s]\n", pick([]string{"0", "0", "16", "27.5", "1e7"}), pick([]string{"0", "0", "-8", "1e-9"}))
			}
			if rng.IntN(4) == 0 {
				fmt.Fprintf(&s, "  tilt = %s\n", pick([]string{"90", "60", "0", "180", "1e5"}))
			}
			s.WriteString("}\n")
		}
		for i := range wheels {
			on[i] = rng.IntN(arbors)
			fmt.Fprintf(&s, "wheel \"w%d\" {\n  on = \"a%d\"\n  teeth = %s\n", i, on[i], pick([]string{"3", "8", "12", "16", "17", "48", "1000000"}))
			given := map[string]bool{}
			for range rng.IntN(6) {
				if k := pick(keys); !given[k] && !(k == "pitch" && given["module"]) && !(k == "module" && given["pitch"]) {
					given[k] = true
					fmt.Fprintf(&s, "  %s = %s\n", k, pick(oddities[k]))
				}
			}
			if !given["module"] && !given["pitch"] && rng.IntN(3) > 0 {
				s.WriteString("  module = 1\n")
			}
			s.WriteString("}\n")
		}
		text := s.String()
		ring := func(i int) bool {
			block := text[strings.Index(text, fmt.Sprintf("wheel \"w%d\" {", i)):]
			return strings.Contains(block[:strings.Index(block, "}")], `"ring"`)
		}
		crossed := func(i int) bool {
			block := text[strings.Index(text, fmt.Sprintf("wheel \"w%d\" {", i)):]
			block = block[:strings.Index(block, "}")]
			return strings.Contains(block, `"bevel"`) || strings.Contains(block, `"crown"`) || strings.Contains(block, `"worm"`)
		}
		for range meshes {
			a, b := rng.IntN(wheels), rng.IntN(wheels)
			if on[a] == on[b] || ring(a) && ring(b) {
				continue
			}
			fmt.Fprintf(&s, "mesh {\n  wheels = [\"w%d\", \"w%d\"]\n", a, b)
			if crossed(a) || crossed(b) {
				fmt.Fprintf(&s, "  sense = %s\n", pick([]string{`"same"`, `"opposite"`}))
			}
			if rng.IntN(4) == 0 {
				fmt.Fprintf(&s, "  backlash = %s\n", pick([]string{"0", "0.05", "1e9"}))
			}
			s.WriteString("}\n")
		}
		fmt.Fprintf(&s, "drive \"d\" {\n  on = \"a0\"\n  speed = 1\n}\n")
		for i := range 5 {
			fmt.Fprintf(&s, "hand \"h%d\" {\n  on = \"a%d\"\n  within = \"0.1 deg in 1 yr\"\n  period = \"3 d\"\n}\n", i, i+1)
		}
		f := rules.NewFacts(loadText(t, "d.hcl", s.String()))
		result, problems := rules.CheckFacts(f)
		require.Empty(t, problems)
		for _, x := range result.Findings {
			found[x.Rule.Name] = true
			assert.NotContains(t, x.Message, "NaN")
			assert.NotContains(t, x.Message, "Inf")
		}
		for _, g := range rules.Gearings(f) {
			m := g.Measure()
			for _, v := range append([]float64{m.Centre, m.Wanted, m.WorkingAngle, m.ContactRatio, m.Backlash, m.LeadAngle, m.ConeDistance}, m.Tip[0], m.Tip[1], m.Root[0], m.Root[1]) {
				assert.False(t, math.IsInf(v, 0), "mesh %s", g.Mesh.Label())
			}
			if g.HasFit {
				assert.NoError(t, g.Fault)
				assert.Empty(t, g.Lacks)
			}
		}
	}
	for _, name := range []string{"unequal-form", "undercut", "tip-interference", "ring-interference", "contact-ratio", "pointed-tip", "bevel-cone", "centre-distance", "few-leaves", "odd-module"} {
		assert.True(t, found[name], "%s never found anything", name)
	}
}
