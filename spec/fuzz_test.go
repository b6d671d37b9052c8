package spec

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/spec/text"
)

// seeds are all specs of the fixtures, wrong ones and right ones.
func seeds(f *testing.F, add func(name, content string)) {
	cases, err := filepath.Glob(filepath.Join(casesDir, "*.txtar"))
	require.NoError(f, err)
	for _, name := range cases {
		archive, err := txtar.ParseFile(name)
		require.NoError(f, err)
		for _, file := range archive.Files {
			add(file.Name, string(file.Data))
		}
	}
	for _, pattern := range []string{"../fixtures/designs/*/*", "../fixtures/trains/*"} {
		files, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, name := range files {
			content, err := os.ReadFile(name)
			require.NoError(f, err)
			add(name, string(content))
		}
	}
}

func FuzzLoad(f *testing.F) {
	seeds(f, func(name, content string) {
		if ext := filepath.Ext(name); ext == ".hcl" || ext == ".toml" {
			f.Add(content, ext == ".hcl")
		}
	})
	dir := tree(f, map[string]string{"moon.hcl": "arbor \"moon\" {}\n", "stock.toml": "[stock]\nteeth = [\"12-40\"]\n"})
	f.Fuzz(func(t *testing.T, content string, hcl bool) {
		name := filepath.Join(dir, "table.toml")
		if hcl {
			name = filepath.Join(dir, "table.hcl")
		}
		loader := Loader{Overlay: func(path string) ([]byte, bool) { return []byte(content), path == name }}
		d, problems := loader.Load(name)
		require.NotNil(t, d)
		for _, p := range problems {
			inside(t, p.Place)
			require.Less(t, len(p.Message)+len(p.Hint), 1000)
			for _, words := range []string{p.Message, p.Hint} {
				require.Equal(t, words, printable(words))
			}
			for _, r := range p.Related {
				inside(t, r.Place)
			}
		}
		parts(t, d.Arbors)
		parts(t, d.Arms)
		parts(t, d.Wheels)
		parts(t, d.Sprockets)
		parts(t, d.Meshes)
		parts(t, d.Chains)
		parts(t, d.Hands)
		parts(t, d.Stages)
		require.LessOrEqual(t, len(problems), MostProblems+1)

		_, again := loader.Load(name)
		require.Equal(t, lines(problems), lines(again))
		for _, a := range d.Arms { // the way to the frame ends
			steps := 0
			for b := a; b != nil && b.Arbor != nil; b = b.Arbor.Carrier {
				steps++
				require.LessOrEqual(t, steps, len(d.Arms))
			}
		}
	})
}

func parts[P part](t *testing.T, list []P) {
	for _, p := range list {
		inside(t, p.part().At)
		inside(t, p.part().Head)
		require.True(t, p.part().At.Covers(p.part().Head.Span), p.part().Title())
	}
}

func inside(t *testing.T, p text.Place) {
	require.True(t, p.Known())
	require.True(t, 0 <= p.Start && p.Start <= p.End && int(p.End) <= len(p.File.Bytes), "%s %v of %d", p.File.Name, p.Span, len(p.File.Bytes))
	at := p.File.Position(p.Start)
	require.True(t, at.Line >= 1 && at.Column >= 1)
}

func FuzzWaivers(f *testing.F) {
	for _, s := range []string{
		"# waive drift: by hand\narbor \"a\" {}\n",
		"[arbor.a] # waive drift: by hand\n# waive tilt: x\nfrom = 3\n",
		"/* waive a: b */ arbor \"a\" { /* x */ # waive c: d\n}",
		"// waive x: y\r\n\r\n# more\r\nmesh { wheels = [\"a\", # waive z: q\r\n\"b\"] }",
		"/* waive a: b\n*/ /* c */ # d\n\n",
	} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, content string, hcl bool) {
		name := "x.toml"
		if hcl {
			name = "x.hcl"
		}
		d, _ := loadNamed(t, name, content)
		for i := range d.Waivers {
			w := &d.Waivers[i]
			inside(t, w.At)
			inside(t, w.RuleAt)
			inside(t, text.Place{File: w.At.File, Span: w.Scope})
			require.Equal(t, w.Rule, w.RuleAt.Text())
			require.True(t, w.At.Covers(w.RuleAt.Span))
			require.True(t, strings.HasPrefix(w.At.Text(), "waive"))
			require.NotEmpty(t, w.Rule)
			// It covers the line it stands on, or begins behind it.
			line := w.At.File.Position(w.At.Start).Line
			first := w.At.File.Position(w.Scope.Start).Line
			require.True(t, first >= line || w.Scope.Covers(w.At.Span), "%q", content)
			if i > 0 {
				require.Less(t, d.Waivers[i-1].At.Start, w.At.Start)
			}
		}
	})
}
