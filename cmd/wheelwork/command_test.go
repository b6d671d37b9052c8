package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/sample"
	"wheelwork/spec"
)

// Output is the same to the byte on every run, also where designs are checked
// side by side and maps are gone through.
func TestOutputIsTheSameAHundredTimes(t *testing.T) {
	dir := t.TempDir()
	faulty := strings.ReplaceAll(string(sample.Design(24, sample.HCL)), "teeth    = 94", "teeth    = 95")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "faulty.hcl"), []byte(faulty), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "sound.toml"), sample.Design(16, sample.TOML), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "broken.hcl"), []byte("design { titel = 1 }\nwhell \"a\" {}\n"), 0o644))
	for _, args := range [][]string{
		{"check", "--aside", "full", dir},
		{"check", "--format", "json", dir},
		{"motion", "--json", filepath.Join(dir, "faulty.hcl")},
		{"motion", filepath.Join(dir, "sound.toml")},
		{"setting", "--date", "2031-05-06", filepath.Join(dir, "faulty.hcl")},
		{"measure", "--json", filepath.Join(dir, "faulty.hcl")},
		{"cutlist", "--format", "csv", filepath.Join(dir, "sound.toml")},
		{"rules"},
		{"help", "language"},
	} {
		first := said(args)
		require.NotEmpty(t, first)
		for range 99 {
			require.Equal(t, first, said(args), "%v", args)
		}
	}
}

func TestNoCommand(t *testing.T) {
	var stdout, stderr strings.Builder
	c := Command{Stdout: &stdout, Stderr: &stderr}
	assert.Equal(t, unusable, c.Main(nil))
	assert.Empty(t, stdout.String())
	assert.Contains(t, stderr.String(), "wheelwork check")
}

func TestVersion(t *testing.T) {
	for _, args := range [][]string{{"version"}, {"--version"}} {
		assert.Regexp(t, `^wheelwork \S.* go1\.`, said(args))
	}
}

// The example that help begins with is a design that checks clean.
func TestTheExampleOfHelpIsSound(t *testing.T) {
	_, design, _ := strings.Cut(begin, "\n  design")
	design, _, _ = strings.Cut("  design"+design, "\n  wheelwork check")
	name := filepath.Join(t.TempDir(), "moon.hcl")
	require.NoError(t, os.WriteFile(name, []byte(design), 0o644))
	_, problems := spec.Load(name)
	require.Empty(t, problems)
	assert.NotContains(t, said([]string{"check", "--fail-on", "error", name}), "exit")
}

// Every command tells of itself, with examples whose options it has.
func TestEveryCommandHasHelp(t *testing.T) {
	for _, v := range verbs() {
		page := said([]string{"help", v.name})
		assert.Contains(t, page, "wheelwork "+v.name)
		assert.NotRegexp(t, `(?m)^exit `, page)
		assert.Equal(t, page, said([]string{v.name, "--help"}))
		for _, e := range v.examples {
			for _, word := range strings.Fields(e.line) {
				if name, ok := strings.CutPrefix(word, "--"); ok {
					assert.Contains(t, page, "\n  --"+name, "%s", e.line)
				}
			}
		}
	}
}

// What cannot be written is not passed over.
func TestAFullDisk(t *testing.T) {
	var stderr strings.Builder
	c := Command{Stdout: full{}, Stderr: &stderr}
	assert.Equal(t, unusable, c.Main([]string{"help"}))
	assert.Contains(t, stderr.String(), "no space left")
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// Colours are for terminals: a pipe, a file and NO_COLOR get none.
func TestColoursAreForTerminals(t *testing.T) {
	read, write, err := os.Pipe()
	require.NoError(t, err)
	defer read.Close()
	defer write.Close()
	c := Command{}
	auto := &choice{word: "auto"}
	for _, w := range []io.Writer{write, io.Discard, &strings.Builder{}} {
		assert.False(t, c.coloured(w, auto))
		assert.True(t, c.coloured(w, &choice{word: "always"}))
	}
	if terminal, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0); err == nil {
		defer terminal.Close()
		t.Setenv("TERM", "xterm")
		t.Setenv("NO_COLOR", "")
		assert.True(t, c.coloured(terminal, auto))
		assert.False(t, c.coloured(terminal, &choice{word: "never"}))
		t.Setenv("TERM", "dumb")
		assert.False(t, c.coloured(terminal, auto))
		t.Setenv("TERM", "xterm")
		t.Setenv("NO_COLOR", "1")
		assert.False(t, c.coloured(terminal, auto))
	}
}
