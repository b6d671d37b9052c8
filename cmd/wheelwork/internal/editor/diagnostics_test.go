package editor

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// dateRing is a ring that turns once in three days, in both notations.
var dateRing = map[string]map[string]string{
	"hcl": {"date.hcl": `design {
  title = "Date ring"
  uses  = ["ring.hcl"]
}
arbor "day" {}
wheel "first" {
  on    = "day"
  teeth = 10
}
mesh {
  wheels = ["first", "second"]
  train  = "date"
}
clock {
  on     = "day"
  period = "solar day"
}
bounds {
  hunting-tooth {
    severity = "off"
  }
}
`, "ring.hcl": `# the ring, § 3
arbor "ring" {}
wheel "second" {
  on    = "ring"
  teeth = 30
}
hand "thirds" {
  on     = "ring"
  period = "3 d"
  within = "100 ppm"
}
`},
	"toml": {"date.toml": `[design]
title = "Date ring"
uses = ["ring.toml"]
[arbor.day]
[wheel.first]
on = "day"
teeth = 10
[[mesh]]
wheels = ["first", "second"]
train = "date"
[clock]
on = "day"
period = "solar day"
[bounds.hunting-tooth]
severity = "off"
`, "ring.toml": `# the ring, § 3
[arbor.ring]
[wheel.second]
on = "ring"
teeth = 30
[hand.thirds]
on = "ring"
period = "3 d"
within = "100 ppm"
`},
}

// both runs a test in either notation.
func both(t *testing.T, f func(t *testing.T, ext string, c *client), change ...func(*Options, map[string]any)) {
	for _, ext := range []string{"hcl", "toml"} {
		t.Run(ext, func(t *testing.T) {
			f(t, ext, start(t, dateRing[ext], change...))
		})
	}
}

// replace edits the first occurrence of a text in an open file.
func (c *client) replace(name, old, new string) {
	c.t.Helper()
	at := strings.Index(c.text(name), old)
	require.GreaterOrEqual(c.t, at, 0, "%q is not in %s", old, name)
	c.edit(name, at, at+len(old), new)
}

// A tooth too many is found in a file that is only used, with the text of the
// editor and not that on disk, and is gone with the tooth.
func TestDiagnostics(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring, date := "ring."+ext, "date."+ext
		c.open(ring)
		c.open(date)
		c.settled(ring, none)
		c.settled(date, none)
		c.replace(ring, "30", "31")
		list := c.settled(ring, any1)
		var found *lsp.Diagnostic
		for i := range list {
			if list[i].Code == "period-error" {
				found = &list[i]
			}
		}
		require.NotNil(t, found)
		assert.Equal(t, lsp.SeverityError, found.Severity)
		assert.Equal(t, "wheelwork", found.Source)
		assert.Contains(t, found.Message, "3.1 d")
		line := strings.Count(c.text(ring)[:strings.Index(c.text(ring), "3 d")], "\n")
		assert.Equal(t, line, found.Range.Start.Line)
		require.NotEmpty(t, found.Related)
		assert.Equal(t, c.uri(ring), found.Related[0].Location.URI)

		// A change of the other file mends it.
		c.replace(date, "teeth = 10", "teeth = 31")
		c.replace(ring, "31", "93")
		c.settled(ring, none)
		require.Equal(t, 0, c.leave())
	})
}

// Each version is first cleared of what was found before and then told of anew.
func TestClearedAtOnce(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		c.replace(ring, "30", "31")
		c.settled(ring, any1)
		c.replace(ring, "§", "no.")
		c.settled(ring, any1)
		c.mu.Lock()
		defer c.mu.Unlock()
		var told []*lsp.PublishDiagnosticsParams
		for _, p := range c.history {
			if p.URI == c.uri(ring) && *p.Version == 3 {
				told = append(told, p)
			}
		}
		require.Len(t, told, 2)
		assert.Empty(t, told[0].Diagnostics)
		assert.NotEmpty(t, told[1].Diagnostics)
	}, func(o *Options, _ map[string]any) { o.Pause = 30 * time.Millisecond })
}

// Broken text is told where it is broken.
func TestBroken(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		c.replace(ring, "teeth = 30", "teeth = ")
		list := c.settled(ring, any1)
		assert.Equal(t, lsp.SeverityError, list[0].Severity)
		assert.Empty(t, list[0].Code)
		c.replace(ring, "teeth = ", "teeth = 30")
		c.settled(ring, none)
	})
}
