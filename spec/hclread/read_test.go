package hclread

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/exact"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// read reads files that have no problem.
func read(t *testing.T, contents ...string) []*syntax.Tree {
	t.Helper()
	var sources []*Source
	for i, c := range contents {
		s, problems := Parse(text.NewFile(string(rune('a'+i))+".hcl", []byte(c)))
		require.Empty(t, problems)
		sources = append(sources, s)
	}
	trees, problems := Evaluate(sources)
	require.Empty(t, problems)
	return trees
}

func TestValues(t *testing.T) {
	for _, c := range []struct {
		written string
		want    syntax.Value
	}{
		{`"frame"`, syntax.Value{Kind: syntax.String, Text: "frame"}},
		{`""`, syntax.Value{Kind: syntax.String}},
		{`"é ☉ \u2609 \U0001F311 \" \\ \n\r\t"`, syntax.Value{Kind: syntax.String, Text: "é ☉ ☉ 🌑 \" \\ \n\r\t"}},
		{`"5 % $ $${x} %%{y} $$$${z} 5%"`, syntax.Value{Kind: syntax.String, Text: "5 % $ ${x} %{y} $$${z} 5%"}},
		{`"# no comment // nor /* this"`, syntax.Value{Kind: syntax.String, Text: "# no comment // nor /* this"}},
		{`true`, syntax.Value{Kind: syntax.Bool, Bool: true}},
		{`false`, syntax.Value{Kind: syntax.Bool}},
		{`29 / 1`, syntax.Value{Kind: syntax.Number, Number: exact.Int(29), Derived: true}},
		{`30`, syntax.Value{Kind: syntax.Number, Number: exact.Int(30)}},
		{`007`, syntax.Value{Kind: syntax.Number, Number: exact.Int(7)}},
		{`-30`, syntax.Value{Kind: syntax.Number, Number: exact.Int(-30)}},
		{`- 30`, syntax.Value{Kind: syntax.Number, Number: exact.Int(-30)}},
		{`0.1`, syntax.Value{Kind: syntax.Number, Number: exact.Frac(1, 10)}},
		{`2.50e-3`, syntax.Value{Kind: syntax.Number, Number: exact.Frac(1, 400)}},
		{`1E+3`, syntax.Value{Kind: syntax.Number, Number: exact.Int(1000)}},
		{`123456789012345678`, syntax.Value{Kind: syntax.Number, Number: exact.Int(123456789012345678)}},
		{`1234567890123456789`, syntax.Value{Kind: syntax.Number, Number: exact.Int(1234567890123456789)}},
		{`1 / 3`, syntax.Value{Kind: syntax.Number, Number: exact.Frac(1, 3), Derived: true}},
		{`0.1 + 0.2`, syntax.Value{Kind: syntax.Number, Number: exact.Frac(3, 10), Derived: true}},
		{`1 + 2 * 3 - 4 / 5`, syntax.Value{Kind: syntax.Number, Number: exact.Frac(31, 5), Derived: true}},
		{`8 / 4 / 2`, syntax.Value{Kind: syntax.Number, Number: exact.Int(1), Derived: true}},
		{`8 - 4 - 2`, syntax.Value{Kind: syntax.Number, Number: exact.Int(2), Derived: true}},
		{`(1 + 2) * -(3 - 5)`, syntax.Value{Kind: syntax.Number, Number: exact.Int(6), Derived: true}},
		{`- -3`, syntax.Value{Kind: syntax.Number, Number: exact.Int(3), Derived: true}},
		{`---3`, syntax.Value{Kind: syntax.Number, Number: exact.Int(-3), Derived: true}},
		{`2--3`, syntax.Value{Kind: syntax.Number, Number: exact.Int(5), Derived: true}},
		{`17 % 5`, syntax.Value{Kind: syntax.Number, Number: exact.Int(2), Derived: true}},
		{`-17 % 5`, syntax.Value{Kind: syntax.Number, Number: exact.Int(-2), Derived: true}},
		{`17 % -5`, syntax.Value{Kind: syntax.Number, Number: exact.Int(2), Derived: true}},
		{`0.7 % 0.2`, syntax.Value{Kind: syntax.Number, Number: exact.Frac(1, 10), Derived: true}},
		{`(30)`, syntax.Value{Kind: syntax.Number, Number: exact.Int(30), Derived: true}},
		{`given.m`, syntax.Value{Kind: syntax.Number, Number: exact.Frac(1, 2), Derived: true}},
		{`given.m * 2`, syntax.Value{Kind: syntax.Number, Number: exact.Int(1), Derived: true}},
		{`given . m`, syntax.Value{Kind: syntax.Number, Number: exact.Frac(1, 2), Derived: true}},
		{`(given.m /* half */
		  * 2)`, syntax.Value{Kind: syntax.Number, Number: exact.Int(1), Derived: true}},
		{`given.name-with-dashes`, syntax.Value{Kind: syntax.String, Text: "x", Derived: true}},
		{`[]`, syntax.Value{Kind: syntax.List}},
	} {
		for _, end := range []string{"\n", " # end\n", " // end\n", "/* end */ }", "}", " z = 1\n", "\r\n"} {
			src := "given {\n  m = 0.5\n  name-with-dashes = \"x\"\n}\nwheel \"a\" {\n  v = " + c.written + end
			if !strings.HasSuffix(end, "}") {
				src += "}"
			}
			got := read(t, src)[0].Blocks[0].Attrs[0].Value
			require.Equal(t, c.written, src[got.At.Start:got.At.End], "place")
			assert.True(t, c.want.Number.Equal(got.Number), "%s is not %s", got.Number, c.want.Number)
			c.want.At, c.want.Number = got.At, got.Number
			assert.Equal(t, c.want, got)
		}
	}
}

