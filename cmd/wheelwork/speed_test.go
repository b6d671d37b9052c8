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
// Both run in turn, and the ratio is that of their medians. Wanted are for HCL
// at most 1.0, for TOML and for 60 wheels of either at most 1.3.
func BenchmarkCheck(b *testing.B) {
	dir := b.TempDir()
	wheelwork := built(b, dir, ".")
	for _, n := range []sample.Notation{sample.HCL, sample.TOML} {
		plain := built(b, dir, filepath.Join("testdata", "plain", string(n)+".go"))
		for _, wheels := range []int{60, 2000, 20_000} {
			name := filepath.Join(dir, fmt.Sprintf("%d.%s", wheels, n))
			require.NoError(b, os.WriteFile(name, sample.Design(wheels, n), 0o644))
			b.Run(fmt.Sprintf("%s/%d", n, wheels), func(b *testing.B) {
				var own, other []time.Duration
				var most int64
				for b.Loop() {
					t, kilobytes := once(b, wheelwork, "check", name)
					own, most = append(own, t), max(most, kilobytes)
					t, _ = once(b, plain, name)
					other = append(other, t)
				}
				b.ReportMetric(float64(median(own))/float64(median(other)), "ratio")
				b.ReportMetric(median(own).Seconds()*1000, "ms")
				b.ReportMetric(float64(most)/1024, "MB")
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
			var small, large []time.Duration
			for b.Loop() {
				t, _ := once(b, wheelwork, "check", names[0])
				small = append(small, t)
				t, _ = once(b, wheelwork, "check", names[1])
				large = append(large, t)
			}
			b.ReportMetric(float64(median(large))/float64(median(small)), "ratio")
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

// once runs a program and returns how long it took and the most memory it held.
func once(b *testing.B, program string, args ...string) (time.Duration, int64) {
	b.Helper()
	c := exec.Command(program, args...)
	start := time.Now()
	err := c.Run()
	took := time.Since(start)
	if code := c.ProcessState.ExitCode(); err != nil && code != found {
		b.Fatalf("%s %v: exit code %d: %v", program, args, code, err)
	}
	return took, c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss
}

func median(list []time.Duration) time.Duration {
	slices.Sort(list)
	return list[len(list)/2]
}
