package spec

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/text"
)

// loadNamed loads one file of that content.
func loadNamed(t testing.TB, name, content string) (*Design, []text.Problem) {
	t.Helper()
	loader := Loader{Overlay: func(string) ([]byte, bool) { return []byte(content), true }}
	return loader.Load(name)
}

// In each text the waiver is of rule r; « and » stand around what it covers.
func TestWhatAWaiverCovers(t *testing.T) {
	for name, c := range map[string]struct{ notation, text string }{
		"an attribute's line": {"hcl", `
wheel "a" {
  on    = "x"
«  teeth = 30 # waive r: why
»  face  = 2
}
`},
		"a block by its first line": {"hcl", `
«wheel "a" { # waive r: why
  on    = "x"
  teeth = 30
}»
wheel "b" {}
`},
		"a block on one line": {"hcl", `
«arbor "a" {} // waive r: why
»arbor "b" {}
`},
		"two blocks on one line": {"hcl", `
«arbor "a" {} arbor "b" { # waive r: why
}»
arbor "c" {}
`},
		"the last line of a block is not the block": {"hcl", `
wheel "a" {
  teeth = 30
«} # waive r: why
»wheel "b" {}
`},
		"a block from above": {"hcl", `
# waive r: why
«wheel "a" {
  teeth = 30
}»
wheel "b" {}
`},
		"a block from above, with further comments and empty lines": {"hcl", `
/* The pair turns by hand. */
# waive r: why

// It is for show
# and stays.

/* Nothing of it
is seen. */
«wheel "a" {
  teeth = 30
}»
`},
		"an attribute from above": {"hcl", `
wheel "a" {
  # waive r: why
«  teeth = 30
»  face  = 2
}
`},
		"an attribute over several lines": {"hcl", `
stage "a" {
  parts = [
    "wheel.x",
«    "wheel.y", # waive r: why
»    "wheel.z",
  ]
}
`},
		"an attribute over several lines from above": {"hcl", `
stage "a" {
  # waive r: why
«  parts = [
    "wheel.x",
    "wheel.y",
  ]»
  order = 1
}
`},
		"a block within a block": {"hcl", `
bounds {
  # waive r: why
«  drift {
    most = 3
  }»
}
`},
		"a comment before something on its line": {"hcl", `
wheel "a" {
«  /* waive r: why */ teeth = 30
»  face  = 2
}
`},
		"two comments on a line": {"hcl", `
/* for show */ # waive r: why
«arbor "a" {}
»`},
		"over several lines": {"hcl", `
/* waive r: why
   and how */
«arbor "a" {}
»`},
		"nothing below": {"hcl", `
arbor "a" {}
# waive r: why
«»`},
		"the end of a block": {"hcl", `
wheel "a" {
  teeth = 30
  # waive r: why
«}
»`},
		"TOML: a key's line": {"toml", `
[wheel.a]
on = "x"
«teeth = 30 # waive r: why
»face = 2
`},
		"TOML: a table by its header": {"toml", `
«[wheel.a] # waive r: why
on = "x"
teeth = 30»
[wheel.b]
teeth = 31
`},
		"TOML: a table from above": {"toml", `
# waive r: why
# It is for show.
«[[mesh]]
wheels = ["a", "b"]»

[[mesh]]
wheels = ["a", "c"]
`},
		"TOML: in a list": {"toml", `
[stage.a]
parts = [
  "wheel.x",
«  "wheel.y", # waive r: why
»  "wheel.z",
]
`},
		"TOML: a list from above": {"toml", `
[stage.a]
# waive r: why
«parts = [
  "wheel.x",
]»
order = 1
`},
		"TOML: a table within a table": {"toml", `
[bounds.drift]
most = 3
# waive r: why
«[bounds.pace]
most = 4»
`},
		"carriage returns": {"hcl", "# waive r: why\r\n«wheel \"a\" {\r\n  teeth = 30\r\n}»\r\narbor \"b\" {}\r\n"},
	} {
		t.Run(name, func(t *testing.T) {
			head := "design { title = \"x\" }\n"
			if c.notation == "toml" {
				head = "[design]\ntitle = \"x\"\n"
			}
			all := head + c.text
			start, end := strings.Index(all, "«"), strings.Index(all, "»")-len("«")
			all = strings.NewReplacer("«", "", "»", "").Replace(all)
			d, _ := loadNamed(t, "x."+c.notation, all)
			require.Len(t, d.Waivers, 1)
			w := d.Waivers[0]
			assert.Equal(t, "r", w.Rule)
			assert.Equal(t, "r", w.RuleAt.Text())
			assert.True(t, strings.HasPrefix(w.At.Text(), "waive r: why"), w.At.Text())
			assert.False(t, strings.HasSuffix(w.At.Text(), "*/"))
			assert.Equal(t, all[start:end], all[w.Scope.Start:w.Scope.End])
			place := func(at int) text.Place {
				return text.Place{File: d.Files[0], Span: text.Span{Start: int32(at), End: int32(at)}}
			}
			assert.Equal(t, start < end, w.Covers(place(start)))
			assert.False(t, w.Covers(place(end)))
			assert.False(t, w.Covers(place(start-1)))
		})
	}
}

