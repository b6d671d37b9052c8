package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCompareReadsRevisions(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("git is not installed")
	}
	dir := t.TempDir()
	t.Setenv("TMPDIR", filepath.Join(dir, "tmp"))
	require.NoError(t, os.Mkdir(os.TempDir(), 0o755))
	require.NoError(t, os.Mkdir(filepath.Join(dir, "repository"), 0o755))
	t.Chdir(filepath.Join(dir, "repository"))
	git := func(args ...string) {
		t.Helper()
		command := exec.Command("git", append([]string{"-c", "user.name=Museum", "-c", "user.email=museum@example.org"}, args...)...)
		out, err := command.CombinedOutput()
		require.NoError(t, err, "%s", out)
	}
	write := func(name, text string) {
		t.Helper()
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	}
	design := "design {\n  title = \"Table\"\n  uses  = [\"../shared/day.toml\"]\n}\nclock {\n  on     = \"day\"\n  period = \"solar day\"\n}\n"
	git("init", "-q")
	write("designs/table.hcl", design)
	write("shared/day.toml", "[arbor.day]\n[arbor.old]\n")
	git("add", ".")
	git("commit", "-q", "-m", "first")
	git("tag", "v1")
	write("shared/day.toml", "[arbor.day]\n[arbor.old]\n[arbor.spare]\n")
	git("commit", "-q", "-a", "-m", "second")
	git("tag", "v2")

	compare := func(args ...string) (string, int) {
		var out bytes.Buffer
		c := &Command{Stdout: &out, Stderr: &out}
		code := c.Main(append([]string{"compare"}, args...))
		return out.String(), code
	}
	said, code := compare("--rev", "v1", "designs")
	assert.Equal(t, found, code, said)
	assert.Contains(t, said, "spare")
	assert.Contains(t, said, "kept  1 found in both")
	assert.NotContains(t, said, os.TempDir(), "no temporary folder is told")

	said, code = compare("--rev", "v2")
	assert.Equal(t, clean, code, said)

	said, code = compare("--rev", "v2..v1", "designs/table.hcl")
	assert.Equal(t, clean, code, said)
	assert.Contains(t, said, "gone")

	for _, args := range [][]string{{"--rev", "v9"}, {"--rev", "--output=x"}, {"--rev", "v1", "shared/none"}} {
		said, code = compare(args...)
		assert.Equal(t, unusable, code, said)
	}
	assert.NoFileExists(t, "x")
	left, err := filepath.Glob(filepath.Join(os.TempDir(), "wheelwork-*"))
	require.NoError(t, err)
	assert.Empty(t, left, "the folders of revisions are removed")
}
