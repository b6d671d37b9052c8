package hclread

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// seeds are the texts of the archives in testdata, and a few that no archive
// holds well.
func seeds(f *testing.F) {
	for _, name := range []string{"testdata/language.txtar", "testdata/structure.txtar", "testdata/given.txtar"} {
		archive, err := txtar.ParseFile(name)
		require.NoError(f, err)
		for _, file := range archive.Files {
			if strings.HasSuffix(file.Name, ".hcl") {
				f.Add(file.Data)
			}
		}
	}
	f.Add([]byte("\xef\xbb\xbfwheel \"a\" {\r\n  on = \"x\" // y\r\n}\r\n"))
	f.Add([]byte("wheel \"a\xff\" {\n  on\x00 = 1\r}\n"))
	f.Add([]byte("given { m = 0.5 }\nwheel \"a\" { v = -(given.m + 1) * 2 % 3 / - -4  w = [given.m, [\"$${\\u00e9\", true]] }\n"))
	f.Add(generated(2))
}

// Whatever the bytes, places lie within the file and within each other,
// reading again tells the same, and the reference parser agrees.
func FuzzParse(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, content []byte) {
		if len(content) > 1<<14 {
			return
		}
		file := text.NewFile("a.hcl", content)
		s, problems := Parse(file)
		trees, more := Evaluate([]*Source{s})
		again, problemsAgain := Parse(file)
		treesAgain, moreAgain := Evaluate([]*Source{again})
		require.Equal(t, problems, problemsAgain)
		require.Equal(t, more, moreAgain)
		require.Equal(t, trees, treesAgain)

		whole := text.Span{End: int32(len(content))}
		inside := func(outer, inner text.Span) {
			if !outer.Covers(inner) || inner.Start > inner.End {
				t.Fatalf("place %v outside %v", inner, outer)
			}
		}
		for _, p := range append(problems, more...) {
			inside(whole, p.Span)
			require.NotEmpty(t, p.Message)
			for _, r := range p.Related {
				inside(whole, r.Span)
			}
		}
		for i, c := range s.Comments() {
			inside(whole, c)
			if i > 0 && c.Start < s.Comments()[i-1].End {
				t.Fatalf("comments %v and %v overlap", s.Comments()[i-1], c)
			}
		}
		var value func(outer text.Span, v syntax.Value)
		value = func(outer text.Span, v syntax.Value) {
			inside(outer, v.At)
			for _, x := range v.List {
				value(v.At, x)
			}
			if v.Kind == syntax.Invalid && len(problems)+len(more) == 0 {
				t.Fatalf("no problem tells why the value at %v is invalid", v.At)
			}
		}
		var walk func(outer text.Span, blocks []*syntax.Block)
		walk = func(outer text.Span, blocks []*syntax.Block) {
			last := outer.Start
			for _, b := range blocks {
				inside(outer, b.At)
				inside(b.At, b.KindAt)
				require.Equal(t, b.Kind, string(content[b.KindAt.Start:b.KindAt.End]))
				require.LessOrEqual(t, last, b.At.Start)
				last = b.At.End
				if b.LabelAt.Len() > 0 {
					inside(b.At, b.LabelAt)
				}
				for _, a := range b.Attrs {
					inside(b.At, a.Key)
					require.Equal(t, a.Name, string(content[a.Key.Start:a.Key.End]))
					value(b.At, a.Value)
				}
				walk(b.At, b.Blocks)
			}
		}
		walk(whole, trees[0].Blocks)
		agree(t, file)
	})
}
