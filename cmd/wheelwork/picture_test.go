package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The pictures of the docs are what motion draws of the designs, to the byte.
func TestPictures(t *testing.T) {
	for _, design := range []string{"harbour-table", "planet-wall"} {
		drawn := filepath.Join(t.TempDir(), "drift.svg")
		assert.NotContains(t, said([]string{"motion", "--plot", drawn, filepath.Join("../../fixtures/designs", design)}), "\nexit")
		content, err := os.ReadFile(drawn)
		require.NoError(t, err)
		kept := filepath.Join("../../docs/pictures", design+"-drift.svg")
		if *update {
			require.NoError(t, os.MkdirAll(filepath.Dir(kept), 0o755))
			require.NoError(t, os.WriteFile(kept, content, 0o644))
			continue
		}
		want, err := os.ReadFile(kept)
		require.NoError(t, err)
		assert.Equal(t, string(want), string(content), "go test ./cmd/wheelwork -update writes it anew")
	}
}
