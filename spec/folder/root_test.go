package folder

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// repository is a folder with files and a .git.
func repository(t *testing.T, files map[string]string) *Root {
	t.Helper()
	files[".git/HEAD"] = ""
	root, err := Of(write(t, files))
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	return root
}

func TestTheRepositoryIsTheNearestWithGit(t *testing.T) {
	dir := write(t, map[string]string{
		".git/HEAD": "", "designs/moon/table.hcl": "",
		"inner/.git": "gitdir: elsewhere", "inner/a/b.hcl": "",
	})
	dir, err := filepath.EvalSymlinks(dir)
	require.NoError(t, err)
	for path, want := range map[string]string{
		"designs/moon/table.hcl": ".",
		"designs/moon":           ".",
		"designs/moon/new.hcl":   ".", // not written yet
		"inner/a/b.hcl":          "inner",
	} {
		root, err := Of(filepath.Join(dir, path))
		require.NoError(t, err, path)
		assert.Equal(t, filepath.Join(dir, want), root.Dir, path)
		root.Close()
	}
	_, err = Of(filepath.Join(dir, "no/such/folder/x.hcl"))
	assert.ErrorIs(t, err, ErrMissing)
}

func TestWithoutARepositoryItIsTheOwnFolder(t *testing.T) {
	dir := write(t, map[string]string{"a/b.hcl": ""})
	for up := dir; ; up = filepath.Dir(up) {
		if _, err := os.Lstat(filepath.Join(up, ".git")); err == nil {
			t.Skip("the folder for temporary files lies in a repository")
		}
		if filepath.Dir(up) == up {
			break
		}
	}
	root, err := Of(filepath.Join(dir, "a", "b.hcl"))
	require.NoError(t, err)
	defer root.Close()
	real, err := filepath.EvalSymlinks(filepath.Join(dir, "a"))
	require.NoError(t, err)
	assert.Equal(t, real, root.Dir)
}

func TestRead(t *testing.T) {
	root := repository(t, map[string]string{"a/b.hcl": "wheel", "empty.hcl": ""})
	for name, want := range map[string]string{"a/b.hcl": "wheel", "empty.hcl": ""} {
		got, err := root.Read(name)
		require.NoError(t, err)
		assert.Equal(t, want, string(got))
	}
	outside := write(t, map[string]string{"secret.hcl": "secret"})
	link(t, filepath.Join(outside, "secret.hcl"), filepath.Join(root.Dir, "out.hcl"))
	link(t, outside, filepath.Join(root.Dir, "out"))
	link(t, "/dev/zero", filepath.Join(root.Dir, "zero.hcl"))
	link(t, "loop.hcl", filepath.Join(root.Dir, "loop.hcl"))
	require.NoError(t, os.Truncate(filepath.Join(root.Dir, "empty.hcl"), 100<<20))
	for name, want := range map[string]string{
		"no.hcl":           "does not exist",
		"a":                "is a folder, not a file",
		"../x.hcl":         "leads out of the repository",
		"/etc/passwd":      "leads out of the repository",
		"out.hcl":          "leads out of the repository",
		"out/secret.hcl":   "leads out of the repository",
		"a/../../b.hcl":    "leads out of the repository",
		"zero.hcl":         "leads out of the repository",
		"loop.hcl":         "is a link that leads back to itself",
		"empty.hcl":        "is larger than a spec file may be: 100 MB, at most 32 MB",
		"a/b.hcl/more.hcl": "cannot be read",
	} {
		_, err := root.Read(name)
		assert.ErrorContains(t, err, want, name)
	}
}

func TestResolve(t *testing.T) {
	root := repository(t, map[string]string{"shared/stock.toml": "", "designs/table.hcl": ""})
	link(t, filepath.Join(root.Dir, "shared"), filepath.Join(root.Dir, "designs", "shared"))
	link(t, "table.hcl", filepath.Join(root.Dir, "designs", "again.hcl"))
	link(t, os.TempDir(), filepath.Join(root.Dir, "out"))
	for name, want := range map[string]string{
		"shared/stock.toml":         "shared/stock.toml",
		"designs/shared/stock.toml": "shared/stock.toml", // by a link that names the whole path
		"designs/again.hcl":         "designs/table.hcl",
	} {
		got, err := root.Resolve(filepath.FromSlash(name))
		require.NoError(t, err, name)
		assert.Equal(t, want, filepath.ToSlash(got))
	}
	for name, want := range map[string]error{"out": ErrOutside, "../x": ErrOutside, "no.hcl": ErrMissing} {
		_, err := root.Resolve(name)
		assert.ErrorIs(t, err, want, name)
	}
}

func TestRel(t *testing.T) {
	root := repository(t, map[string]string{"a/b.hcl": ""})
	got, err := root.Rel(filepath.Join(root.Dir, "a", "new.hcl"))
	require.NoError(t, err)
	assert.Equal(t, filepath.Join("a", "new.hcl"), got)
	_, err = root.Rel(filepath.Join(root.Dir, "..", "x.hcl"))
	assert.ErrorIs(t, err, ErrOutside)
}
