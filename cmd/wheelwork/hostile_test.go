package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hostile is a text that is no design, with the place and some words of what
// must be told of it.
type hostile struct{ file, text, at, words string }

var hostileFiles = map[string]hostile{
	"it uses a huge file":      {"x.hcl", "design {\n  title = \"x\"\n  uses = [\"huge.toml\"]\n}\n", "x.hcl:3:11", "100 MB, at most 32 MB"},
	"a huge file":              {"huge.toml", "", "huge.toml", "100 MB, at most 32 MB"},
	"a huge file in HCL":       {"huge.hcl", "", "huge.hcl", "100 MB, at most 32 MB"},
	"a device by a link":       {"zero.hcl", "", "zero.hcl", "leads out of the repository"},
	"a device":                 {"/dev/zero", "", "/dev/zero", "no spec file"},
	"a file that is not there": {"no.hcl", "", "no.hcl", "does not exist"},
}

const (
	hclHead  = "design {\n  title = \"x\"\n}\n"
	tomlHead = "[design]\ntitle = \"x\"\n"
)

func TestHostileText(t *testing.T) {
	for notation, cases := range map[string]map[string]hostile{"HCL": hostileHCL, "TOML": hostileTOML, "file": hostileFiles} {
		for name, c := range cases {
			t.Run(notation+"/"+name, func(t *testing.T) { c.run(t) })
		}
	}
}

func (c hostile) run(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, ".git"), 0o755))
	path := c.file
	if !filepath.IsAbs(path) {
		path = filepath.Join(dir, path)
	}
	switch c.file {
	case "x.hcl", "x.toml":
		require.NoError(t, os.WriteFile(path, []byte(c.text), 0o644))
	}
	if strings.Contains(c.file+c.text, "zero.hcl") {
		if err := os.Symlink("/dev/zero", filepath.Join(dir, "zero.hcl")); err != nil {
			t.Skip("no links here:", err)
		}
	}
	for _, huge := range []string{"huge.hcl", "huge.toml"} {
		if strings.Contains(c.file+c.text, huge) {
			require.NoError(t, os.WriteFile(filepath.Join(dir, huge), []byte("[design]\n"), 0o644))
			require.NoError(t, os.Truncate(filepath.Join(dir, huge), 100<<20))
		}
	}
	code, out := checked(t, path)
	out = strings.ReplaceAll(out, dir+string(filepath.Separator), "")
	assert.Equal(t, unusable, code)
	assert.Less(t, len(out), 5000, "the report is short")
	told := ""
	for _, line := range strings.Split(out, "\n") {
		if strings.HasPrefix(line, c.at) && strings.Contains(line, c.words) {
			told = line
			break
		}
	}
	assert.NotEmpty(t, told, "at %s there should be told of %q:\n%.3000s", c.at, c.words, out)
	assert.Less(t, len(told), 400, "the message is short")
}

// checked runs `check`. It fails where that takes so long that it may never end.
func checked(t *testing.T, path string) (code int, out string) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	done := make(chan int, 1)
	go func() {
		c := Command{Stdin: strings.NewReader(""), Stdout: &stdout, Stderr: &stderr}
		done <- c.Main([]string{"check", path})
	}()
	select {
	case code = <-done:
	case <-time.After(time.Minute):
		t.Fatal("it does not end")
	}
	assert.Empty(t, stderr.String())
	return code, stdout.String()
}

// What is odd but right is read.
func TestOddButRightText(t *testing.T) {
	for name, c := range map[string]struct{ file, text string }{
		"BOM":                    {"x.hcl", "\ufeff" + hclHead},
		"BOM in TOML":            {"x.toml", "\ufeff" + tomlHead},
		"CRLF":                   {"x.hcl", strings.ReplaceAll(hclHead, "\n", "\r\n")},
		"CRLF in TOML":           {"x.toml", strings.ReplaceAll(tomlHead, "\n", "\r\n")},
		"no line end":            {"x.hcl", "design { title = \"x\" }"},
		"no line end in TOML":    {"x.toml", "[design]\ntitle = \"x\""},
		"a long comment":         {"x.hcl", hclHead + "# " + strings.Repeat("so on ", 200_000) + "\n"},
		"many empty lines":       {"x.toml", tomlHead + strings.Repeat("\n", 1_000_000)},
		"a long title":           {"x.hcl", "design { title = \"" + strings.Repeat("so on ", 100_000) + "\" }\n"},
		"names of other scripts": {"x.hcl", hclHead + "arbor \"Äquator\" {}\narbor \"赤道\" {}\narbor \"🌙\" {}\n"},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), c.file)
			require.NoError(t, os.WriteFile(path, []byte(c.text), 0o644))
			code, out := checked(t, path)
			assert.Equal(t, clean, code, out)
		})
	}
}
