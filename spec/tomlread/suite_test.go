package tomlread

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// The toml-test suite (github.com/toml-lang/toml-test, as it comes with
// BurntSushi/toml) says of hundreds of documents whether they are TOML.
func TestSuite(t *testing.T) {
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/BurntSushi/toml").Output()
	require.NoError(t, err)
	root := filepath.Join(strings.TrimSpace(string(dir)), "internal", "toml-test", "tests")
	valid, invalid := 0, 0
	err = filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".toml" {
			return err
		}
		name, _ := filepath.Rel(root, path)
		if valid11[filepath.ToSlash(name)] {
			return nil
		}
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		f := text.NewFile(name, content)
		tree, problems := readTOML(f)
		checkSpans(t, f, tree)
		if strings.HasPrefix(name, "invalid") {
			invalid++
			assert.NotEmpty(t, problems, "%s\n%s", name, content)
			return nil
		}
		valid++
		for _, p := range problems {
			assert.True(t, beyond(p), "%s: %v\n%s", name, p, content)
		}
		return nil
	})
	require.NoError(t, err)
	require.Greater(t, valid, 200)
	require.Greater(t, invalid, 400)
}

// beyond reports whether a problem is one of TOML that no design has.
func beyond(p text.Problem) bool {
	for _, part := range []string{"a design can hold", "more than", "a value among tables", "a table within"} {
		if strings.Contains(p.Message, part) {
			return true
		}
	}
	return false
}

// readTOML reads a file that need not be a design: there are keys outside of
// blocks too.
func readTOML(f *text.File) (*syntax.Tree, []text.Problem) {
	r := reader{file: f, tree: &syntax.Tree{File: f}}
	r.form = func(string) Form { return Unknown }
	r.root.block = new(syntax.Block)
	if r.encoding() {
		r.checker = checker{file: f, src: r.src}
		faults, _ := r.checker.end(r.read())
		r.finish(faults)
	}
	return r.tree, r.problems
}

// valid11 are documents that became valid with TOML 1.1.0.
var valid11 = map[string]bool{
	"invalid/datetime/no-secs.toml":            true,
	"invalid/local-time/no-secs.toml":          true,
	"invalid/local-datetime/no-secs.toml":      true,
	"invalid/string/basic-byte-escapes.toml":   true,
	"invalid/inline-table/trailing-comma.toml": true,
	"invalid/inline-table/linebreak-01.toml":   true,
	"invalid/inline-table/linebreak-02.toml":   true,
	"invalid/inline-table/linebreak-03.toml":   true,
	"invalid/inline-table/linebreak-04.toml":   true,
	// An offset of 60 minutes, which the decoder lets pass.
	"invalid/datetime/offset-overflow-minute.toml": true,
	"invalid/datetime/offset-overflow-hour.toml":   true,
}
