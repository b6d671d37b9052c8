package editor

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// completions are texts added to the ring's file, what is offered at the | in
// them, what is not (after !), and what becomes of the text when the first of
// them is taken.
var completions = []struct {
	ext, text string
	offers    string
	becomes   string
}{
	{"hcl", "\nwhe|", "wheel mesh hand bounds given !drift", "\nwheel \"${1:name}\" {\n  on    = \"${2:}\"\n  teeth = ${3:}\n}"},
	{"hcl", "\nmesh {\n  wheels = [\"fir|\"]\n}\n", "first second !ring", "\nmesh {\n  wheels = [\"first\"]\n}\n"},
	{"hcl", "\nmesh {\n  wheels = [\"fir|\n", "first second", "\nmesh {\n  wheels = [\"first\n"},
	{"hcl", "\nmesh {\n  wheels = [|]\n}\n", "second first given.m", "\nmesh {\n  wheels = [\"second\"]\n}\n"},
	{"hcl", "\nwheel \"x\" {\n  |\n}\n", "teeth on module !title", "\nwheel \"x\" {\n  teeth = $1\n}\n"},
	{"hcl", "\nwheel \"x\" {\n  teeth = 3\n  o| = \"day\"\n}\n", "on !teeth", "\nwheel \"x\" {\n  teeth = 3\n  on = \"day\"\n}\n"},
	{"hcl", "\nwheel \"x\" {\n  on = \"|\n  teeth = 3\n}\n", "ring day !frame !first", "\nwheel \"x\" {\n  on = \"ring\n  teeth = 3\n}\n"},
	{"hcl", "\nwheel \"x\" { on = \"day\" kind = | }\n", "\"ring\" spur worm", ""},
	{"hcl", "\narbor \"x\" {\n  carried_by = \"|\"\n}\n", "frame !ring", "\narbor \"x\" {\n  carried_by = \"frame\"\n}\n"},
	{"hcl", "\nhand \"x\" {\n  shows = \"syn|\"\n}\n", "synodic_month lunation Jupiter_sidereal", "\nhand \"x\" {\n  shows = \"synodic month\"\n}\n"},
	{"hcl", "\nhand \"x\" {\n  within = \"30 |\"\n}\n", "ppm % deg_in_ !mm", "\nhand \"x\" {\n  within = \"30 ppm\"\n}\n"},
	{"hcl", "\nhand \"x\" {\n  within = \"1 deg in 10 y|\"\n}\n", "yr d !ppm", "\nhand \"x\" {\n  within = \"1 deg in 10 yr\"\n}\n"},
	{"hcl", "\nhand \"x\" {\n  period = \"3|\"\n}\n", "h d yr !mm", "\nhand \"x\" {\n  period = \"3 h\"\n}\n"},
	{"hcl", "\nhand \"x\" {\n  of = \"|\"\n}\n", "thirds !ring", "\nhand \"x\" {\n  of = \"thirds\"\n}\n"},
	{"hcl", "\narbor \"x\" {\n  diameter = given.|\n}\n", "m !given.m !ring", "\narbor \"x\" {\n  diameter = given.m\n}\n"},
	{"hcl", "\narbor \"x\" {\n  diameter = gi|\n}\n", "given.m", "\narbor \"x\" {\n  diameter = given.m\n}\n"},
	{"hcl", "\nstage \"x\" {\n  parts = [\"wheel.s|\"]\n}\n", "wheel.second arbor.day hand.thirds !arbor.second", "\nstage \"x\" {\n  parts = [\"wheel.second\"]\n}\n"},
	{"hcl", "\ndesign {\n  uses = [\"|\"]\n}\n", "date.hcl !ring.hcl", "\ndesign {\n  uses = [\"date.hcl\"]\n}\n"},
	{"hcl", "\nchain {\n  size = \"04|\"\n}\n", "04C 08B", "\nchain {\n  size = \"04C\"\n}\n"},
	{"hcl", "\nmesh {\n  train = \"|\"\n}\n", "date", "\nmesh {\n  train = \"date\"\n}\n"},
	{"hcl", "\ncoupling \"x\" {\n  slips = |\n}\n", "true false", "\ncoupling \"x\" {\n  slips = true\n}\n"},
	{"hcl", "\nbounds {\n  |\n}\n", "drift hunting-tooth !teeth", "\nbounds {\n  drift {\n  $0\n}\n}\n"},
	{"hcl", "\nbounds {\n  drift {\n    |\n  }\n}\n", "degrees severity !teeth", "\nbounds {\n  drift {\n    degrees = \"$1\"\n  }\n}\n"},
	{"hcl", "\nbounds {\n  drift {\n    severity = \"|\"\n  }\n}\n", "note off", "\nbounds {\n  drift {\n    severity = \"note\"\n  }\n}\n"},
	{"hcl", "\n# waive hun|\n", "hunting-tooth drift", "\n# waive hunting-tooth: \n"},
	{"hcl", "\n# prose about a wheel |\n", "!hunting-tooth", ""},

	{"toml", "\n|", "[wheel.] [[mesh]] [clock] !drift", "\n[wheel.${1:name}]\non = \"${2:}\"\nteeth = ${3:}"},
	{"toml", "\n[wh|]\n", "wheel arbor !mesh !given", "\n[wheel.]\n"},
	{"toml", "\n[[|]]\n", "mesh chain !wheel", "\n[[mesh]]\n"},
	{"toml", "\n[[mesh]]\nwheels = [\"fir|\"]\n", "first second !ring", "\n[[mesh]]\nwheels = [\"first\"]\n"},
	{"toml", "\n[[mesh]]\nwheels = [\"fir|\n[wheel.x]\n", "first second", "\n[[mesh]]\nwheels = [\"first\n[wheel.x]\n"},
	{"toml", "\n[wheel.x]\n|\n", "teeth on module !title", "\n[wheel.x]\nteeth = $1\n"},
	{"toml", "\n[wheel.x]\non = |\n", "ring day !frame", "\n[wheel.x]\non = \"ring\"\n"},
	{"toml", "\n[wheel.x]\non = '|'\n", "ring day !frame", "\n[wheel.x]\non = 'ring'\n"},
	{"toml", "\n[wheel]\nx = { on = \"|\" }\n", "ring day", "\n[wheel]\nx = { on = \"ring\" }\n"},
	{"toml", "\nwheel.x.|", "teeth on !title", "\nwheel.x.teeth = $1"},
	{"toml", "\n[hand.x]\nagainst = \"|\"\n", "day ring frame", "\n[hand.x]\nagainst = \"day\"\n"},
	{"toml", "\n[hand.x]\nshows = \"syn|\"\n", "synodic_month lunation", "\n[hand.x]\nshows = \"synodic month\"\n"},
	{"toml", "\n[hand.x]\nwithin = \"30 p|\"\n", "ppm", "\n[hand.x]\nwithin = \"30 ppm\"\n"},
	{"toml", "\n[drive.x]\nspeed = \"30|\"\n", "rpm rph !mm", "\n[drive.x]\nspeed = \"30 rpm\"\n"},
	{"toml", "\n[bounds.hun|]\n", "hunting-tooth drift", "\n[bounds.hunting-tooth]\n"},
	{"toml", "\n[bounds.drift]\n|\n", "degrees severity !teeth", "\n[bounds.drift]\ndegrees = \"$1\"\n"},
	{"toml", "\n[bounds.drift]\nseverity = \"|\"\n", "note off", "\n[bounds.drift]\nseverity = \"note\"\n"},
	{"toml", "\n[design]\nuses = [\"|\"]\n", "date.toml !ring.toml", "\n[design]\nuses = [\"date.toml\"]\n"},
	{"toml", "\n# waive |\n", "hunting-tooth drift", "\n# waive hunting-tooth: \n"},
}

