package spec

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/text"
)

// tree makes files in a new repository.
func tree(t testing.TB, files map[string]string) string {
	t.Helper()
	dir, err := filepath.EvalSymlinks(t.TempDir())
	require.NoError(t, err)
	require.NoError(t, os.Mkdir(filepath.Join(dir, ".git"), 0o755))
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

// using is a design that uses the files.
func using(files ...string) string {
	return fmt.Sprintf("design {\n  title = \"x\"\n  uses = [\"%s\"]\n}\n", strings.Join(files, "\", \""))
}

func lines(problems []text.Problem) string {
	var list []string
	for _, p := range problems {
		list = append(list, p.Error())
	}
	return strings.Join(list, "\n")
}

func fileNames(d *Design) []string {
	var names []string
	for _, f := range d.Files {
		names = append(names, f.Name)
	}
	return names
}

func TestWhatCannotBeRead(t *testing.T) {
	dir := tree(t, map[string]string{"notes.txt": "", "sub.hcl/x": "", "a.hcl": "design { title = \"x\" }\n"})
	link(t, "loop.hcl", filepath.Join(dir, "loop.hcl"))
	link(t, "/dev/zero", filepath.Join(dir, "zero.hcl"))
	link(t, "/dev/zero", filepath.Join(dir, "zero.toml"))
	for name, want := range map[string]string{
		"no.hcl":    "this file does not exist",
		"no/no.hcl": "this file does not exist",
		"notes.txt": "this file is no spec file",
		".":         "this file is no spec file",
		"sub.hcl":   "this file is a folder, not a file",
		"loop.hcl":  "this file is a link that leads back to itself",
		"zero.hcl":  "this file leads out of the repository",
		"zero.toml": "this file leads out of the repository",
	} {
		d, problems := Load(filepath.Join(dir, name))
		assert.Nil(t, d, name)
		require.Len(t, problems, 1, name)
		assert.Contains(t, problems[0].Message, want, name)
		assert.Equal(t, filepath.ToSlash(filepath.Join(dir, name)), problems[0].File.Name)
	}
	d, problems := Load("/dev/zero")
	assert.Nil(t, d)
	assert.Len(t, problems, 1)
}

func TestUsesByLinks(t *testing.T) {
	outside := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(outside, "secret.hcl"), []byte("arbor \"secret\" {}\n"), 0o644))
	for name, c := range map[string]struct {
		from, to string // the link
		uses     string
		want     string // "" if it can be used
	}{
		"to a file inside":               {"b.hcl", "parts/a.hcl", "b.hcl", ""},
		"by the whole path":              {"b.hcl", "DIR/parts/a.hcl", "b.hcl", ""},
		"to a folder inside":             {"linked", "parts", "linked/a.hcl", ""},
		"to a file outside":              {"b.hcl", "OUT/secret.hcl", "b.hcl", `"b.hcl" leads out of the repository`},
		"to a folder outside":            {"out", "OUT", "out/secret.hcl", `"out/secret.hcl" leads out of the repository`},
		"to nothing":                     {"b.hcl", "nothing.hcl", "b.hcl", `"b.hcl" does not exist`},
		"to itself":                      {"b.hcl", "b.hcl", "b.hcl", `"b.hcl" is a link that leads back to itself`},
		"to the design":                  {"b.hcl", "table.hcl", "b.hcl", `"b.hcl" is this file itself`},
		"to the folder it stands in":     {"again", ".", "again/table.hcl", `"again/table.hcl" is this file itself`},
		"to a device":                    {"b.hcl", "/dev/zero", "b.hcl", `"b.hcl" leads out of the repository`},
		"to a file without an extension": {"b.hcl", "parts/plain", "b.hcl", `"b.hcl" is no spec file`},
	} {
		t.Run(name, func(t *testing.T) {
			dir := tree(t, map[string]string{"table.hcl": using(c.uses), "parts/a.hcl": "arbor \"a\" {}\n", "parts/plain": "arbor \"b\" {}\n"})
			link(t, strings.NewReplacer("OUT", outside, "DIR", dir).Replace(c.to), filepath.Join(dir, c.from))
			d, problems := Load(filepath.Join(dir, "table.hcl"))
			require.NotNil(t, d)
			assert.Nil(t, d.ArborNamed("secret"))
			if c.want == "" {
				assert.Empty(t, problems)
				return
			}
			require.Len(t, problems, 1)
			assert.Contains(t, problems[0].Error(), "table.hcl:3:11: "+c.want)
		})
	}
}

// A circle through links would otherwise go on under ever longer names.
func TestOneFileUnderTwoNamesIsReadOnce(t *testing.T) {
	dir := tree(t, map[string]string{
		"table.hcl":   using("parts/a.hcl", "linked/a.hcl", "b.hcl"),
		"parts/a.hcl": "design {\n  title = \"a\"\n  uses = [\"shared.toml\"]\n}\narbor \"a\" {}\n", "parts/shared.toml": "[arbor.s]\n",
	})
	link(t, "parts", filepath.Join(dir, "linked"))
	link(t, "parts/shared.toml", filepath.Join(dir, "b.toml"))
	link(t, "parts/a.hcl", filepath.Join(dir, "b.hcl"))
	d, problems := Load(filepath.Join(dir, "table.hcl"))
	assert.Empty(t, problems)
	assert.Len(t, d.Files, 3)
	assert.Len(t, d.Arbors, 2)
}

