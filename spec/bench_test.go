package spec

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"wheelwork/spec/hclread"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// many is a design of n wheels with positions and levels, in either notation.
func many(notation string, n int) string {
	var s strings.Builder
	block := func(kind, label string, attributes ...string) {
		if notation == "toml" {
			switch {
			case label != "":
				fmt.Fprintf(&s, "[%s.%s]\n", kind, label)
			case kind == "mesh":
				s.WriteString("[[mesh]]\n")
			default:
				fmt.Fprintf(&s, "[%s]\n", kind)
			}
			s.WriteString(strings.Join(attributes, "\n") + "\n")
			return
		}
		s.WriteString(kind)
		if label != "" {
			fmt.Fprintf(&s, " %q", label)
		}
		s.WriteString(" {\n  " + strings.Join(attributes, "\n  ") + "\n}\n")
	}
	block("design", "", `title = "many wheels"`, `epoch = "2027-01-01"`)
	for i := range n {
		block("arbor", fmt.Sprintf("arbor_%d", i), fmt.Sprintf("at = [%d.5, 0]", 12*i), "diameter = 3", "from = 4", "to = 45.5")
		block("wheel", fmt.Sprintf("wheel_%d", i), fmt.Sprintf("on = \"arbor_%d\"", i), fmt.Sprintf("teeth = %d", 30+i%70),
			"module = 0.5", "z = 8.5", "face = 2", "bore = 3", `material = "brass"`)
		if i > 0 {
			block("mesh", "", fmt.Sprintf("wheels = [\"wheel_%d\", \"wheel_%d\"]", i-1, i), `train = "long"`)
		}
	}
	return s.String()
}

// BenchmarkLoad is a whole load. It also reports how many times as long it
// takes as the reader of its notation alone, each at its best, side by side.
func BenchmarkLoad(b *testing.B) {
	for _, notation := range []string{"hcl", "toml"} {
		for _, n := range []int{60, 2000, 20000} {
			content := []byte(many(notation, n))
			b.Run(fmt.Sprint(notation, "/", n), func(b *testing.B) {
				name := filepath.Join(b.TempDir(), "many."+notation)
				require.NoError(b, os.WriteFile(name, content, 0o644))
				whole, alone := time.Hour, time.Hour
				b.ReportAllocs()
				for b.Loop() {
					start := time.Now()
					_, problems := Load(name)
					whole = min(whole, time.Since(start))
					require.Empty(b, problems)
					b.StopTimer()
					start = time.Now()
					read(notation, text.NewFile(name, content))
					alone = min(alone, time.Since(start))
					b.StartTimer()
				}
				b.ReportMetric(float64(whole)/float64(alone), "x-reader")
			})
		}
	}
}

func read(notation string, file *text.File) {
	if notation == "toml" {
		tomlread.Parse(file, formOf)
		return
	}
	source, _ := hclread.Parse(file)
	hclread.Evaluate([]*hclread.Source{source})
}
