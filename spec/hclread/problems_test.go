package hclread

import (
	"flag"
	"fmt"
	"os"
	"path"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/spec/text"
)

var update = flag.Bool("update", false, "write what was told into testdata")

// Each case of an archive is a folder of files that are read as one design,
// and what is told of them: place, the text there, the message. Every case
// reads on after its fault, so the archive also holds that one fault gives one
// problem and hides no later one.
func TestProblems(t *testing.T) {
	for _, name := range []string{"testdata/language.txtar", "testdata/structure.txtar", "testdata/given.txtar"} {
		archive, err := txtar.ParseFile(name)
		require.NoError(t, err)
		var files []*text.File
		for i, f := range archive.Files {
			folder, base := path.Split(f.Name)
			if base != "want" {
				files = append(files, text.NewFile(base, f.Data))
				continue
			}
			got := told(files)
			files = nil
			if *update {
				archive.Files[i].Data = []byte(got)
				continue
			}
			t.Run(strings.TrimSuffix(folder, "/"), func(t *testing.T) {
				assert.Equal(t, string(f.Data), got)
			})
		}
		require.Empty(t, files, "a case without want")
		if *update {
			require.NoError(t, os.WriteFile(name, txtar.Format(archive), 0o644))
		}
	}
}

// told is what reading the files as one design tells.
func told(files []*text.File) string {
	var sources []*Source
	var problems []text.Problem
	for _, f := range files {
		s, p := Parse(f)
		sources = append(sources, s)
		problems = append(problems, p...)
	}
	_, p := Evaluate(sources)
	var out strings.Builder
	for _, p := range append(problems, p...) {
		write(&out, "", p.Place, p.Message)
		if p.Hint != "" {
			fmt.Fprintf(&out, "    hint: %s\n", p.Hint)
		}
		for _, r := range p.Related {
			write(&out, "    ", r.Place, r.Message)
		}
	}
	return out.String()
}

func write(out *strings.Builder, indent string, p text.Place, message string) {
	at := p.File.Position(p.Start)
	fmt.Fprintf(out, "%s%s:%d:%d [%s] %s\n", indent, p.File.Name, at.Line, at.Column, p.Text(), message)
}
