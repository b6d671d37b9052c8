package setting_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/rules/setting"
	"wheelwork/spec"
	"wheelwork/spec/train"
)

// Whatever the design, broken and locked ones too: angles lie on the dial, what
// teeth leave is half a tooth at most, and each hand has one step or a reason.
func TestEveryFixture(t *testing.T) {
	dir := t.TempDir()
	archives, err := filepath.Glob("../../fixtures/rules/*.txtar")
	require.NoError(t, err)
	for _, name := range archives {
		archive, err := txtar.ParseFile(name)
		require.NoError(t, err)
		base := strings.TrimSuffix(filepath.Base(name), ".txtar")
		for _, f := range archive.Files {
			to := filepath.Join(dir, base, filepath.FromSlash(f.Name))
			require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
			require.NoError(t, os.WriteFile(to, f.Data, 0o644))
		}
	}
	var designs []string
	for _, pattern := range []string{filepath.Join(dir, "*", "*.hcl"), filepath.Join(dir, "*", "*.toml"), "../../fixtures/trains/*.hcl", "../../fixtures/trains/*.toml", "../../fixtures/designs/*/table.*"} {
		list, err := filepath.Glob(pattern)
		require.NoError(t, err)
		designs = append(designs, list...)
	}
	read, steps := 0, 0
	for _, name := range designs {
		d, problems := spec.Load(name)
		if d == nil || len(problems) > 0 {
			continue
		}
		read++
		s := on(t, train.Solve(d), day(t, "2034-05-06", 7))
		set := map[*setting.Hand]int{}
		for i := range s.Steps {
			p := &s.Steps[i]
			set[p.Hand]++
			steps++
			for _, x := range []float64{p.Turn, p.Drive, p.Pitch, p.Error} {
				assert.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%s hand %q", name, p.Hand.Name.Text)
			}
			if p.By == setting.ByTeeth {
				assert.LessOrEqual(t, math.Abs(p.Error), p.Pitch/2*(1+1e-9), "%s hand %q", name, p.Hand.Name.Text)
			}
			if p.Finer != nil {
				assert.LessOrEqual(t, math.Abs(p.Finer.Error), math.Abs(p.Error)/2)
			}
		}
		for _, h := range s.Hands {
			if h.Why == "" {
				assert.True(t, h.Degrees >= 0 && h.Degrees < 360, "%s hand %q stands at %v", name, h.Name.Text, h.Degrees)
				assert.NotEmpty(t, h.Zero)
			}
			if h.Why == "" && h.Unset == "" {
				assert.Equal(t, 1, set[h], "%s hand %q", name, h.Name.Text)
			} else {
				assert.Zero(t, set[h])
			}
		}
	}
	assert.Greater(t, read, 200)
	assert.Greater(t, steps, 50)
}