func TestWhatIsAWaiver(t *testing.T) {
	for text, want := range map[string]string{
		"# waive drift: turned by hand":          "drift|turned by hand",
		"#waive drift:turned by hand":            "drift|turned by hand",
		"//  waive   drift :  turned by hand  ":  "drift|turned by hand",
		"/* waive drift: turned by hand */":      "drift|turned by hand",
		"/** waive drift: turned by hand **/":    "drift|turned by hand *",
		"## waive drift: see http://x: the note": "drift|see http://x: the note",
		"# waive drift:":                         "drift|",
		"# waive drift":                          "drift|",
		"# waive\tdrift: tab":                    "drift|tab",
		"# waive":                                "",
		"# waive ":                               "",
		"# waive :":                              "",
		"# waive the fee: no":                    "",
		"# waives drift: no":                     "",
		"# Waive drift: no":                      "",
		"# we waive drift: no":                   "",
		"title = \"# waive drift: in a string\"": "",
	} {
		content := "design {\n  title = \"x\"\n}\ngiven {\n" + text + "\n}\n"
		d, _ := loadNamed(t, "x.hcl", content)
		got := ""
		for _, w := range d.Waivers {
			got += w.Rule + "|" + w.Reason
		}
		assert.Equal(t, want, got, text)
	}
	for text, want := range map[string]int{
		"title = \"# waive drift: in a string\"":             0,
		"title = '# waive drift: in a string'":               0,
		"title = \"\"\"\n# waive drift: in a string\n\"\"\"": 0,
		"title = '''\n# waive drift: in a string\n'''":       0,
		"title = \"x\" # waive drift: by hand":               1,
		"# waive drift: by hand\ntitle = \"x\"":              1,
		"title = \"x\"\n# waive drift: by hand":              1,
	} {
		d, _ := loadNamed(t, "x.toml", "[design]\n"+text+"\n")
		assert.Len(t, d.Waivers, want, text)
	}
}

// Every comment waits for the same block: going to it from each would be
// quadratic.
func TestManyWaiversInARow(t *testing.T) {
	const n = 50_000
	for _, notation := range []string{"hcl", "toml"} {
		content := "design { title = \"x\" }\n" + strings.Repeat("# waive drift: by hand\n", n) + "arbor \"a\" {}\n"
		if notation == "toml" {
			content = "[design]\ntitle = \"x\"\n" + strings.Repeat("# waive drift: by hand\n", n) + "[arbor.a]\n"
		}
		d, problems := loadNamed(t, "x."+notation, content)
		require.Empty(t, problems)
		require.Len(t, d.Waivers, n)
		assert.Contains(t, content[d.Waivers[0].Scope.Start:], "arbor")
		assert.Equal(t, d.Waivers[0].Scope, d.Waivers[n-1].Scope)
	}
}
