package editor

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// faulty is the date ring with a tooth too many.
func faulty(ext string) map[string]string {
	files := map[string]string{}
	for name, text := range dateRing[ext] {
		files[name] = strings.Replace(text, "teeth = 30", "teeth = 31", 1)
	}
	return files
}

func notations(t *testing.T, f func(t *testing.T, ext string)) {
	for _, ext := range []string{"hcl", "toml"} {
		t.Run(ext, func(t *testing.T) { f(t, ext) })
	}
}

func without(key string) func(*Options, map[string]any) {
	return func(_ *Options, params map[string]any) { delete(params, key) }
}

// Designs in the folders that are open are checked also where no file is.
func TestDesignsOfTheFolder(t *testing.T) {
	notations(t, func(t *testing.T, ext string) {
		c := start(t, faulty(ext))
		c.settled("ring."+ext, any1)
		assert.Nil(t, c.published[c.uri("ring."+ext)].Version, "not open")
		c.open("ring." + ext)
		c.settled("ring."+ext, any1)
	})
}

// A file that a design uses brings in the design, wherever in the repository
// that lies and whatever folder is open.
func TestDesignOfAnOpenFile(t *testing.T) {
	notations(t, func(t *testing.T, ext string) {
		files := map[string]string{}
		for name, text := range faulty(ext) {
			if strings.HasPrefix(name, "ring") {
				name = "parts/" + name
			}
			files[name] = strings.Replace(text, "\"ring.", "\"parts/ring.", 1)
		}
		for _, change := range []func(*Options, map[string]any){
			without("workspaceFolders"),
			func(_ *Options, params map[string]any) {
				folder := params["workspaceFolders"].([]any)[0].(map[string]any)
				folder["uri"] = folder["uri"].(lsp.URI) + "/parts"
			},
		} {
			c := start(t, files, change)
			c.open("parts/ring." + ext)
			c.settled("parts/ring."+ext, any1)
		}
	})
}

// Files that belong to no design have nothing said of them, and no answer hurts.
func TestNoDesign(t *testing.T) {
	c := start(t, map[string]string{"other.hcl": "variable \"x\" {}\n", "build.toml": "[package]\nname = \"x\"\n", "notes.txt": "design {"})
	for _, name := range []string{"other.hcl", "build.toml"} {
		c.open(name)
		c.settled(name, none)
		c.edit(name, 0, 0, "[[[\n")
		c.settled(name, none)
		for _, method := range []string{"hover", "definition", "documentSymbol", "completion"} {
			require.NoError(t, c.at(method, mark{file: name, offset: 1}, nil))
		}
	}
	c.open("notes.txt")
	require.NoError(t, c.at("hover", mark{file: "notes.txt"}, nil))
	c.notify("textDocument/didOpen", map[string]any{"textDocument": map[string]any{"uri": "untitled:1", "languageId": "x", "version": 1, "text": "design {}"}})
	var h *lsp.Hover
	c.call("textDocument/hover", map[string]any{"textDocument": map[string]any{"uri": "untitled:1"}, "position": lsp.Position{}}, &h)
	assert.Nil(t, h)
	assert.Equal(t, 0, c.leave())
}

// A design is there as soon as its block is typed, and gone when the file is
// closed without it.
func TestTypedDesign(t *testing.T) {
	notations(t, func(t *testing.T, ext string) {
		c := start(t, map[string]string{"new." + ext: "# nothing yet\n"})
		name := "new." + ext
		c.open(name)
		c.settled(name, none)
		c.edit(name, 0, 0, map[string]string{"hcl": "design {}\n", "toml": "[design]\n"}[ext])
		list := c.settled(name, any1)
		assert.Contains(t, list[0].Message, "design needs title")
		c.edit(name, 0, 1, "x")
		c.settled(name, any1) // it stays one while it is open
		c.notify("textDocument/didClose", map[string]any{"textDocument": map[string]any{"uri": c.uri(name)}})
		c.mu.Lock()
		delete(c.docs, c.uri(name))
		c.mu.Unlock()
		c.settled(name, none)
	})
}

// A file that is closed counts as it is on disk.
func TestClosed(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		c.replace(ring, "30", "31")
		c.settled(ring, any1)
		c.notify("textDocument/didClose", map[string]any{"textDocument": map[string]any{"uri": c.uri(ring)}})
		c.mu.Lock()
		delete(c.docs, c.uri(ring))
		c.mu.Unlock()
		c.settled(ring, none)
	})
}

