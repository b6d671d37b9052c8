package spec

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/spec/text"
)

var update = flag.Bool("update", false, "write the problems that were told into the cases")

const casesDir = "../fixtures/problems"

// Each case is an archive. The files named in lines `loads: NAME` of its
// comment are loaded, or where it has none all that hold a design. `# wrong: some
// words` at the end of a line says that a problem is told of that line whose
// message or hint has these words; where several are, ` | ` stands between
// them. Where the line has no room for it, `wrong at NAME:LINE: some words` in
// the comment says the same. No other line has one. The problems file at the end holds what was told
// in full: the place with the text it covers, the message, the hint, related
// places.
func TestProblems(t *testing.T) {
	archives, err := filepath.Glob(filepath.Join(casesDir, "*.txtar"))
	require.NoError(t, err)
	require.NotEmpty(t, archives)
	for _, name := range archives {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) { runCase(t, name) })
	}
}

func runCase(t *testing.T, name string) {
	archive, err := txtar.ParseFile(name)
	require.NoError(t, err)
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, ".git"), 0o755))
	golden := -1
	all := !strings.Contains(string(archive.Comment), "loads: ")
	var load []string
	var want []expected
	for _, line := range strings.Split(string(archive.Comment), "\n") {
		if file, ok := strings.CutPrefix(line, "loads: "); ok {
			load = append(load, file)
		}
		if rest, ok := strings.CutPrefix(line, "wrong at "); ok {
			at, words, _ := strings.Cut(rest, ": ")
			want = append(want, expected{at: at, words: words})
		}
	}
	for i, f := range archive.Files {
		if f.Name == "problems" {
			golden = i
			continue
		}
		to := filepath.Join(dir, filepath.FromSlash(f.Name))
		require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
		require.NoError(t, os.WriteFile(to, f.Data, 0o644))
		want = append(want, markers(f)...)
		if all && strings.Contains(string(f.Data), "design {") || all && strings.Contains(string(f.Data), "[design]") {
			load = append(load, f.Name)
		}
	}
	sort.Strings(load)
	var out strings.Builder
	var told []text.Problem
	for _, file := range load {
		_, problems := Load(filepath.Join(dir, filepath.FromSlash(file)))
		fmt.Fprintf(&out, "%s\n", file)
		for _, p := range problems {
			write(&out, dir, p)
		}
		told = append(told, problems...)
	}
	for _, p := range told {
		at := fmt.Sprintf("%s:%d", short(dir, p.File), p.File.Position(p.Start).Line)
		found := false
		for i := range want {
			if w := &want[i]; w.at == at && !w.met && strings.Contains(p.Message+"; "+p.Hint, w.words) {
				w.met, found = true, true
				break
			}
		}
		assert.True(t, found, "not expected: %s: %s; %s", at, p.Message, p.Hint)
	}
	for _, w := range want {
		assert.True(t, w.met, "%s: nothing was told of %q", w.at, w.words)
	}
	if *update {
		file := txtar.File{Name: "problems", Data: []byte(out.String())}
		if golden < 0 {
			archive.Files = append(archive.Files, file)
		} else {
			archive.Files[golden] = file
		}
		require.NoError(t, os.WriteFile(name, txtar.Format(archive), 0o644))
		return
	}
	require.GreaterOrEqual(t, golden, 0, "run go test ./spec -update")
	assert.Equal(t, string(archive.Files[golden].Data), out.String())
}

// expected is one problem that a marker foretells.
type expected struct {
	at, words string
	met       bool
}

func markers(f txtar.File) []expected {
	var list []expected
	for n, line := range strings.Split(string(f.Data), "\n") {
		_, words, ok := strings.Cut(line, "# wrong: ")
		if !ok {
			continue
		}
		for _, w := range strings.Split(words, " | ") {
			list = append(list, expected{at: fmt.Sprintf("%s:%d", f.Name, n+1), words: strings.TrimSpace(w)})
		}
	}
	return list
}

func short(dir string, f *text.File) string {
	rel, err := filepath.Rel(dir, filepath.FromSlash(f.Name))
	if err != nil {
		return f.Name
	}
	return filepath.ToSlash(rel)
}

func write(out *strings.Builder, dir string, p text.Problem) {
	at := p.File.Position(p.Start)
	fmt.Fprintf(out, "  %s:%d:%d `%s` %s\n", short(dir, p.File), at.Line, at.Column, p.Text(), p.Message)
	if p.Hint != "" {
		fmt.Fprintf(out, "    hint: %s\n", p.Hint)
	}
	for _, r := range p.Related {
		at := r.File.Position(r.Start)
		fmt.Fprintf(out, "    %s:%d:%d `%s` %s\n", short(dir, r.File), at.Line, at.Column, r.Text(), r.Message)
	}
}
