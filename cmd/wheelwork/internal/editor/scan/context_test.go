package scan

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// At the | of each text the context is told as: where, block, key, and in
// brackets the word that is written there.
var contexts = []struct{ name, text, want string }{
	{"hcl", "|", "top [ ]"},
	{"hcl", "whe|", "top [whe]"},
	{"hcl", "whe|\ndesign {}\n", "top [whe]"},
	{"hcl", "design {}\n|", "top [ ]"},
	{"hcl", "wheel |\n", "label [ ]"},
	{"hcl", "wheel \"a|\" {\n}\n", "label [a] \""},
	{"hcl", "wheel \"a\" {\n  te|\n}\n", "key wheel a [te]"},
	{"hcl", "wheel \"a\" {\n  te|", "key wheel a [te]"},
	{"hcl", "wheel \"a\" {\n  |\n  teeth = 3\n}\n", "key wheel a [ ]"},
	{"hcl", "wheel \"a\" {\n  teeth = |\n  on = \"b\"\n}\n", "value wheel a teeth [ ]"},
	{"hcl", "wheel \"a\" {\n  on = \"su|\n  teeth = 3\n}\n", "value wheel a on [su] \""},
	{"hcl", "wheel \"a\" {\n  on = \"|\"\n  teeth = 3\n}\n", "value wheel a on [] \""},
	{"hcl", "wheel \"a\" { on = \"b\" te| }", "key wheel a [te]"},
	{"hcl", "wheel \"a\" { on = \"b\" | }", "key wheel a [ ]"},
	{"hcl", "wheel \"a\" { on = \"b\"| }", "nothing [ ]"},
	{"hcl", "wheel \"a\" { on = \"b\" teeth = | }", "value wheel a teeth [ ]"},
	{"hcl", "mesh {\n  wheels = [\"a\", |]\n}\n", "value mesh wheels list [ ]"},
	{"hcl", "mesh {\n  wheels = [\"a\", \"b|\n  train = \"x\"\n}\nwheel \"c\" {\n", "value mesh wheels list [b] \""},
	{"hcl", "mesh {\n  wheels = [\n    \"a\",\n    |\n  ]\n}\n", "value mesh wheels list [ ]"},
	{"hcl", "mesh {\n  wheels = [\"a\",\n  train = \"|\"\n}\n", "value mesh train [] \""},
	{"hcl", "wheel \"a\" {\n  on = \"b\"\nwheel \"c\" {\n  |\n}\n", "key wheel c [ ]"},
	{"hcl", "wheel \"a\" {\n  module = given.|\n}\n", "value wheel a module [ ]"},
	{"hcl", "wheel \"a\" {\n  module = 2 * given.m|_fine\n}\n", "value wheel a module [m_fine]"},
	{"hcl", "bounds {\n  hunt|\n}\n", "key bounds [hunt]"},
	{"hcl", "bounds {\n  hunting-tooth {\n    sev|\n  }\n}\n", "key bounds/hunting-tooth [sev]"},
	{"hcl", "# waive hu|\n", "comment [# waive hu]"},
	{"hcl", "wheel \"a\" { # waive |\n}", "comment [# waive ]"},

	{"toml", "|", "top [ ]"},
	{"toml", "[|", "kind [ ]"},
	{"toml", "[|]\n", "kind [ ]"},
	{"toml", "[whe|]\n", "kind [whe]"},
	{"toml", "[[me|\n", "kind array [me]"},
	{"toml", "[wheel.|]\n", "label wheel [ ]"},
	{"toml", "[bounds.hun|]\n", "label bounds hun [hun]"},
	{"toml", "[wheel.a]\nte|", "key wheel a [te]"},
	{"toml", "[wheel.a]\n|\nteeth = 3\n", "key wheel a [ ]"},
	{"toml", "[wheel.a]\nteeth = |\n", "value wheel a teeth [ ]"},
	{"toml", "[wheel.a]\non = \"su|\nteeth = 3\n", "value wheel a on [su] \""},
	{"toml", "[wheel.a]\non = 'su|'\n", "value wheel a on [su] '"},
	{"toml", "[[mesh]]\nwheels = [\"a\", |]\n", "value mesh wheels list [ ]"},
	{"toml", "[[mesh]]\nwheels = [\"a\", \"|\n[wheel.a]\n", "value mesh wheels list [] \""},
	{"toml", "[[mesh]]\nwheels = [\n  \"a\",\n  |\n]\n", "value mesh wheels list [ ]"},
	{"toml", "[[mesh]]\nwheels = [\"a\",\ntrain = \"|\"\n", "value mesh train [] \""},
	{"toml", "[[mesh]]\nwheels = [\"a\",\n[wheel.b]\n|\n", "key wheel b [ ]"},
	{"toml", "[wheel]\na.te|", "key wheel a [te]"},
	{"toml", "[wheel]\na = { on = \"x\", | }\n", "key wheel a [ ]"},
	{"toml", "[wheel]\na = { on = \"|\" }\n", "value wheel a on [] \""},
	{"toml", "wheel.a.on = \"|\"\n", "value wheel a on [] \""},
	{"toml", "mesh = [{ wheels = [\"a\", \"|\"] }]\n", "value mesh wheels list [] \""},
	{"toml", "[bounds.hunting-tooth]\nsev|\n", "key bounds/hunting-tooth [sev]"},
	{"toml", "[bounds]\n|\n", "key bounds [ ]"},
	{"toml", "[design]\ntitle = \"\"\"\na [wheel.b]\n\"\"\"\n|", "key design [ ]"},
	{"toml", "[wheel.a] # waive |\n", "comment [# waive ]"},
}

