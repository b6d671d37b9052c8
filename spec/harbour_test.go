package spec

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The demo is written by hand in HCL over several files with named values, and
// in TOML with the arithmetic worked out; both must mean the same.
func TestHarbourTableIsOneDesignInBothNotations(t *testing.T) {
	read := func(name string) *Design {
		d, problems := Load("../fixtures/designs/" + name)
		require.Empty(t, problems)
		require.Greater(t, len(d.Head.Uses.List), 10)
		d.Head.Uses.List = nil // the files' names differ
		return d
	}
	a, b := model(read("harbour-table/table.hcl")), model(read("harbour-table-toml/table.toml"))
	require.True(t, a == b, "%s", firstDifference(a, b))
}
