package manual

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The pages in docs are those that the program makes, and no others.
func TestPagesAreCurrent(t *testing.T) {
	const docs = "../../../../docs"
	made := map[string]bool{}
	for _, p := range Pages() {
		made[filepath.FromSlash(p.Path)] = true
		content, err := os.ReadFile(filepath.Join(docs, filepath.FromSlash(p.Path)))
		if assert.NoError(t, err, "run go generate ./cmd/wheelwork/internal/manual") {
			assert.Equal(t, p.Content, string(content), "%s: run go generate ./cmd/wheelwork/internal/manual", p.Path)
		}
	}
	list, err := os.ReadDir(filepath.Join(docs, RulesFolder))
	require.NoError(t, err)
	for _, e := range list {
		assert.True(t, made[filepath.Join(RulesFolder, e.Name())], "%s belongs to no rule", e.Name())
	}
}