func TestContext(t *testing.T) {
	words := [...]string{"top", "kind", "label", "key", "value", "comment", "nothing"}
	for _, c := range contexts {
		at := strings.IndexByte(c.text, '|')
		text := c.text[:at] + c.text[at+1:]
		_, got := At([]byte(text), c.name == "toml", form, int32(at))
		s := words[got.Where]
		if b := got.Block; b != nil && got.Where != AtNothing && got.Where != AtComment && got.Where != AtKind {
			s += " "
			if b.Within != nil {
				s += b.Within.Kind.Text + "/"
			}
			s += strings.TrimSpace(b.Kind.Text + " " + b.Label.Text)
		}
		if got.Array {
			s += " array"
		}
		if got.Key.Text != "" {
			s += " " + got.Key.Text
		}
		if got.InList {
			s += " list"
		}
		word := text[got.Start:got.End]
		if got.Start == got.End && !got.InString {
			word = " "
		}
		s += fmt.Sprintf(" [%s]", word)
		if got.InString {
			s += " " + string(got.Quote)
		}
		assert.Equal(t, c.want, s, "%s: %q", c.name, c.text)
	}
}

// FuzzAt holds that any text at any place has a context within it.
func FuzzAt(f *testing.F) {
	for _, c := range contexts {
		f.Add(strings.Replace(c.text, "|", "", 1), strings.IndexByte(c.text, '|'), c.name == "toml")
	}
	f.Fuzz(func(t *testing.T, s string, at int, toml bool) {
		at = max(0, min(at, len(s)))
		o, c := At([]byte(s), toml, form, int32(at))
		assert.LessOrEqual(t, c.Start, int32(at))
		if c.Where != AtNothing {
			assert.LessOrEqual(t, int32(at), c.End)
		}
		assert.LessOrEqual(t, c.End, int32(len(s)))
		for _, b := range o.Blocks {
			assert.LessOrEqual(t, b.Start, b.End)
			for _, e := range b.Entries {
				assert.LessOrEqual(t, e.Key.Start, e.Key.End)
				assert.LessOrEqual(t, e.Start, e.End)
			}
		}
	})
}