// Elements of lists have places of their own; those that come from a named
// list have the place where it is named.
func TestListPlaces(t *testing.T) {
	src := "given {\n  at = [1, [-2]]\n}\nwheel \"a\" {\n  v = [\"x\", - 2.5, # c\n    [true,], given.at]\n  w = [1, 2,\n  ]\n}\n"
	attrs := read(t, src)[0].Blocks[0].Attrs
	v := attrs[0].Value
	assert.Equal(t, syntax.List, v.Kind)
	assert.True(t, v.Derived, "one of its elements is")
	assert.Equal(t, "[\"x\", - 2.5, # c\n    [true,], given.at]", src[v.At.Start:v.At.End])
	var places []string
	var derived []bool
	for _, x := range v.List {
		places = append(places, src[x.At.Start:x.At.End])
		derived = append(derived, x.Derived)
	}
	assert.Equal(t, []string{`"x"`, "- 2.5", "[true,]", "given.at"}, places)
	assert.Equal(t, []bool{false, false, false, true}, derived)
	named := v.List[3]
	assert.Equal(t, named.At, named.List[0].At)
	assert.Equal(t, named.At, named.List[1].List[0].At)
	assert.True(t, named.List[1].List[0].Derived)
	assert.True(t, named.List[1].List[0].Number.Equal(exact.Int(-2)))

	w := attrs[1].Value
	assert.False(t, w.Derived)
	assert.Len(t, w.List, 2)
	assert.Equal(t, "2", src[w.List[1].At.Start:w.List[1].At.End])
}

func TestBlocks(t *testing.T) {
	src := "\xef\xbb\xbf// head\r\nwheel \"a\\u0062\" { on = \"x\"  teeth = 30 }\r\nbounds {\r\n  tip-interference {\r\n    severity = \"off\"\r\n  }\r\n}\r\nmesh{}\r\nstud é_1 {\r\n}"
	blocks := read(t, src)[0].Blocks
	require.Len(t, blocks, 4)
	at := func(s text.Span) string { return src[s.Start:s.End] }
	wheel := blocks[0]
	assert.Equal(t, "wheel", wheel.Kind)
	assert.Equal(t, "wheel", at(wheel.KindAt))
	assert.Equal(t, "ab", wheel.Label)
	assert.Equal(t, `"a\u0062"`, at(wheel.LabelAt))
	assert.Equal(t, `wheel "a\u0062" { on = "x"  teeth = 30 }`, at(wheel.At))
	require.Len(t, wheel.Attrs, 2)
	assert.Equal(t, "teeth", at(wheel.Attrs[1].Key))
	assert.Equal(t, "30", at(wheel.Attrs[1].Value.At))

	bounds := blocks[1]
	assert.Empty(t, bounds.Attrs)
	require.Len(t, bounds.Blocks, 1)
	assert.Equal(t, "tip-interference", bounds.Blocks[0].Kind)
	assert.Equal(t, `"off"`, at(bounds.Blocks[0].Find("severity").Value.At))
	assert.Equal(t, "tip-interference {\r\n    severity = \"off\"\r\n  }", at(bounds.Blocks[0].At))

	assert.Equal(t, "mesh{}", at(blocks[2].At))
	assert.Zero(t, blocks[2].LabelAt)
	assert.Equal(t, "é_1", blocks[3].Label)
	assert.Equal(t, "é_1", at(blocks[3].LabelAt))
}

// Items that share lines read as those on lines of their own, blanks between
// them or not.
func TestSharedLines(t *testing.T) {
	plain := func(src string) string {
		var b strings.Builder
		var walk func(blocks []*syntax.Block)
		walk = func(blocks []*syntax.Block) {
			for _, x := range blocks {
				fmt.Fprintf(&b, "%s %q {", src[x.KindAt.Start:x.KindAt.End], x.Label)
				for _, a := range x.Attrs {
					fmt.Fprintf(&b, " %s=%s %v", src[a.Key.Start:a.Key.End], src[a.Value.At.Start:a.Value.At.End], a.Value.Derived)
				}
				walk(x.Blocks)
				b.WriteString("}")
			}
		}
		walk(read(t, src)[0].Blocks)
		return b.String()
	}
	want := plain("given {\n}\na \"b\" {\n  x = 1\n  y = [\"}\", (2)]\n  c {\n    z = -3\n  }\n  w = \"# \"\n}\nd {\n}\n")
	for _, src := range []string{
		"given {} a \"b\" { x = 1 y = [\"}\", (2)] c { z = -3 } w = \"# \" } d {}",
		"given{}a\"b\"{x=1 y=[\"}\", (2)] c{z=-3}w=\"# \"}d{}",
		"given {\t}a\t\"b\"\t{\tx = 1\ty = [\"}\", (2)]\tc {\tz = -3}\tw = \"# \"} d { }",
		"given {/**/} a \"b\" {/* { */x = 1/* } */ y = [\"}\", (2)]/*\n*/ c { z = -3/**/ }/*\n*/w = \"# \" } # d {\nd {\n}",
		"given {}\r\na b {x = 1\r\n y = [\"}\", (2)] c {z = -3\r\n} w = \"# \"}\r\nd {}",
	} {
		assert.Equal(t, want, plain(src), src)
	}
}

