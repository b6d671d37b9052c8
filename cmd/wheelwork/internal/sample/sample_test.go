package sample

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

// Both notations say the same design, every hand of which is right.
func TestDesign(t *testing.T) {
	for _, wheels := range []int{1, 60, 500} {
		var rates []string
		for _, n := range []Notation{HCL, TOML} {
			name := filepath.Join(t.TempDir(), "sample."+string(n))
			require.NoError(t, os.WriteFile(name, Design(wheels, n), 0o644))
			d, problems := spec.Load(name)
			require.Empty(t, problems)
			assert.Len(t, d.Wheels, wheels+wheels%2)
			solved := train.Solve(d)
			require.Empty(t, solved.Locks)
			var all string
			for _, h := range d.Hands {
				r := solved.Read(h)
				require.True(t, r.HasError, "%s", h.Title())
				assert.True(t, r.Error.IsZero(), "%s is off by %s", h.Title(), r.Error)
				all += r.Rate.Fraction() + "\n"
			}
			rates = append(rates, all)
		}
		assert.Equal(t, rates[0], rates[1])
	}
}
