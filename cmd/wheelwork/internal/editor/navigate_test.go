package editor

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// encodings runs a test with either encoding of positions.
func encodings(t *testing.T, f func(t *testing.T, change func(*Options, map[string]any))) {
	for _, e := range []string{lsp.UTF16, lsp.UTF8} {
		t.Run(e, func(t *testing.T) {
			f(t, func(_ *Options, params map[string]any) {
				params["capabilities"].(map[string]any)["general"] = map[string]any{"positionEncodings": []string{"utf-32", e}}
			})
		})
	}
}

// navigation opens the files of the archives and asks about each of their marks.
func navigation(t *testing.T, f func(t *testing.T, c *client, marks []mark)) {
	for _, name := range []string{"navigate.hcl.txtar", "navigate.toml.txtar"} {
		t.Run(name, func(t *testing.T) {
			encodings(t, func(t *testing.T, change func(*Options, map[string]any)) {
				files, marks := marked(t, name)
				c := start(t, files, change)
				for _, file := range slices.Sorted(maps.Keys(files)) {
					c.open(file)
				}
				for _, file := range slices.Sorted(maps.Keys(files)) {
					c.settled(file, func([]lsp.Diagnostic) bool { return true })
				}
				f(t, c, marks)
			})
		})
	}
}

func (c *client) location(m mark, name string) lsp.Location {
	text := lines.New([]byte(c.text(m.file)))
	return lsp.Location{URI: c.uri(m.file), Range: c.encoding.Range(text, int32(m.offset), int32(m.offset+len(name)))}
}

func sorted(list []lsp.Location) []lsp.Location {
	slices.SortFunc(list, func(a, b lsp.Location) int {
		return cmp.Or(cmp.Compare(a.URI, b.URI), cmp.Compare(a.Range.Start.Line, b.Range.Start.Line), cmp.Compare(a.Range.Start.Character, b.Range.Start.Character))
	})
	return list
}

func TestDefinitionAndReferences(t *testing.T) {
	navigation(t, func(t *testing.T, c *client, marks []mark) {
		for _, m := range marks {
			set, name, _ := strings.Cut(m.what, ":")
			defs, all, uses := []lsp.Location{}, []lsp.Location{}, []lsp.Location{}
			for _, other := range marks {
				if other.what != m.what {
					continue
				}
				all = append(all, c.location(other, name))
				if other.kind == "d" {
					defs = append(defs, c.location(other, name))
				} else {
					uses = append(uses, c.location(other, name))
				}
			}
			var got []lsp.Location
			require.NoError(t, c.at("definition", m, &got))
			switch {
			case set == "":
				assert.Empty(t, got)
				continue
			case set == "file":
				assert.Equal(t, []lsp.Location{{URI: c.uri(name)}}, got)
				continue
			case len(defs) == 0:
				assert.Empty(t, got, m.what)
			default:
				require.Len(t, got, 1, m.what)
				assert.Contains(t, defs, got[0], m.what)
			}
			require.NoError(t, c.at("references", m, &got, "context", map[string]any{"includeDeclaration": true}))
			assert.Equal(t, sorted(all), sorted(got), m.what)
			require.NoError(t, c.at("references", m, &got, "context", map[string]any{"includeDeclaration": false}))
			assert.Equal(t, sorted(uses), sorted(got), m.what)
			var lit []lsp.Highlight
			require.NoError(t, c.at("documentHighlight", m, &lit))
			assert.NotEmpty(t, lit)
			for _, h := range lit {
				assert.Contains(t, all, lsp.Location{URI: c.uri(m.file), Range: h.Range})
			}
		}
	})
}

// A rename changes what is marked and nothing else, and undoes itself.
func TestRename(t *testing.T) {
	navigation(t, func(t *testing.T, c *client, marks []mark) {
		before := map[string]string{}
		for _, m := range marks {
			before[m.file] = c.text(m.file)
		}
		done := map[string]bool{}
		for _, m := range marks {
			set, name, _ := strings.Cut(m.what, ":")
			var edit lsp.WorkspaceEdit
			err := c.at("rename", m, &edit, "newName", "fresh_name")
			if slices.Contains([]string{"", "file", "period", "rule"}, set) {
				assert.Error(t, err, m.what)
				continue
			}
			require.NoError(t, err, m.what)
			if done[m.what] {
				continue
			}
			done[m.what] = true
			c.apply(&edit)
			for file, text := range before {
				want := text
				for _, other := range slices.Backward(marks) {
					if other.file == file && other.what == m.what {
						start, end := other.offset, other.offset+len(name)
						want = want[:start] + "fresh_name" + want[end:]
					}
				}
				got := c.text(file)
				want, got = strings.ReplaceAll(want, `"""`, `"`), strings.ReplaceAll(got, `"""`, `"`)
				assert.Equal(t, want, got, "%s in %s", m.what, file)
			}
			for _, d := range edit.DocumentChanges {
				for file := range before {
					if c.uri(file) == d.TextDocument.URI {
						c.edit(file, 0, len(c.text(file)), before[file])
					}
				}
			}
		}
	})
}
