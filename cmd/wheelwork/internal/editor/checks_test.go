package editor

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// Text that does not rest is not told of; then it is, once.
func TestPause(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		c.settled(ring, none)
		for _, teeth := range []string{"31", "32", "33", "34", "35"} {
			c.edit(ring, 0, 0, "# more\n")
			c.replace(ring, "teeth = 3", "teeth = 3"+teeth[1:])
			time.Sleep(5 * time.Millisecond)
		}
		c.settled(ring, any1)
		c.mu.Lock()
		defer c.mu.Unlock()
		told := 0
		for _, p := range c.history {
			if p.URI == c.uri(ring) && len(p.Diagnostics) > 0 {
				told++
			}
		}
		assert.Equal(t, 1, told)
	}, func(o *Options, _ map[string]any) { o.Pause = 150 * time.Millisecond })
}

// A check that a change has overtaken goes no further and tells nothing.
func TestOvertaken(t *testing.T) {
	for ext, files := range dateRing {
		dir, err := filepath.EvalSymlinks(t.TempDir())
		require.NoError(t, err)
		for name, text := range files {
			require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
		}
		s := newServer(Options{strict: true, Pause: time.Hour})
		s.phase = initialized
		name := filepath.Join(dir, "date."+ext)
		open := func(text string) {
			s.keep(name, &document{uri: uriOf(name), named: name, path: name, text: lines.New([]byte(text))})
			s.changed(s.docs[name])
		}
		open(files["date."+ext])
		d := s.designs[0]
		old := d.model
		open("broken [")
		s.check(d, old)
		assert.Equal(t, unread, old.stage)
		assert.Nil(t, s.out.take())
		s.check(d, d.model)
		assert.Equal(t, checked, d.model.stage)
		p := s.out.take()
		require.NotNil(t, p)
		assert.NotEmpty(t, p.Diagnostics)

		// One that read from disk what is open now begins again.
		s.begin(d, time.Hour)
		old = d.model
		old.docs = nil
		s.check(d, old)
		assert.NotSame(t, old, d.model)
		assert.Nil(t, s.out.take())
	}
}

// The rules' pages are found beside the program, or beside its folder.
func TestPagesBeside(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct{ program, pages string }{
		{"a/wheelwork", "a/docs/rules"}, {"b/bin/wheelwork", "b/docs/rules"}, {"c/bin/wheelwork", "c/share/doc/wheelwork/rules"},
	} {
		program := filepath.Join(dir, c.program)
		assert.Empty(t, PagesBeside(program))
		pages := filepath.Join(dir, c.pages)
		require.NoError(t, os.MkdirAll(pages, 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(pages, "period-error.md"), nil, 0o644))
		assert.Equal(t, pages, PagesBeside(program))
		assert.Equal(t, uriOf(filepath.Join(pages, "drift.md")), pageOf(pages, "drift"))
	}
	assert.Equal(t, lsp.URI("https://example.org/x/drift.md"), pageOf("https://example.org/x", "drift"))
}
