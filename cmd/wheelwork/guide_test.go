package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/inspect"
)

// fence is a fenced part of a Markdown file: what kind it is, the name of the
// file it shows if it has one, and its text.
var fence = regexp.MustCompile("(?ms)^```(\\w+)(?: (\\S+))?\n(.*?)^```$")

// What the guides show is true: their files read without a problem and check
// without an error, and the commands say what they are shown to say.
func TestGuides(t *testing.T) {
	guides, err := filepath.Glob("../../docs/*.md")
	require.NoError(t, err)
	for _, name := range append(guides, "../../README.md") {
		name, err := filepath.Abs(name)
		require.NoError(t, err)
		t.Run(filepath.Base(name), func(t *testing.T) { follow(t, name) })
	}
}

func follow(t *testing.T, name string) {
	content, err := os.ReadFile(name)
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	files := false
	for _, m := range fence.FindAllStringSubmatch(string(content), -1) {
		if m[2] != "" {
			files = true
			require.NoError(t, os.MkdirAll(filepath.Dir(m[2]), 0o755))
			require.NoError(t, os.WriteFile(m[2], []byte(m[3]), 0o644))
		}
	}
	if files && !strings.Contains(string(content), "\nexit 1\n") { // the page shows none that is faulty
		for _, d := range inspect.Find([]string{"."}) {
			assert.NotContains(t, said([]string{"check", "--aside", "off", "--fail-on", "error", d.Name}), "\nexit", "%s", d.Name)
		}
	}
	shown := fence.ReplaceAllStringFunc(string(content), func(s string) string {
		m := fence.FindStringSubmatch(s)
		command, ok := strings.CutPrefix(m[3], "$ wheelwork ")
		if m[1] != "console" || !ok {
			return s
		}
		command, _, _ = strings.Cut(command, "\n")
		says := "$ wheelwork " + command + "\n" + said(strings.Fields(command))
		if !*update {
			assert.Equal(t, m[3], says)
		}
		return "```console\n" + says + "```"
	})
	if *update {
		require.NoError(t, os.WriteFile(name, []byte(shown), 0o644))
	}
}
