package rules_test

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

	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/text"
)

var update = flag.Bool("update", false, "write what was found into the cases")

const casesDir = "../fixtures/rules"

// Each case is an archive named after its rule, or after the rule and a dot
// and a few words. Every file in it that holds a design is checked; `# finds
// rule-name` on a line says that a finding of the rule stands on that line, and
// a line without it has none. The findings file at the end holds what was found
// in full: each place with the text it covers, related places and remedies.
func TestCases(t *testing.T) {
	archives, err := filepath.Glob(filepath.Join(casesDir, "*.txtar"))
	require.NoError(t, err)
	have := map[string]bool{}
	for _, name := range archives {
		base := strings.TrimSuffix(filepath.Base(name), ".txtar")
		rule, _, _ := strings.Cut(base, ".")
		have[rule] = true
		t.Run(base, func(t *testing.T) { runCase(t, name, rule) })
	}
	for _, r := range rules.All() {
		assert.True(t, have[r.Name], "rule %s has no case in %s", r.Name, casesDir)
	}
}

func runCase(t *testing.T, name, rule string) {
	require.NotNil(t, rules.Named(rule), "no such rule")
	archive, err := txtar.ParseFile(name)
	require.NoError(t, err)
	dir := t.TempDir()
	golden := -1
	for i, f := range archive.Files {
		if f.Name == "findings" {
			golden = i
			continue
		}
		to := filepath.Join(dir, f.Name)
		require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
		require.NoError(t, os.WriteFile(to, f.Data, 0o644))
	}
	var out strings.Builder
	var want, got []string
	broke := false
	for i, f := range archive.Files {
		if i == golden {
			continue
		}
		for n, line := range strings.Split(string(f.Data), "\n") {
			if _, says, ok := strings.Cut(line, "# finds "); ok && strings.TrimSpace(says) == rule {
				want = append(want, fmt.Sprintf("%s:%d", f.Name, n+1))
			}
		}
		if !strings.Contains(string(f.Data), "design {") && !strings.Contains(string(f.Data), "[design]") {
			continue
		}
		fmt.Fprintf(&out, "%s\n", f.Name)
		d, problems := spec.Load(filepath.Join(dir, f.Name))
		for _, p := range problems {
			t.Errorf("%v", p)
		}
		if len(problems) > 0 {
			continue
		}
		result, problems := rules.Check(d)
		require.Empty(t, problems)
		for _, f := range result.Findings {
			if f.Rule.Name == rule {
				broke = true
				at := f.File.Position(f.Start)
				got = append(got, fmt.Sprintf("%s:%d", short(dir, f.File), at.Line))
				write(&out, dir, f)
			}
		}
		for _, a := range result.Aside {
			if a.Rule.Name == rule {
				fmt.Fprintf(&out, "  stands aside: %s\n", a.Why)
			}
		}
	}
	sort.Strings(want)
	sort.Strings(got)
	assert.Equal(t, want, got, "the lines marked `# finds %s` and those found", rule)
	assert.True(t, broke || strings.Contains(string(archive.Comment), "keeps only"), "the case never breaks the rule")
	if *update {
		file := txtar.File{Name: "findings", Data: []byte(out.String())}
		if golden < 0 {
			archive.Files = append(archive.Files, file)
		} else {
			archive.Files[golden] = file
		}
		require.NoError(t, os.WriteFile(name, txtar.Format(archive), 0o644))
		return
	}
	require.GreaterOrEqual(t, golden, 0, "run go test ./rules -update")
	assert.Equal(t, string(archive.Files[golden].Data), out.String())
}

func short(dir string, f *text.File) string {
	rel, err := filepath.Rel(dir, f.Name)
	if err != nil {
		return f.Name
	}
	return filepath.ToSlash(rel)
}

func write(out *strings.Builder, dir string, f rules.Finding) {
	at := f.File.Position(f.Start)
	fmt.Fprintf(out, "  %s:%d:%d `%s` %s: %s\n", short(dir, f.File), at.Line, at.Column, f.Text(), f.Severity, f.Message)
	for _, r := range f.Related {
		at := r.File.Position(r.Start)
		fmt.Fprintf(out, "    %s:%d:%d `%s` %s\n", short(dir, r.File), at.Line, at.Column, r.Text(), r.Message)
	}
	for _, r := range f.Remedies {
		fmt.Fprintf(out, "    remedy: %s\n", r.Title)
		for _, e := range r.Edits {
			at := e.File.Position(e.Start)
			fmt.Fprintf(out, "      %s:%d:%d `%s` -> `%s`\n", short(dir, e.File), at.Line, at.Column, e.Place.Text(), e.Text)
		}
	}
}