func TestCompletion(t *testing.T) {
	clients := map[string]*client{}
	before := map[string]string{}
	for _, ext := range []string{"hcl", "toml"} {
		files := map[string]string{}
		for name, text := range dateRing[ext] {
			files[name] = text
		}
		if ext == "hcl" {
			files["ring.hcl"] += "given {\n  m = 0.5\n}\n"
		}
		clients[ext] = start(t, files)
		clients[ext].open("ring." + ext)
		clients[ext].settled("ring."+ext, none)
		before[ext] = files["ring."+ext]
	}
	for _, one := range completions {
		c, name := clients[one.ext], "ring."+one.ext
		at := strings.IndexByte(one.text, '|')
		added := one.text[:at] + one.text[at+1:]
		base := len(before[one.ext])
		if strings.HasPrefix(one.text, "\nwheel.x.|") { // stands before any table
			c.edit(name, 0, len(c.text(name)), added[1:]+"\n"+before[one.ext])
			base = -1
		} else {
			c.edit(name, 0, len(c.text(name)), before[one.ext]+added)
		}
		var list lsp.CompletionList
		require.NoError(t, c.at("completion", mark{file: name, offset: base + at}, &list))
		byLabel := map[string]lsp.CompletionItem{}
		for _, i := range list.Items {
			byLabel[i.Label] = i
		}
		for i, label := range strings.Fields(one.offers) {
			absent := strings.HasPrefix(label, "!")
			label = strings.NewReplacer("_", " ", `"`, "", "!", "").Replace(label)
			if strings.HasPrefix(label, "carried") {
				label = "carried_by"
			}
			item, offered := byLabel[label]
			if !assert.Equal(t, !absent, offered, "%s: %q: %q", one.ext, one.text, label) || i > 0 || one.becomes == "" {
				continue
			}
			text := lines.New([]byte(c.text(name)))
			start, end := c.encoding.Offset(text, item.Edit.Range.Start), c.encoding.Offset(text, item.Edit.Range.End)
			got := string(text.Bytes[:start]) + item.Edit.NewText + string(text.Bytes[end:])
			if base < 0 {
				got = "\n" + strings.TrimSuffix(got, "\n"+before[one.ext])
			} else {
				got = strings.TrimPrefix(got, before[one.ext])
			}
			assert.Equal(t, one.becomes, got, "%s: %q", one.ext, one.text)
		}
	}
}

// A client that has no places to fill in gets plain words.
func TestCompletionWithoutSnippets(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		name := "ring." + ext
		c.open(name)
		c.edit(name, len(c.text(name)), len(c.text(name)), "\n")
		var list lsp.CompletionList
		require.NoError(t, c.at("completion", mark{file: name, offset: len(c.text(name))}, &list))
		require.NotEmpty(t, list.Items)
		for _, i := range list.Items {
			assert.Zero(t, i.Format)
			assert.NotContains(t, i.Edit.NewText, "$")
		}
	}, func(_ *Options, params map[string]any) {
		delete(params["capabilities"].(map[string]any)["textDocument"].(map[string]any), "completion")
	})
}
