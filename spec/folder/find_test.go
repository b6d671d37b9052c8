package folder

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// write makes files in a new folder.
func write(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, content := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
	}
	return dir
}

// link makes a link, or skips the test where the system has none.
func link(t *testing.T, to, name string) {
	t.Helper()
	if err := os.Symlink(to, name); err != nil {
		t.Skip("no links here:", err)
	}
}

func designs(t *testing.T, dir string) []string {
	t.Helper()
	found, err := Designs(dir)
	require.NoError(t, err)
	var names []string
	for _, name := range found {
		rel, err := filepath.Rel(dir, name)
		require.NoError(t, err)
		names = append(names, filepath.ToSlash(rel))
	}
	return names
}

func TestDesignsInAFolder(t *testing.T) {
	dir := write(t, map[string]string{
		"table.hcl":          "design {\n  title = \"x\"\n}\n",
		"moon.hcl":           "wheel \"a\" {}\n",
		"stock.toml":         "[stock]\nteeth = [12]\n",
		"tide/clock.toml":    "[design]\ntitle = \"x\"\n",
		"tide/b/inner.hcl":   "given { m = 1 }\ndesign { title = \"x\" }\n",
		"a.toml":             "[ design ] # a table\n",
		".git/x.hcl":         "design {}\n",
		".hidden/y.hcl":      "design {}\n",
		"tide/.cache/z.toml": "[design]\n",
		"notes.txt":          "design {\n",
		"design.md":          "design {\n",
	})
	assert.Equal(t, []string{"a.toml", "table.hcl", "tide/b/inner.hcl", "tide/clock.toml"}, designs(t, dir))
}

func TestDesignsIsAskedOfAFile(t *testing.T) {
	dir := write(t, map[string]string{"moon.hcl": "wheel \"a\" {}\n"})
	name := filepath.Join(dir, "moon.hcl")
	found, err := Designs(name)
	require.NoError(t, err)
	assert.Equal(t, []string{name}, found, "whether it is one is told when it is read")

	_, err = Designs(filepath.Join(dir, "nothing.hcl"))
	assert.ErrorIs(t, err, ErrMissing)
}

func TestWhatIsTakenForADesign(t *testing.T) {
	for content, want := range map[string]bool{
		"design {":                      true,
		"\ufeffdesign {\r\n}\r\n":       true,
		"  design{":                     true,
		"design # the heading\n{":       true,
		"design\n{\n":                   true,
		"design \"named by mistake\" {": true,
		"wheel \"a\" { teeth =\n\ndesign { title = ": true, // broken before it
		"[design]":                                true,
		"[design] # heading":                      true,
		"[[design]]":                              true, // wrong, and told when it is read
		"design.title = \"x\"":                    true,
		"design = { title = \"x\" }":              true,
		"\xff\xfed\x00e\x00s\x00i\x00g\x00n\x00":  true, // UTF-16, told when it is read
		"[wheel.a]\nteeth = [\n\n[design]\n":      true,
		"":                                        false,
		"designs {":                               false,
		"designer = \"x\"":                        false,
		"# design {":                              false,
		"title = \"design {\"":                    false,
		"[tool]\ndesign = \"a word\"\n":           false, // another program's
		"[tool]\ndesign.colour = \"red\"\n":       false,
		"[tool]\ndesign = { colour = \"red\" }\n": false,
		"[tool.design]\ncolour = \"red\"\n":       false,
		"[design.colours]\nred = 1\n":             false,
		"design = 3":                              false,
	} {
		dir := write(t, map[string]string{"x.toml": content})
		assert.Equal(t, want, len(designs(t, dir)) == 1, "%q", content)
	}
}

func TestLinksInAFolderAreNotFollowed(t *testing.T) {
	dir := write(t, map[string]string{"a/table.hcl": "design {}\n"})
	link(t, dir, filepath.Join(dir, "a", "up"))
	link(t, "table.hcl", filepath.Join(dir, "a", "again.hcl"))
	assert.Equal(t, []string{"a/table.hcl"}, designs(t, dir))

	elsewhere := filepath.Join(t.TempDir(), "link")
	link(t, dir, elsewhere)
	assert.Equal(t, []string{"a/table.hcl"}, designs(t, elsewhere), "a link that is asked for itself is")
}

func TestAFolderThatMayNotBeReadIsTold(t *testing.T) {
	dir := write(t, map[string]string{"a/table.hcl": "design {}\n"})
	closed := filepath.Join(dir, "a")
	require.NoError(t, os.Chmod(closed, 0))
	t.Cleanup(func() { os.Chmod(closed, 0o755) })
	if _, err := os.ReadDir(closed); err == nil {
		t.Skip("this user may read everything")
	}
	_, err := Designs(dir)
	assert.ErrorContains(t, err, "a, which may not be read")
}

func TestALongFileIsLookedAtAsFarAsNeeded(t *testing.T) {
	dir := write(t, map[string]string{
		"huge.toml":   "[design]\n",
		"late.hcl":    strings.Repeat("# a comment\n", 3000) + "design {}\n",
		"border.hcl":  strings.Repeat("#", 16<<10-4) + "\ndesign {}\n", // the word is cut in two
		"nowhere.hcl": strings.Repeat("# a comment\n", 3000),
		"oneline.hcl": strings.Repeat("#", 40<<10),
	})
	require.NoError(t, os.Truncate(filepath.Join(dir, "huge.toml"), 100<<20))
	assert.Equal(t, []string{"border.hcl", "huge.toml", "late.hcl"}, designs(t, dir))
}
