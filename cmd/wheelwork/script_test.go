package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"
)

var update = flag.Bool("update", false, "write what the commands said into the transcripts")

// Each archive of testdata holds files and a transcript: the lines that begin
// with "$ " are run in the folder of the files, what follows is what they say.
// Lines of standard error begin with "! ", and the exit code stands at the end
// where it is not 0.
func TestTranscripts(t *testing.T) {
	archives, err := filepath.Glob("testdata/*.txtar")
	require.NoError(t, err)
	require.NotEmpty(t, archives)
	for _, name := range archives {
		name, err := filepath.Abs(name)
		require.NoError(t, err)
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) { play(t, name) })
	}
}

func play(t *testing.T, name string) {
	archive, err := txtar.ParseFile(name)
	require.NoError(t, err)
	dir := t.TempDir()
	var transcript *txtar.File
	for i, f := range archive.Files {
		if f.Name == "transcript" {
			transcript = &archive.Files[i]
			continue
		}
		to := filepath.Join(dir, filepath.FromSlash(f.Name))
		require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
		require.NoError(t, os.WriteFile(to, f.Data, 0o644))
	}
	require.NotNil(t, transcript, "no transcript")
	t.Chdir(dir)
	var out strings.Builder
	for line := range strings.Lines(string(transcript.Data)) {
		if command, ok := strings.CutPrefix(strings.TrimSpace(line), "$ wheelwork"); ok {
			fmt.Fprintf(&out, "$ wheelwork%s\n%s", command, said(strings.Fields(command)))
		}
	}
	if *update {
		transcript.Data = []byte(out.String())
		require.NoError(t, os.WriteFile(name, txtar.Format(archive), 0o644))
		return
	}
	assert.Equal(t, string(transcript.Data), out.String())
}

// said runs a command line and writes down what it said.
func said(args []string) string {
	var stdout, stderr, out strings.Builder
	c := Command{Stdin: strings.NewReader(""), Stdout: &stdout, Stderr: &stderr}
	code := c.Main(args)
	out.WriteString(stdout.String())
	for line := range strings.Lines(stderr.String()) {
		out.WriteString("! " + line)
	}
	if code != clean {
		fmt.Fprintf(&out, "exit %d\n", code)
	}
	return out.String()
}
