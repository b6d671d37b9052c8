package tomlread

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

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

var update = flag.Bool("update", false, "write what was read and told into testdata")

// Each case of an archive is a file and what is told of it and read in it.
func TestProblems(t *testing.T) {
	golden(t, "testdata/problems.txtar", func(f *text.File, tree *syntax.Tree, problems []text.Problem) string {
		var out strings.Builder
		for _, p := range problems {
			fmt.Fprintf(&out, "%s %s\n", where(p.Place), p.Message)
			if p.Hint != "" {
				fmt.Fprintf(&out, "    hint: %s\n", p.Hint)
			}
			for _, r := range p.Related {
				fmt.Fprintf(&out, "    %s %s\n", where(r.Place), r.Message)
			}
		}
		return out.String() + show(tree.Blocks) + "\n"
	})
}

func TestPlaces(t *testing.T) {
	golden(t, "testdata/places.txtar", func(f *text.File, tree *syntax.Tree, problems []text.Problem) string {
		require.Empty(t, problems)
		var out strings.Builder
		at := func(s text.Span) string { return where(text.Place{File: f, Span: s}) }
		var blocks func(list []*syntax.Block, indent string)
		blocks = func(list []*syntax.Block, indent string) {
			for _, b := range list {
				fmt.Fprintf(&out, "%s%s kind %s", indent, at(b.At), at(b.KindAt))
				if b.Label != "" {
					fmt.Fprintf(&out, " label %s", at(b.LabelAt))
				}
				out.WriteString("\n")
				for _, a := range b.Attrs {
					fmt.Fprintf(&out, "%s  %s %s\n", indent, at(a.Key), at(a.Value.At))
					for _, e := range a.Value.List {
						fmt.Fprintf(&out, "%s    %s\n", indent, at(e.At))
					}
				}
				blocks(b.Blocks, indent+"  ")
			}
		}
		blocks(tree.Blocks, "")
		return out.String()
	})
}

// where writes a place as line:column with its text, or the ends of a long one.
func where(p text.Place) string {
	at, s := p.File.Position(p.Start), p.Text()
	if lines := strings.Split(s, "\n"); len(lines) > 1 {
		s = lines[0] + " ... " + lines[len(lines)-1]
	}
	return fmt.Sprintf("%d:%d ‹%s›", at.Line, at.Column, s)
}

func golden(t *testing.T, name string, show func(*text.File, *syntax.Tree, []text.Problem) string) {
	archive, err := txtar.ParseFile(name)
	require.NoError(t, err)
	for i := 0; i+1 < len(archive.Files); i += 2 {
		in, want := archive.Files[i], &archive.Files[i+1]
		require.Equal(t, "want", path.Base(want.Name), in.Name)
		f := text.NewFile(in.Name, in.Data)
		tree, problems := Parse(f, forms)
		got := show(f, tree, problems)
		if *update {
			want.Data = []byte(got)
			continue
		}
		t.Run(path.Dir(in.Name), func(t *testing.T) {
			assert.Equal(t, string(want.Data), got)
		})
	}
	if *update {
		require.NoError(t, os.WriteFile(name, txtar.Format(archive), 0o644))
	}
}
