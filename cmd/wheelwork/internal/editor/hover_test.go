package editor

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// hoverAt is what is shown at the first occurrence of a text in a file, from
// its second letter on.
func (c *client) hoverAt(name, text string) string {
	c.t.Helper()
	at := strings.Index(c.text(name), text)
	require.GreaterOrEqual(c.t, at, 0, "%q is not in %s", text, name)
	var h *lsp.Hover
	require.NoError(c.t, c.at("hover", mark{file: name, offset: at + 1}, &h))
	if h == nil {
		return ""
	}
	return h.Contents.Value
}

// The figures of the mean Moon of the harbour's table: 105/24 x 135/20 =
// 29.53125 d against the synodic month of 29.530588858 d (IERS Conventions,
// Simon et al. 1994) is 22.4 ppm slow; pitch circles are module times teeth;
// centres are those of the spec.
func TestHover(t *testing.T) {
	for _, n := range []struct{ ext, dir string }{{"hcl", "harbour-table"}, {"toml", "harbour-table-toml"}} {
		t.Run(n.ext, func(t *testing.T) {
			c := start(t, folderOf(t, filepath.Join(designs, n.dir)))
			moon := "moon." + n.ext
			c.open(moon)
			c.settled(moon, none)
			for _, want := range []struct {
				at    string
				shows []string
			}{
				{"moon_age", []string{"hand moon", "turns once in 29.53125 d, ccw, 32/945 turns a day", "wanted 29.5305889 d (synodic month)", "+22.4 ppm", "allowed \"30 ppm\"", "drifts by -0.0997 deg/yr", "a day in 122 yr"}},
				{"moon_pinion", []string{"24 teeth, spur", "on `day_rod`", "module 0.6 mm", "reference circle 14.4 mm", "meshes `moon_lay_wheel`, 105 teeth: 35/8 turns", "centres 38.8 mm apart", "against the frame"}},
				{"moon_mean", []string{"arbor moon", "carried by `year`", "hand `moon_age`", "turns once in"}},
				{"synodic month", []string{"29.530588858 d", "From one new moon to the next", "IERS", "Also: lunation"}},
				{"teeth", []string{"teeth: whole number", "its starts", "Every wheel needs it"}},
				{map[string]string{"hcl": "shift   ", "toml": "shift ="}[n.ext], []string{"shift: number", "Profile shift in modules", "It is 0 unless given"}},
				{"module", []string{"module: length in mm, more than 0", "in mm; in quotes it may carry one: mm, um"}},
				{"mesh", []string{"mesh moon\\_pinion/moon\\_lay\\_wheel", "24 to 105 teeth", "centres 38.8 mm apart, wanted 38.7"}},
				{"coupling", []string{"Makes two arbors turn as one"}},
				{"\"moon\"", []string{"train moon", "mesh `moon_pinion/moon_lay_wheel`: 24 to 105 teeth"}},
			} {
				got := c.hoverAt(moon, want.at)
				for _, s := range want.shows {
					assert.Contains(t, got, s, want.at)
				}
			}
			if n.ext == "hcl" {
				assert.Contains(t, c.hoverAt(moon, "[given.reach + 38.8, 0]"), "at = 232.2 mm")
				assert.Contains(t, c.hoverAt(moon, "reach, 0"), "reach = 193.4")
			}
		})
	}
}

// Over a finding its rule is told.
func TestHoverOverFinding(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		c.replace(ring, "30", "31")
		c.settled(ring, any1)
		got := c.hoverAt(ring, "3 d")
		assert.Contains(t, got, "period = 3 d")
		assert.Contains(t, got, "period-error: error")
		assert.Contains(t, got, "A tooth too many")
		assert.Contains(t, got, "`wheelwork rules period-error`")
	})
}

// Where the text has problems the figures are those of the last that had none,
// and say so.
func TestHoverOverBrokenText(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		c.settled(ring, none)
		c.replace(ring, "teeth = 30", "teeth = ")
		c.settled(ring, any1)
		got := c.hoverAt(ring, "thirds")
		assert.Contains(t, got, "turns once in 3 d")
		assert.Contains(t, got, "As of the last text without problems.")
	})
}

// Clients that show no Markdown get none.
func TestHoverPlain(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		c.settled(ring, none)
		got := c.hoverAt(ring, "second")
		assert.Contains(t, got, `wheel "second": 30 teeth, spur`)
		assert.NotContains(t, got, "`")
		assert.NotContains(t, got, "*")
	}, func(_ *Options, params map[string]any) {
		delete(params["capabilities"].(map[string]any)["textDocument"].(map[string]any), "hover")
	})
}
