package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"wheelwork/rules"
)

// train is a plain train of so many wheels, placed, with a hand on every tenth
// arbor.
func longTrain(tb testing.TB, wheels int) *rules.Facts {
	var s strings.Builder
	s.WriteString("design { title = \"long\" }\n")
	for i := range wheels / 2 {
		fmt.Fprintf(&s, "arbor \"a%d\" {\n  at = [%v, 0]\n}\nwheel \"p%d\" {\n  on = \"a%d\"\n  teeth = %d\n  module = 0.5\n}\nwheel \"w%d\" {\n  on = \"a%d\"\n  teeth = %d\n  module = 0.5\n}\n",
			i, 25.05*float64(i), i, i, 18+i%7, i, i, 82-(i+1)%7)
		if i > 0 {
			fmt.Fprintf(&s, "mesh {\n  wheels = [\"w%d\", \"p%d\"]\n}\n", i-1, i)
		}
		if i%10 == 0 {
			fmt.Fprintf(&s, "hand \"h%d\" {\n  on = \"a%d\"\n}\n", i, i)
		}
	}
	s.WriteString("drive \"d\" {\n  on = \"a0\"\n  speed = 1\n}\n")
	return rules.NewFacts(loadText(tb, "d.hcl", s.String()))
}

// BenchmarkRules times each rule of teeth on 2,000 wheels, the meshes as
// geometry apart.
func BenchmarkRules(b *testing.B) {
	f := longTrain(b, 2000)
	b.Run("gearings", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			rules.ComputeGearings(f)
		}
	})
	for _, r := range rules.All() {
		if r.Group != rules.Teeth {
			continue
		}
		b.Run(r.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				rules.RunOn(r, f)
			}
		})
	}
}
