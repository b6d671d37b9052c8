package rules_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"wheelwork/rules"
)

// blocks writes parts for layouts.
type blocks struct{ strings.Builder }

func (b *blocks) post(name, carrier string, x, y, from, to float64) {
	fmt.Fprintf(b, "arbor %q {\n  carried_by = %q\n  at = [%v, %v]\n  diameter = 3\n  from = %v\n  to = %v\n}\n", name, carrier, x, y, from, to)
}

func (b *blocks) wheel(name, on string, teeth int, z float64) {
	fmt.Fprintf(b, "wheel %q {\n  on = %q\n  teeth = %d\n  module = 0.5\n  z = %v\n  face = 2\n}\n", name, on, teeth, z)
}

// train is posts in a row, each with two wheels that mesh with those of its
// neighbours, a step higher each.
func (b *blocks) train(name, carrier string, posts int, x, y, z float64) {
	for i := range posts {
		on := fmt.Sprintf("%s_%d", name, i)
		up := z + 4*float64(i)
		b.post(on, carrier, x+27.54*float64(i), y, up-1, up+7)
		b.wheel(on+"_a", on, 90, up)
		b.wheel(on+"_b", on, 20, up+4)
		if i > 0 {
			last := fmt.Sprintf("%s_%d", name, i-1)
			fmt.Fprintf(b, "mesh { wheels = [%q, %q] }\n", last+"_b", on+"_a")
		}
	}
}

// layouts are designs of many wheels that all keep clear of each other.
var layouts = map[string]func(wheels int) string{
	// Trains side by side and one above the other.
	"frame": func(wheels int) string {
		b := begun()
		for i := range wheels / 10 {
			b.train(fmt.Sprintf("t%d", i), "frame", 5, float64(i/10%10)*200, float64(i/100)*60, 20+float64(i%10)*30)
		}
		return b.String()
	},
	// All of that on one arm, and a post beyond its reach.
	"arm": func(wheels int) string {
		b := begun()
		b.post("middle", "frame", 0, 0, 0, 10)
		b.WriteString("arm \"arm\" {\n  on = \"middle\"\n  reach = 5000\n  z = 2\n  face = 5\n}\n")
		for i := range wheels / 10 {
			b.train(fmt.Sprintf("t%d", i), "arm", 5, float64(i/10%10)*200+30, float64(i/100)*60, 20+float64(i%10)*30)
		}
		return b.String()
	},
	// A train of five posts on each of many arms, side by side.
	"arms": func(wheels int) string {
		b := begun()
		for i := range wheels / 10 {
			on, arm := fmt.Sprintf("m%d", i), fmt.Sprintf("arm%d", i)
			b.post(on, "frame", float64(i%50)*450, float64(i/50)*450, 0, 10)
			fmt.Fprintf(b, "arm %q {\n  on = %q\n  reach = 170\n  z = 2\n  face = 5\n}\n", arm, on)
			b.train(fmt.Sprintf("t%d", i), arm, 5, 30, 0, 20)
		}
		return b.String()
	},
	// Arms one above the other on one axis, over wheels on the frame.
	"stack": func(wheels int) string {
		b := begun()
		for i := range wheels / 20 {
			on, arm, z := fmt.Sprintf("m%d", i), fmt.Sprintf("arm%d", i), 35*float64(i)
			b.post(on, "frame", 0, 0, z+1, z+8)
			fmt.Fprintf(b, "arm %q {\n  on = %q\n  reach = 170\n  z = %v\n  face = 5\n}\n", arm, on, z+2)
			b.train(fmt.Sprintf("t%d", i), arm, 5, 30, 0, z+9)
			b.train(fmt.Sprintf("f%d", i), "frame", 5, 230, 0, z+9)
		}
		return b.String()
	},
}

func begun() *blocks {
	b := new(blocks)
	b.WriteString("design { title = \"x\" }\n")
	return b
}

func TestLayoutsKeepClear(t *testing.T) {
	for name, layout := range layouts {
		f := rules.NewFacts(loadText(t, "d.hcl", layout(400)))
		assert.Empty(t, rules.ComputeClashes(f, 0.2), name)
	}
}

// BenchmarkWheelClash measures how the search grows: the least time for 20,000
// wheels over that for 2,000, in turn. n log n is a ratio of 13.
func BenchmarkWheelClash(b *testing.B) {
	for name, layout := range layouts {
		b.Run(name, func(b *testing.B) {
			var facts [2]*rules.Facts
			for i, wheels := range [...]int{2000, 20_000} {
				facts[i] = rules.NewFacts(loadText(b, "d.hcl", layout(wheels)))
				rules.Gearings(facts[i])
			}
			var took [2][]time.Duration
			for b.Loop() {
				for i, f := range facts {
					start := time.Now()
					if n := len(rules.ComputeClashes(f, 0.2)); n > 0 {
						b.Fatal(n)
					}
					took[i] = append(took[i], time.Since(start))
				}
			}
			for _, list := range took {
				slices.Sort(list)
			}
			small, large := took[0][0], took[1][0]
			b.ReportMetric(float64(large)/float64(small), "ratio")
			b.ReportMetric(small.Seconds()*1000, "ms/2000")
			b.ReportMetric(large.Seconds()*1000, "ms/20000")
		})
	}
}
