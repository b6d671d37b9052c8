package editor

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// Where a problem of the fixtures says what was meant, an action writes that,
// and then the problem is gone.
func TestCorrections(t *testing.T) {
	corrected := 0
	for _, name := range []string{"unknown-names", "unknown-words", "uses", "all-at-once", "no-design"} {
		a, err := txtar.ParseFile(filepath.Join("../../../../fixtures/problems", name+".txtar"))
		require.NoError(t, err)
		files := map[string]string{}
		for _, f := range a.Files {
			files[f.Name] = string(f.Data)
		}
		c := start(t, files)
		for _, file := range a.Files {
			if ext := filepath.Ext(file.Name); ext != ".hcl" && ext != ".toml" {
				continue
			}
			c.open(file.Name)
			list := c.settled(file.Name, func([]lsp.Diagnostic) bool { return true })
			for _, d := range list {
				if !strings.Contains(d.Message, "did you mean") {
					continue
				}
				c.settled(file.Name, func(now []lsp.Diagnostic) bool { return len(now) == len(list) })
				for _, action := range c.actions(file.Name, d) {
					if !strings.HasPrefix(action.Title, "write ") {
						continue
					}
					corrected++
					c.apply(action.Edit)
					c.settled(file.Name, func(now []lsp.Diagnostic) bool {
						return !slices.ContainsFunc(now, func(one lsp.Diagnostic) bool {
							return one.Message == d.Message && one.Range.Start == d.Range.Start
						})
					})
					c.edit(file.Name, 0, len(c.text(file.Name)), files[file.Name])
				}
			}
		}
	}
	assert.Greater(t, corrected, 60)
}

// A name that is an expression is not overwritten.
func TestNoCorrectionOfExpressions(t *testing.T) {
	c := start(t, map[string]string{"a.hcl": "design { title = \"x\" }\ngiven { a = \"dya\" }\narbor \"day\" {}\nwheel \"w\" {\n  on    = given.a\n  teeth = 30 + given.tooth\n}\n"})
	c.open("a.hcl")
	for _, d := range c.settled("a.hcl", any1) {
		assert.Empty(t, c.actions("a.hcl", d), d.Message)
	}
}
