package editor

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/cmd/wheelwork/internal/sample"
)

// BenchmarkKeystroke measures over the protocol, from a keystroke in the middle
// of a design to what is published of it, the pause left out. Wanted are
// medians of at most 10 ms for 60 wheels, and for 2000 wheels 400 ms in HCL and
// 150 ms in TOML.
func BenchmarkKeystroke(b *testing.B) {
	for _, n := range []sample.Notation{sample.HCL, sample.TOML} {
		for _, wheels := range []int{60, 2000} {
			b.Run(fmt.Sprintf("%s/%d", n, wheels), func(b *testing.B) {
				name := "design." + string(n)
				text := string(sample.Design(wheels, n))
				c := start(b, map[string]string{name: text})
				c.open(name)
				c.settled(name, func([]lsp.Diagnostic) bool { return true })
				// A digit more in the teeth of a wheel in the middle.
				middle := len(text) / 2
				at := strings.Index(text[middle:], "teeth") + middle
				at += strings.IndexByte(text[at:], '\n')
				var took []float64
				for b.Loop() {
					begin := time.Now()
					c.edit(name, at, at, "7")
					c.settled(name, any1)
					took = append(took, float64(time.Since(begin))/1e6)
					begin = time.Now()
					c.edit(name, at, at+1, "")
					c.settled(name, func([]lsp.Diagnostic) bool { return true })
					took = append(took, float64(time.Since(begin))/1e6)
				}
				slices.Sort(took)
				b.ReportMetric(took[len(took)/2], "median-ms")
				b.ReportMetric(took[len(took)*95/100], "p95-ms")
			})
		}
	}
}

// BenchmarkHarbour measures the same on the harbour's table, of fifteen files
// with all that rules look at, each digit typed into a wheel of the Moon's train.
func BenchmarkHarbour(b *testing.B) {
	for _, n := range []struct{ ext, dir string }{{"hcl", "harbour-table"}, {"toml", "harbour-table-toml"}} {
		b.Run(n.ext, func(b *testing.B) {
			c := start(b, folderOf(b, filepath.Join(designs, n.dir)))
			name := "moon." + n.ext
			c.open(name)
			c.settled(name, none)
			at := strings.Index(c.text(name), "= 105") + 5
			var took []float64
			for b.Loop() {
				begin := time.Now()
				c.edit(name, at, at, "7")
				c.settled(name, any1)
				took = append(took, float64(time.Since(begin))/1e6)
				begin = time.Now()
				c.edit(name, at, at+1, "")
				c.settled(name, none)
				took = append(took, float64(time.Since(begin))/1e6)
			}
			slices.Sort(took)
			b.ReportMetric(took[len(took)/2], "median-ms")
			b.ReportMetric(took[len(took)*95/100], "p95-ms")
		})
	}
}
