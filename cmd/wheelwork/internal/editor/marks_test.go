package editor

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// mark is a place in a test's text, written there as @{d arbor:day}: its kind,
// and what it says.
type mark struct {
	file   string
	kind   string
	what   string
	offset int
}

var markPattern = regexp.MustCompile(`@\{([^ }]+) ?([^}]*)\}`)

// marked reads an archive of texts with marks.
func marked(t testing.TB, name string) (files map[string]string, marks []mark) {
	a, err := txtar.ParseFile(filepath.Join("testdata", name))
	require.NoError(t, err)
	files = map[string]string{}
	for _, f := range a.Files {
		text, found := unmarked(f.Name, string(f.Data))
		files[f.Name] = text
		marks = append(marks, found...)
	}
	return files, marks
}

func unmarked(file, text string) (string, []mark) {
	var marks []mark
	var out strings.Builder
	at := 0
	for _, m := range markPattern.FindAllStringSubmatchIndex(text, -1) {
		out.WriteString(text[at:m[0]])
		at = m[1]
		what := ""
		if m[4] >= 0 {
			what = text[m[4]:m[5]]
		}
		marks = append(marks, mark{file, text[m[2]:m[3]], what, out.Len()})
	}
	out.WriteString(text[at:])
	return out.String(), marks
}

// position is where a mark stands in the text as the client has it.
func (c *client) position(m mark) lsp.Position {
	return c.encoding.Position(lines.New([]byte(c.text(m.file))), int32(m.offset))
}

// at asks for something at a place of an open file.
func (c *client) at(method string, m mark, result any, more ...any) error {
	params := map[string]any{"textDocument": map[string]any{"uri": c.uri(m.file)}, "position": c.position(m)}
	for i := 0; i+1 < len(more); i += 2 {
		params[more[i].(string)] = more[i+1]
	}
	return c.ask("textDocument/"+method, params, result)
}

// apply makes the edits in the client's documents and tells the server.
func (c *client) apply(w *lsp.WorkspaceEdit) {
	c.t.Helper()
	for _, d := range w.DocumentChanges {
		name, err := filepath.Rel(c.dir, func() string { p, _ := pathOf(d.TextDocument.URI); return p }())
		require.NoError(c.t, err)
		name = filepath.ToSlash(name)
		if c.docs[d.TextDocument.URI] == nil {
			require.Nil(c.t, d.TextDocument.Version)
			c.open(name)
		} else {
			require.NotNil(c.t, d.TextDocument.Version)
			require.Equal(c.t, c.docs[d.TextDocument.URI].version, *d.TextDocument.Version)
		}
		c.textEdits(name, d.Edits)
	}
}

// textEdits makes edits that all refer to the text as it is.
func (c *client) textEdits(name string, list []lsp.TextEdit) {
	c.t.Helper()
	text := lines.New([]byte(c.text(name)))
	type span struct {
		start, end int
		text       string
	}
	var spans []span
	for _, e := range list {
		spans = append(spans, span{int(c.encoding.Offset(text, e.Range.Start)), int(c.encoding.Offset(text, e.Range.End)), e.NewText})
	}
	for len(spans) > 0 { // from the end of the text, so that the rest stays where it is
		last := 0
		for i := range spans {
			if spans[i].start > spans[last].start {
				last = i
			}
		}
		c.edit(name, spans[last].start, spans[last].end, spans[last].text)
		spans = append(spans[:last], spans[last+1:]...)
	}
}
