//go:build unix

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/sample"
)

// BenchmarkCheck measures whole processes: a check of a design beside a plain
// program that only parses the same bytes, each with nothing set from outside.
// Both run in turn, and the ratio is that of their medians, by the watch; the
// processors' time is told beside it. Wanted are ratios of at most 1.0 for HCL
// and 1.3 for TOML and for 60 wheels of either, and less than 2 GB.
func BenchmarkCheck(b *testing.B) {
	dir := b.TempDir()
	wheelwork := built(b, dir, ".")
	for _, n := range []sample.Notation{sample.HCL, sample.TOML} {
		plain := built(b, dir, filepath.Join("testdata", "plain", string(n)+".go"))
		for _, wheels := range []int{60, 2000, 20_000} {
			name := filepath.Join(dir, fmt.Sprintf("%d.%s", wheels, n))
			require.NoError(b, os.WriteFile(name, sample.Design(wheels, n), 0o644))
			b.Run(fmt.Sprintf("%s/%d", n, wheels), func(b *testing.B) {
				var own, other runs
				for b.Loop() {
					own.once(b, wheelwork, "check", name)
					other.once(b, plain, name)
				}
				b.ReportMetric(median(own.wall)/median(other.wall), "ratio")
				b.ReportMetric(median(own.processor)/median(other.processor), "processor-ratio")
				b.ReportMetric(median(own.wall)*1000, "ms")
				b.ReportMetric(own.most, "MB")
			})
		}
	}
}

// BenchmarkGrowth measures how a check grows with the design: the time of
// 20,000 wheels over that of 2,000 in turn. Wanted is at most 11.
func BenchmarkGrowth(b *testing.B) {
	dir := b.TempDir()
	wheelwork := built(b, dir, ".")
	for _, n := range []sample.Notation{sample.HCL, sample.TOML} {
		b.Run(string(n), func(b *testing.B) {
			var names []string
			for _, wheels := range []int{2000, 20_000} {
				name := filepath.Join(dir, fmt.Sprintf("%d.%s", wheels, n))
				require.NoError(b, os.WriteFile(name, sample.Design(wheels, n), 0o644))
				names = append(names, name)
			}
			var small, large runs
			for b.Loop() {
				small.once(b, wheelwork, "check", names[0])
				large.once(b, wheelwork, "check", names[1])
			}
			b.ReportMetric(median(large.wall)/median(small.wall), "ratio")
		})
	}
}

// built compiles a program and returns its path.
func built(b *testing.B, dir, source string) string {
	b.Helper()
	to := filepath.Join(dir, "program-"+filepath.Base(source))
	out, err := exec.Command("go", "build", "-o", to, "./"+source).CombinedOutput()
	require.NoError(b, err, "%s", out)
	return to
}

// runs is what running a program again and again took.
type runs struct {
	wall, processor []float64 // seconds
	most            float64   // MB of memory, of small programs rather the caller's
}

func (r *runs) once(b *testing.B, program string, args ...string) {
	b.Helper()
	c := exec.Command(program, args...)
	start := time.Now()
	err := c.Run()
	took := time.Since(start)
	if code := c.ProcessState.ExitCode(); err != nil && code != found {
		b.Fatalf("%s %v: exit code %d: %v", program, args, code, err)
	}
	r.wall = append(r.wall, took.Seconds())
	r.processor = append(r.processor, (c.ProcessState.UserTime() + c.ProcessState.SystemTime()).Seconds())
	r.most = max(r.most, float64(c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss)/1024)
}

func median(list []float64) float64 {
	slices.Sort(list)
	return list[len(list)/2]
}
