package tomlread

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// forms are those of some kinds of the language.
func forms(kind string) Form {
	switch kind {
	case "design", "clock", "stock", "dividing":
		return Single
	case "arbor", "stud", "arm", "wheel", "sprocket", "slot", "counter", "coupling", "track", "drive", "hand", "marker", "stage":
		return Labelled
	case "mesh", "chain":
		return Repeated
	case "bounds":
		return Grouped
	}
	return Unknown
}

func parse(src string) (*syntax.Tree, []text.Problem) {
	return Parse(text.NewFile("t.toml", []byte(src)), forms)
}

// show writes a tree out without its places.
func show(blocks []*syntax.Block) string {
	var b strings.Builder
	for _, block := range blocks {
		b.WriteString(block.Kind)
		if block.Label != "" {
			fmt.Fprintf(&b, " %q", block.Label)
		}
		b.WriteString(" {")
		for _, a := range block.Attrs {
			fmt.Fprintf(&b, " %s = %s", a.Name, showValue(a.Value))
		}
		if len(block.Blocks) > 0 {
			b.WriteString(" " + strings.ReplaceAll(show(block.Blocks), "\n", " "))
		}
		b.WriteString(" }\n")
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func showValue(v syntax.Value) string {
	switch v.Kind {
	case syntax.String:
		return fmt.Sprintf("%q", v.Text)
	case syntax.Number:
		return v.Number.String()
	case syntax.Bool:
		return fmt.Sprint(v.Bool)
	case syntax.List:
		var parts []string
		for _, e := range v.List {
			parts = append(parts, showValue(e))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return "?"
}

// The same design in each way in which TOML can write it (TOML 1.0.0, "Keys",
// "Table", "Inline Table", "Array of Tables").
func TestWaysToWrite(t *testing.T) {
	const want = `design { title = "Tide" }
wheel "fixed" { on = "post" teeth = 84 module = 1/2 }
wheel "idler" { teeth = 31 }
mesh { wheels = ["fixed", "idler"] }
mesh { wheels = ["idler", "moon"] train = "moon" }
bounds { hunting-tooth { severity = "off" } drift { severity = "note" at = [1, [2, 3]] } }`
	for name, src := range map[string]string{
		"headers": `
[design]
title = "Tide"
[wheel.fixed]
on = "post"
teeth = 84
module = 0.5
[wheel.idler]
teeth = 31
[[mesh]]
wheels = ["fixed", "idler"]
[[mesh]]
wheels = ["idler", "moon"]
train = "moon"
[bounds.hunting-tooth]
severity = "off"
[bounds.drift]
severity = "note"
at = [1, [2, 3]]
`,
		"inline": `
design = {title = "Tide"}
wheel = {fixed = {on = "post", teeth = 84, module = 0.5}, idler = {teeth = 31}}
mesh = [{wheels = ["fixed", "idler"]}, {wheels = ["idler", "moon"], train = "moon"}]
bounds = {hunting-tooth = {severity = "off"}, drift = {severity = "note", at = [1, [2, 3]]}}
`,
		"a table of tables": `
[design]
title = "Tide"
[wheel]
fixed = {on = "post", teeth = 84, module = 0.5}
idler.teeth = 31
[[mesh]]
wheels = ["fixed", "idler"]
[[mesh]]
wheels = ["idler", "moon"]
train = "moon"
[bounds]
hunting-tooth = {severity = "off"}
drift.severity = "note"
drift.at = [1, [2, 3]]
`,
		"dots": `
design.title = "Tide"
wheel.fixed.on = "post"
wheel.fixed.teeth = 84
wheel . "fixed" . 'module' = 5e-1
wheel.idler.teeth = 31
mesh = [
  { wheels = ["fixed", "idler"] }, # between
  { wheels = ["idler", "moon"],
    train = "moon", },
]
bounds.hunting-tooth.severity = "off"
bounds.drift = {severity = "note", at = [
  1, [2,3,], # comment, with ] in it
]}
`,
	} {
		for _, src := range []string{src, strings.ReplaceAll(src, "\n", "\r\n"), byteOrderMark + src} {
			tree, problems := parse(src)
			require.Empty(t, problems, name)
			assert.Equal(t, want, show(tree.Blocks), name)
		}
	}
}