// What changes on disk beside the editor is seen when the client tells of it,
// or else when a file is saved.
func TestChangedOnDisk(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring, date := "ring."+ext, "date."+ext
		c.open(date)
		c.settled(date, none)
		write := func(text string) {
			require.NoError(t, os.WriteFile(filepath.Join(c.dir, ring), []byte(text), 0o644))
		}
		told := func(names ...string) {
			var changes []any
			for _, name := range names {
				changes = append(changes, map[string]any{"uri": c.uri(name), "type": 2})
			}
			c.notify("workspace/didChangeWatchedFiles", map[string]any{"changes": changes})
		}
		write(faulty(ext)[ring])
		told(ring)
		c.settled(ring, any1)
		write(dateRing[ext][ring])
		c.notify("textDocument/didSave", map[string]any{"textDocument": map[string]any{"uri": c.uri(date)}})
		c.settled(ring, none)

		// A file that is missing, and comes back.
		require.NoError(t, os.Remove(filepath.Join(c.dir, ring)))
		told(ring)
		assert.Contains(t, c.settled(date, any1)[0].Message, "does not exist")
		write(dateRing[ext][ring])
		told(ring)
		c.settled(date, none)

		// Another design that comes and goes.
		other := "other." + ext
		require.NoError(t, os.WriteFile(filepath.Join(c.dir, other), []byte(map[string]string{"hcl": "design {}\n", "toml": "[design]\n"}[ext]), 0o644))
		told(other)
		c.settled(other, any1)
		require.NoError(t, os.Remove(filepath.Join(c.dir, other)))
		told(other)
		c.settled(other, none)
	})
}

// A file that two designs use has the findings of both, and what both find alike
// once; each design goes with its folder.
func TestTwoDesigns(t *testing.T) {
	notations(t, func(t *testing.T, ext string) {
		files := map[string]string{}
		for name, text := range faulty(ext) {
			files[name] = text
		}
		files["second."+ext] = strings.Replace(files["date."+ext], "teeth = 10", "teeth = 20", 1)
		c := start(t, files)
		ring := "ring." + ext
		c.open(ring)
		periods := func(list []lsp.Diagnostic) (n int) {
			for _, d := range list {
				if d.Code == "period-error" {
					n++
				}
			}
			return n
		}
		c.settled(ring, func(list []lsp.Diagnostic) bool { return periods(list) == 2 })
		c.open("second." + ext)
		c.replace("second."+ext, "teeth = 20", "teeth = 10")
		c.settled(ring, func(list []lsp.Diagnostic) bool { return periods(list) == 1 })
		c.notify("workspace/didChangeWorkspaceFolders", map[string]any{"event": map[string]any{"removed": []any{map[string]any{"uri": uriOf(c.dir), "name": "x"}}}})
		c.replace("second."+ext, "teeth = 10", "teeth = 93")
		c.settled(ring, func(list []lsp.Diagnostic) bool { return periods(list) == 1 })
	})
}

// A folder that is reached by a link keeps the name that the client uses.
func TestLinks(t *testing.T) {
	notations(t, func(t *testing.T, ext string) {
		var link string
		c := start(t, faulty(ext), func(_ *Options, params map[string]any) {
			folder := params["workspaceFolders"].([]any)[0].(map[string]any)
			dir, _ := pathOf(folder["uri"].(lsp.URI))
			link = filepath.Join(filepath.Dir(dir), "link-"+ext)
			require.NoError(t, os.Symlink(dir, link))
			folder["uri"] = uriOf(link)
		})
		c.dir = link
		ring := "ring." + ext
		list := c.settled(ring, any1)
		for _, d := range list {
			for _, r := range d.Related {
				assert.True(t, strings.HasPrefix(string(r.Location.URI), string(uriOf(link))), r.Location.URI)
			}
		}
		c.open(ring)
		c.settled(ring, any1)
		c.replace(ring, "31", "30")
		c.settled(ring, none)
	})
}

// Designs whose names need escapes in a URI.
func TestOddNames(t *testing.T) {
	c := start(t, map[string]string{"größe #1/100% & more.hcl": "design {}\n"})
	name := "größe #1/100% & more.hcl"
	c.settled(name, any1)
	c.open(name)
	c.settled(name, any1)
}