func TestSizes(t *testing.T) {
	dir := tree(t, map[string]string{"huge.hcl": "design {}\n", "huge.toml": "[design]\n", "table.hcl": using("huge.hcl", "huge.toml")})
	for _, name := range []string{"huge.hcl", "huge.toml"} {
		require.NoError(t, os.Truncate(filepath.Join(dir, name), 100<<20))
		d, problems := Load(filepath.Join(dir, name))
		assert.Nil(t, d)
		assert.Contains(t, lines(problems), "this file is larger than a spec file may be: 100 MB, at most 32 MB")
	}
	_, problems := Load(filepath.Join(dir, "table.hcl"))
	assert.Contains(t, lines(problems), `table.hcl:3:11: "huge.hcl" is larger than a spec file may be`)
	assert.Contains(t, lines(problems), `table.hcl:3:23: "huge.toml" is larger than a spec file may be`)
}

func TestFilesOfOneDesignAreBounded(t *testing.T) {
	files := map[string]string{}
	var names []string
	for i := range MostFiles + 3 {
		name := fmt.Sprintf("p%03d.toml", i)
		names = append(names, name)
		files[name] = fmt.Sprintf("[arbor.a%d]\n", i)
	}
	files["table.hcl"] = using(names...)
	d, problems := Load(filepath.Join(tree(t, files), "table.hcl"))
	assert.Len(t, d.Files, MostFiles)
	require.Len(t, problems, 1)
	assert.Contains(t, lines(problems), "a design is made of 256 files at most")

	// One file uses the next: the chain ends at the bound too.
	files = map[string]string{"table.hcl": using("p0.toml")}
	for i := range MostFiles + 3 {
		files[fmt.Sprintf("p%d.toml", i)] = fmt.Sprintf("design = { title = \"x\", uses = [\"p%d.toml\"] }\n", i+1)
	}
	_, problems = Load(filepath.Join(tree(t, files), "table.hcl"))
	require.Len(t, problems, 1)
	assert.Contains(t, lines(problems), "a design is made of 256 files at most")
}

func TestFilesAreNamedFromThePathGiven(t *testing.T) {
	dir := tree(t, map[string]string{
		"designs/moon/table.hcl":   using("parts/a.hcl", "../shared/stock.toml"),
		"designs/moon/parts/a.hcl": "", "designs/shared/stock.toml": "[stock]\n",
	})
	require.NoError(t, os.WriteFile(filepath.Join(dir, "designs/moon/parts/a.hcl"), []byte("arbor \"a\" {}\n"), 0o644))
	t.Chdir(dir)
	for given, want := range map[string][]string{
		"designs/moon/table.hcl":                     {"designs/moon/table.hcl", "designs/moon/parts/a.hcl", "designs/shared/stock.toml"},
		"./designs//moon/table.hcl":                  {"designs/moon/table.hcl", "designs/moon/parts/a.hcl", "designs/shared/stock.toml"},
		filepath.Join(dir, "designs/moon/table.hcl"): {dir + "/designs/moon/table.hcl", dir + "/designs/moon/parts/a.hcl", dir + "/designs/shared/stock.toml"},
	} {
		d, problems := Load(given)
		require.Empty(t, problems)
		assert.Equal(t, want, fileNames(d), given)
	}
	t.Chdir(filepath.Join(dir, "designs", "moon"))
	d, problems := Load("table.hcl")
	require.Empty(t, problems)
	assert.Equal(t, []string{"table.hcl", "parts/a.hcl", "../shared/stock.toml"}, fileNames(d))

	t.Chdir(dir)
	link(t, "designs/moon", filepath.Join(dir, "m"))
	d, problems = Load("m/table.hcl")
	require.Empty(t, problems)
	assert.Equal(t, []string{"m/table.hcl", "m/parts/a.hcl", dir + "/designs/shared/stock.toml"}, fileNames(d), "m/../shared is elsewhere")
}

func TestAnEditorsText(t *testing.T) {
	dir := tree(t, map[string]string{
		"table.hcl": using("moon.toml"),
		"moon.toml": "[arbor.old]\n",
	})
	held := map[string]string{}
	loader := Loader{Overlay: func(path string) ([]byte, bool) {
		content, ok := held[path]
		return []byte(content), ok
	}}
	at := func(name string) string { return filepath.Join(dir, name) }

	d, problems := loader.Load(at("table.hcl"))
	require.Empty(t, problems)
	assert.NotNil(t, d.ArborNamed("old"))

	held[at("moon.toml")] = "[arbor.unsaved]\n"
	d, problems = loader.Load(at("table.hcl"))
	require.Empty(t, problems)
	assert.NotNil(t, d.ArborNamed("unsaved"), "a used file's text is the editor's")
	assert.Equal(t, held[at("moon.toml")], string(d.Files[1].Bytes))

	held[at("table.hcl")] = using("moon.toml", "new.hcl")
	_, problems = loader.Load(at("table.hcl"))
	require.Len(t, problems, 1)
	assert.Contains(t, problems[0].Error(), `"new.hcl" does not exist`)

	held[at("new.hcl")] = "arbor \"new\" {}\n"
	d, problems = loader.Load(at("table.hcl"))
	require.Empty(t, problems)
	assert.NotNil(t, d.ArborNamed("new"), "a file that was never saved")

	held[at("fresh.hcl")] = "design { title = \"never saved\" }\n"
	d, problems = loader.Load(at("fresh.hcl"))
	require.Empty(t, problems)
	assert.Equal(t, "never saved", d.Head.Title.Text)

	held[at("table.hcl")] = "design {\n  title = \"x\"\n  uses = [\"moon.toml\"]\n}\nwheel \"w\" { on = \"unsa"
	d, problems = loader.Load(at("table.hcl"))
	require.NotEmpty(t, problems)
	require.NotNil(t, d, "a half-typed line leaves the rest")
	assert.NotNil(t, d.ArborNamed("unsaved"))
}