// Strings keep the Unicode form that they are written in, in names too: an e
// with an accent as one character and as two, and the sign of the kelvin, which
// is a K in normal form C (Unicode Standard Annex 15).
func TestUnicodeForm(t *testing.T) {
	for _, s := range []string{"\u00e9", "e\u0301", "\u212a", "\u212a $ %", "$${\u212a}"} {
		b := read(t, "a \""+s+"\" {\n  v = \""+s+"\"\n  w = [\""+s+"\"]\n}\n")[0].Blocks[0]
		want := strings.ReplaceAll(s, "$${", "${")
		assert.Equal(t, []string{want, want, want}, []string{b.Label, b.Attrs[0].Value.Text, b.Attrs[1].Value.List[0].Text})
	}
	b := read(t, "a {\n  v = \"\\u212a e\\u0301\"\n}\n")[0].Blocks[0]
	assert.Equal(t, "\u212a e\u0301", b.Attrs[0].Value.Text)
}

// One source may be evaluated with others again and again, as an editor does.
func TestEvaluateAgain(t *testing.T) {
	wheel, problems := Parse(text.NewFile("wheel.hcl", []byte("wheel \"a\" {\n  module = given.m\n  at = [given.m, 0]\n}\nbounds {\n  x { y = given.m }\n}\n")))
	require.Empty(t, problems)
	for _, m := range []string{"1", "2.5"} {
		given, problems := Parse(text.NewFile("given.hcl", []byte("given {\n  m = "+m+"\n}\n")))
		require.Empty(t, problems)
		trees, problems := Evaluate([]*Source{given, wheel})
		require.Empty(t, problems)
		assert.Empty(t, trees[0].Blocks)
		want, err := exact.Parse(m)
		require.NoError(t, err)
		blocks := trees[1].Blocks
		assert.True(t, want.Equal(blocks[0].Attrs[0].Value.Number))
		assert.True(t, want.Equal(blocks[0].Attrs[1].Value.List[0].Number))
		assert.True(t, want.Equal(blocks[1].Blocks[0].Attrs[0].Value.Number))
	}
	trees, problems := Evaluate([]*Source{wheel})
	assert.Len(t, problems, 3)
	assert.Equal(t, syntax.Invalid, trees[0].Blocks[0].Attrs[0].Value.Kind)
}

func TestUses(t *testing.T) {
	src := "uses = [\"no.hcl\"]\ndesign {\n  uses = [\"stock.toml\", given.x, \"moon.hcl\"]\n}\nwheel \"a\" {\n  uses = [\"no.hcl\"]\n}\n"
	s, problems := Parse(text.NewFile("a.hcl", []byte(src)))
	assert.Len(t, problems, 2)
	require.Len(t, s.Uses(), 2, "the plain strings")
	assert.Equal(t, "stock.toml", s.Uses()[0].Text)

	s, problems = Parse(text.NewFile("a.hcl", []byte("design {\n  uses = [\"stock.toml\", 3, \"moon.hcl\"]\n}\n")))
	require.Empty(t, problems)
	require.Len(t, s.Uses(), 2)
	assert.Equal(t, "moon.hcl", s.Uses()[1].Text)
	assert.Equal(t, `"moon.hcl"`, string(s.File().Bytes[s.Uses()[1].At.Start:s.Uses()[1].At.End]))
}

func TestComments(t *testing.T) {
	src := "# one\r\nwheel \"a\" { // two\n  on = /* three\n 3 */ \"# no\" # four\n  at = [1, # five\n    2]\n}\n# six"
	s, problems := Parse(text.NewFile("a.hcl", []byte(src)))
	require.Empty(t, problems)
	var got []string
	for _, c := range s.Comments() {
		got = append(got, src[c.Start:c.End])
	}
	assert.Equal(t, []string{"# one", "// two", "/* three\n 3 */", "# four", "# five", "# six"}, got)

	// A block that is read twice because it is not closed has its comments once.
	s, problems = Parse(text.NewFile("a.hcl", []byte("# one\nwheel \"a\" { # two\n  teeth = !!! # three\n\nmesh {\n  # four\n}\n")))
	assert.Len(t, problems, 2)
	assert.Len(t, s.Comments(), 4)
}
