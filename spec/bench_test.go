package spec

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

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

// BenchmarkLoad is a whole load, BenchmarkReaders what the two readers take
// of it.
func BenchmarkLoad(b *testing.B) {
	for _, notation := range []string{"hcl", "toml"} {
		for _, n := range []int{60, 2000, 20000} {
			b.Run(fmt.Sprint(notation, n), func(b *testing.B) {
				name := filepath.Join(b.TempDir(), "many."+notation)
				require.NoError(b, os.WriteFile(name, []byte(many(notation, n)), 0o644))
				b.ReportAllocs()
				for b.Loop() {
					_, problems := Load(name)
					require.Empty(b, problems)
				}
			})
		}
	}
}

func BenchmarkReaders(b *testing.B) {
	for _, notation := range []string{"hcl", "toml"} {
		for _, n := range []int{60, 2000, 20000} {
			content := []byte(many(notation, n))
			b.Run(fmt.Sprint(notation, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					file := text.NewFile("many", content)
					if notation == "toml" {
						tomlread.Parse(file, formOf)
						continue
					}
					source, _ := hclread.Parse(file)
					hclread.Evaluate([]*hclread.Source{source})
				}
			})
		}
	}
}
