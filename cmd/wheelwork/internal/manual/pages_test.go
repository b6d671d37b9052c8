package manual

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The pages in docs are those that the program makes, and no others.
func TestPagesAreCurrent(t *testing.T) {
	const docs, mend = "../../../../docs", "run go generate ./cmd/wheelwork/internal/manual"
	made := map[string]bool{}
	for _, p := range Pages() {
		made[filepath.FromSlash(p.Path)] = true
		content, err := os.ReadFile(filepath.Join(docs, filepath.FromSlash(p.Path)))
		if assert.NoError(t, err, mend) && string(content) != p.Content {
			t.Errorf("docs/%s is not current from %q on: %s", p.Path, parting(string(content), p.Content), mend)
		}
	}
	list, err := os.ReadDir(filepath.Join(docs, RulesFolder))
	require.NoError(t, err)
	for _, e := range list {
		assert.True(t, made[filepath.Join(RulesFolder, e.Name())], "%s belongs to no rule", e.Name())
	}
}

// parting is the first line of what is wanted that is not there.
func parting(have, want string) string {
	lines := strings.Split(have, "\n")
	for i, l := range strings.Split(want, "\n") {
		if i >= len(lines) || lines[i] != l {
			return l
		}
	}
	return ""
}
