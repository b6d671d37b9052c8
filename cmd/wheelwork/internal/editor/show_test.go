package editor

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// harbour runs a test on the harbour's table in either notation.
func harbour(t *testing.T, f func(t *testing.T, ext string, c *client), change ...func(*Options, map[string]any)) {
	for ext, dir := range map[string]string{"hcl": "harbour-table", "toml": "harbour-table-toml"} {
		t.Run(ext, func(t *testing.T) { f(t, ext, start(t, folderOf(t, filepath.Join(designs, dir)), change...)) })
	}
}

func (c *client) about(method, name string, result any, more ...any) {
	c.t.Helper()
	params := map[string]any{"textDocument": map[string]any{"uri": c.uri(name)}}
	for i := 0; i+1 < len(more); i += 2 {
		params[more[i].(string)] = more[i+1]
	}
	c.call("textDocument/"+method, params, result)
}

// The parts of the mean Moon's train stand together, each with its place.
func TestSymbols(t *testing.T) {
	harbour(t, func(t *testing.T, ext string, c *client) {
		name := "moon." + ext
		c.open(name)
		c.settled(name, none)
		var list []lsp.DocumentSymbol
		c.about("documentSymbol", name, &list)
		byName := map[string]lsp.DocumentSymbol{}
		var children []string
		text := lines.New([]byte(c.text(name)))
		for _, s := range list {
			byName[s.Name] = s
			for _, child := range s.Children {
				children = append(children, child.Name+": "+child.Detail)
				assert.False(t, child.Range.Start.Before(s.Range.Start), child.Name)
				assert.False(t, s.Range.End.Before(child.Range.End), child.Name)
			}
		}
		require.Contains(t, byName, "moon")
		assert.Equal(t, "train", byName["moon"].Detail)
		assert.Equal(t, []string{
			"moon_pinion: wheel, 24 teeth", "moon_lay_wheel: wheel, 105 teeth", "moon_lay_pinion: wheel, 20 teeth", "moon_wheel: wheel, 135 teeth",
			"moon_pinion/moon_lay_wheel: mesh", "moon_lay_pinion/moon_wheel: mesh",
		}, children)
		for _, s := range []string{"moon_age", "moon_clutch", "moon_lay"} {
			require.Contains(t, byName, s)
			at := byName[s].Selection
			selected := string(text.Bytes[c.encoding.Offset(text, at.Start):c.encoding.Offset(text, at.End)])
			assert.Equal(t, s, strings.Trim(selected, `"`))
		}
	})
}

// A client that shows no tree gets a list.
func TestFlatSymbols(t *testing.T) {
	harbour(t, func(t *testing.T, ext string, c *client) {
		name := "moon." + ext
		c.open(name)
		var list []lsp.SymbolInformation
		c.about("documentSymbol", name, &list)
		found := false
		for _, s := range list {
			found = found || s.Name == "moon_wheel" && s.Container == "moon"
			assert.Equal(t, c.uri(name), s.Location.URI)
		}
		assert.True(t, found)
	}, func(_ *Options, params map[string]any) {
		delete(params["capabilities"].(map[string]any)["textDocument"].(map[string]any), "documentSymbol")
	})
}

// The computed period stands beside the hand and the distance beside the mesh:
// of the spec's own figures.
func TestHints(t *testing.T) {
	harbour(t, func(t *testing.T, ext string, c *client) {
		name := "moon." + ext
		c.open(name)
		c.settled(name, none)
		text := lines.New([]byte(c.text(name)))
		whole := c.encoding.Range(text, 0, int32(len(text.Bytes)))
		var list []lsp.InlayHint
		c.about("inlayHint", name, &list, "range", whole)
		got := map[string]string{}
		for _, h := range list {
			at := c.encoding.Offset(text, h.Position)
			line := text.LineOf(at)
			got[strings.Join(strings.Fields(string(text.Bytes[text.Start(line):at])), " ")] = h.Label
		}
		assert.Equal(t, map[string]string{
			`shows = "synodic month"`:                    "29.53125 d, +22.4 ppm",
			`wheels = ["moon_pinion", "moon_lay_wheel"]`: "centres 38.8 mm",
			`wheels = ["moon_lay_pinion", "moon_wheel"]`: "centres 38.8 mm",
		}, got)

		c.about("inlayHint", name, &list, "range", c.encoding.Range(text, 0, 10))
		assert.Empty(t, list, "only what is shown")

		c.replace(name, "= 24", "= ")
		c.about("inlayHint", name, &list, "range", whole)
		assert.Empty(t, list, "text that is broken")
	})
}

// Formatting sets HCL out and changes nothing else; TOML and broken text stay.
func TestFormatting(t *testing.T) {
	crooked := "design {\r\n title=\"𐐀\"\r\n\tepoch   = \"2027-01-01\"   # set\r\n}\r\narbor \"a\" {  at = [ 0,0 ]   diameter=3 }\r\n"
	c := start(t, map[string]string{"a.hcl": crooked, "b.toml": "[design]\ntitle=\"b\"\n"})
	c.open("a.hcl")
	c.open("b.toml")
	var list []lsp.TextEdit
	c.about("formatting", "a.hcl", &list, "options", map[string]any{"tabSize": 2, "insertSpaces": true})
	c.textEdits("a.hcl", list)
	assert.Equal(t, "design {\r\n  title = \"𐐀\"\r\n  epoch = \"2027-01-01\" # set\r\n}\r\narbor \"a\" { at = [0, 0] diameter = 3 }\r\n", c.text("a.hcl"))
	list = nil
	c.about("formatting", "a.hcl", &list)
	assert.Empty(t, list, "set out already")
	c.replace("a.hcl", "= [0", "= ]0")
	c.about("formatting", "a.hcl", &list)
	assert.Empty(t, list)
	c.about("formatting", "b.toml", &list)
	assert.Empty(t, list)
}

// Every fixture in HCL can be set out, and says the same then.
func TestFormattingFixtures(t *testing.T) {
	for name, text := range folderOf(t, filepath.Join(designs, "harbour-table")) {
		if filepath.Ext(name) != ".hcl" {
			continue
		}
		q := &inquiry{doc: &document{path: name, named: name, text: lines.New([]byte(text))}, view: view{Encoding: lsp.UTF16}}
		result, err := format(q, nil)
		require.NoError(t, err)
		assert.Empty(t, result, "%s is set out already", name)
		ragged := strings.ReplaceAll(strings.ReplaceAll(text, "  ", " "), " = ", "=")
		q.doc.text = lines.New([]byte(ragged))
		result, err = format(q, nil)
		require.NoError(t, err)
		assert.NotEmpty(t, result, name)
	}
}
