//go:build unix

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const asCommand = "WHEELWORK_TEST_AS_COMMAND"

// TestMain lets the test's program be the command itself, for shells to call.
func TestMain(m *testing.M) {
	if os.Getenv(asCommand) != "" {
		main()
	}
	os.Exit(m.Run())
}

// The scripts complete in the shells they are for, where those are installed.
func TestShellsComplete(t *testing.T) {
	for _, shell := range []struct {
		name   string
		script string // completes the line that its arguments are
	}{
		{"bash", `source <(wheelwork completion bash); COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _wheelwork; printf '%s\n' "${COMPREPLY[@]}"`},
		{"zsh", `compdef() { :; }; _files() { print files; }; _describe() { print -rl -- "${(@P)3}"; }
			source <(wheelwork completion zsh); words=("$@"); CURRENT=$#; _wheelwork`},
		{"fish", `wheelwork completion fish | source; complete --do-complete "$argv"`},
	} {
		t.Run(shell.name, func(t *testing.T) {
			path, err := exec.LookPath(shell.name)
			if err != nil {
				t.Skip(shell.name, "is not installed")
			}
			for _, c := range []struct{ line, wants, lacks string }{
				{"wheelwork mo", "motion", "check"},
				{"wheelwork rules undriv", "undriven", "period-error"},
				{"wheelwork check --fo", "--format", "--fail-on"},
				{"wheelwork check --format j", "json", "text"},
				{"wheelwork check --only undriven,peri", "undriven,period-error", "stale-waiver"},
				{"wheelwork completion z", "zsh", "fish"},
			} {
				out := complete(t, path, shell.script, c.line)
				assert.Contains(t, out, c.wants, "%s", c.line)
				assert.NotContains(t, out, c.lacks, "%s", c.line)
			}
		})
	}
}

func complete(t *testing.T, shell, script, line string) string {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	dir := t.TempDir()
	require.NoError(t, os.Symlink(self, filepath.Join(dir, "wheelwork")))
	args := []string{"-c", script}
	if filepath.Base(shell) != "fish" {
		args = append(args, shell) // $0
	}
	args = append(args, strings.Fields(line)...)
	c := exec.Command(shell, args...)
	c.Dir = dir
	c.Env = append(os.Environ(), asCommand+"=1", "HOME="+dir, "PATH="+dir+string(os.PathListSeparator)+os.Getenv("PATH"))
	out, err := c.CombinedOutput()
	require.NoError(t, err, "%s", out)
	return string(out)
}
