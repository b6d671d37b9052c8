package tomlread

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// disagreement says where a tree and BurntSushi/toml see different values in
// a file without problems, "" if nowhere. It also holds each place against
// the decoder: the bytes of a key or value, read alone, are that key or value.
func disagreement(f *text.File, tree *syntax.Tree) string {
	var want map[string]any
	if _, err := toml.Decode(string(f.Bytes), &want); err != nil {
		return err.Error()
	}
	d := differ{file: f}
	for kind, v := range want {
		// A list or table that holds no blocks leaves nothing in the tree.
		if m, ok := v.(map[string]any); forms(kind) == Repeated && len(elements(v)) == 0 || forms(kind) == Labelled && ok && len(m) == 0 {
			delete(want, kind)
		}
	}
	d.table(want, gather(tree.Blocks), "")
	return d.found
}

// gather turns blocks back into the tables they were read from: *syntax.Block
// for a table, []*syntax.Block for several, map[string]any for labelled ones.
func gather(blocks []*syntax.Block) map[string]any {
	tables := map[string]any{}
	put := func(m map[string]any, name string, b *syntax.Block) {
		switch before := m[name].(type) {
		case nil:
			m[name] = b
		case *syntax.Block:
			m[name] = []*syntax.Block{before, b}
		case []*syntax.Block:
			m[name] = append(before, b)
		}
	}
	for _, b := range blocks {
		labels, _ := tables[b.Kind].(map[string]any)
		switch {
		case b.LabelAt.Len() > 0 && labels == nil:
			tables[b.Kind] = map[string]any{b.Label: b}
		case b.LabelAt.Len() > 0:
			put(labels, b.Label, b)
		case labels != nil: // [a] after [a.b]
			put(labels, "\x00", b)
		default:
			put(tables, b.Kind, b)
		}
	}
	return tables
}

type differ struct {
	file  *text.File
	found string
}

func (d *differ) report(path, format string, args ...any) {
	if d.found == "" {
		d.found = path + ": " + fmt.Sprintf(format, args...)
	}
}

func (d *differ) table(want map[string]any, got map[string]any, path string) {
	if own, ok := got["\x00"].(*syntax.Block); ok {
		delete(got, "\x00")
		merged := map[string]any{}
		for name, v := range want {
			if _, labelled := got[name]; !labelled {
				merged[name] = v
				delete(want, name)
			}
		}
		d.value(merged, own, path)
	}
	if len(want) != len(got) {
		d.report(path, "%d names, want %d", len(got), len(want))
	}
	for name, w := range want {
		g, ok := got[name]
		if !ok {
			d.report(path, "%q is missing", name)
			continue
		}
		d.value(w, g, path+"."+name)
	}
}

func (d *differ) value(want, got any, path string) {
	switch got := got.(type) {
	case map[string]any:
		if m, ok := want.(map[string]any); ok {
			d.table(m, got, path)
			return
		}
	case *syntax.Block:
		if list := elements(want); len(list) == 1 {
			want = list[0]
		}
		if m, ok := want.(map[string]any); ok {
			inner := gather(got.Blocks)
			for _, a := range got.Attrs {
				d.key(a)
				inner[a.Name] = a.Value
			}
			d.table(m, inner, path)
			return
		}
	case []*syntax.Block:
		if list := elements(want); len(list) == len(got) {
			for i := range got {
				d.value(list[i], got[i], fmt.Sprintf("%s[%d]", path, i))
			}
			return
		}
	case syntax.Value:
		if !same(want, got) {
			break
		}
		var alone map[string]any
		at := text.Place{File: d.file, Span: got.At}
		if _, err := toml.Decode("v = "+at.Text(), &alone); err != nil || !same(alone["v"], got) {
			d.report(path, "the place holds %q", at.Text())
		}
		return
	}
	d.report(path, "%v, want %v", got, want)
}

func (d *differ) key(a syntax.Attr) {
	var alone map[string]any
	at := text.Place{File: d.file, Span: a.Key}
	_, err := toml.Decode(at.Text()+" = 1", &alone)
	if _, ok := alone[a.Name]; err != nil || !ok {
		d.report(a.Name, "the place of the key holds %q", at.Text())
	}
}

// elements gives the tables of an array of tables.
func elements(v any) []any {
	switch v := v.(type) {
	case []map[string]any:
		list := make([]any, len(v))
		for i := range v {
			list[i] = v[i]
		}
		return list
	case []any:
		return v
	}
	return nil
}

// same reports whether a decoded value is that of the tree.
func same(want any, got syntax.Value) bool {
	switch want := want.(type) {
	case string:
		return got.Kind == syntax.String && got.Text == want
	case bool:
		return got.Kind == syntax.Bool && got.Bool == want
	case int64:
		n, ok := got.Number.Int64()
		if want == -1<<63 { // kept as a big number
			return got.Number.String() == "-9223372036854775808"
		}
		return got.Kind == syntax.Number && ok && n == want
	case float64:
		return got.Kind == syntax.Number && got.Number.Float() == want
	case time.Time:
		var alone struct{ V time.Time }
		_, err := toml.Decode("v = "+got.Text, &alone)
		return err == nil && got.Kind == syntax.String && alone.V.Equal(want)
	case []any:
		if got.Kind != syntax.List || len(got.List) != len(want) {
			return false
		}
		for i := range want {
			if !same(want[i], got.List[i]) {
				return false
			}
		}
		return true
	}
	return false
}

// BurntSushi/toml and the tree see the same values in every TOML fixture.
func TestFixturesAgree(t *testing.T) {
	read := 0
	err := filepath.WalkDir("../../fixtures", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(path) != ".toml" {
			return err
		}
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		f := text.NewFile(path, content)
		tree, problems := Parse(f, forms)
		var decoded map[string]any
		if _, err := toml.Decode(string(content), &decoded); err != nil {
			require.NotEmpty(t, problems, path)
			return nil
		}
		if len(problems) == 0 { // a fixture may be faulty on purpose
			require.Empty(t, disagreement(f, tree), path)
			read++
		}
		return nil
	})
	require.NoError(t, err)
	require.NotZero(t, read)
}

// And in documents of all shapes.
func TestGeneratedAgree(t *testing.T) {
	documents := uint64(1000)
	if testing.Short() {
		documents = 200
	}
	for seed := range documents {
		g := generator{Rand: rand.New(rand.NewPCG(seed, 1))}
		src := g.document()
		f := text.NewFile("t.toml", []byte(src+"# end"))
		tree, problems := Parse(f, forms)
		require.Empty(t, problems, src)
		require.Empty(t, disagreement(f, tree), src)
		checkSpans(t, f, tree)
	}
}

type generator struct {
	*rand.Rand
	strings.Builder
}

func (g *generator) document() string {
	eol := []string{"\n", "\r\n"}[g.IntN(2)]
	if g.IntN(4) == 0 {
		g.WriteString(byteOrderMark)
	}
	kinds := []string{"design", "wheel", "arbor", "mesh", "bounds", "whell", "shaft"}
	g.Shuffle(len(kinds), func(i, j int) { kinds[i], kinds[j] = kinds[j], kinds[i] })
	for _, inline := range []bool{true, false} { // keys stand before headers
		for _, kind := range kinds[:g.IntN(len(kinds))] {
			if strings.Contains(g.String(), kind) {
				continue
			}
			g.kind(kind, inline)
		}
	}
	return strings.ReplaceAll(g.String(), "\n", eol)
}

func (g *generator) kind(kind string, asKeys bool) {
	names := []string{"a", "b1", `"c d"`, "'e.f'", "7"}[:1+g.IntN(4)]
	switch form := forms(kind); {
	case form == Repeated && asKeys:
		fmt.Fprintf(g, "%s = [%s", kind, g.gap())
		for range g.IntN(3) {
			fmt.Fprintf(g, "%s,%s", g.inline(), g.gap())
		}
		g.WriteString("]\n")
	case form == Repeated:
		for range 1 + g.IntN(3) {
			fmt.Fprintf(g, "[[ %s ]]%s\n", kind, g.comment())
			g.pairs("")
		}
	case form == Single && asKeys:
		fmt.Fprintf(g, "%s = %s\n", kind, g.inline())
	case form == Single:
		fmt.Fprintf(g, "[%s]\n", kind)
		g.pairs("")
	case asKeys:
		for _, name := range names {
			if g.IntN(2) == 0 {
				fmt.Fprintf(g, "%s . %s=%s\n", kind, name, g.inline())
			} else {
				g.pairs(kind + "." + name + ".")
			}
		}
	default:
		if g.IntN(2) == 0 {
			fmt.Fprintf(g, "[%s]%s\n", kind, g.comment())
			for _, name := range names {
				g.pairs(name + " . ")
			}
			return
		}
		for _, name := range names {
			fmt.Fprintf(g, "\n  [%s.%s] # %s\n", kind, name, name)
			g.pairs("")
		}
	}
}

func (g *generator) pairs(prefix string) {
	for i := range 1 + g.IntN(15) {
		value := g.value(0)
		if g.IntN(8) == 0 {
			value = g.inline()
		}
		fmt.Fprintf(g, "%sk%d = %s%s\n", prefix, i, value, g.comment())
	}
}

func (g *generator) inline() string {
	var b strings.Builder
	b.WriteString("{")
	for i := range g.IntN(4) {
		if i > 0 {
			b.WriteString(" ,")
		}
		fmt.Fprintf(&b, " k%d = %s", i, g.value(0))
	}
	return b.String() + "}"
}

func (g *generator) comment() string {
	return []string{"", " # ] } \" '", "  ", "\t# ☾"}[g.IntN(4)]
}

func (g *generator) gap() string {
	return []string{"", " ", "\n", "\n # [1, 2]\n\t"}[g.IntN(4)]
}

func (g *generator) value(depth int) string {
	literals := []string{
		`"plain"`, `""`, `"a\tb \"c\" \u00e9 \\"`, `'raw \n'`, `"☾ moon"`,
		`"""two` + "\n" + `lines \` + "\n" + `  joined "" here"""`, "'''\nraw\n'lines'''''", `""""quoted""""`,
		"0", "-7", "+12_000", "0x1F", "0o17", "0b10_1", "9223372036854775807", "-9223372036854775808",
		"0.5", "-0.0", "365.242190424", "6.02e23", "1E-7", "1e0_6", "9_1.2_5", "0.1e+02",
		"true", "false", "2027-01-01", "07:32:00", "1979-05-27T07:32:00Z", "1979-05-27 00:32:00.5-07:00",
	}
	if depth < 3 && g.IntN(4) == 0 {
		var b strings.Builder
		b.WriteString("[" + g.gap())
		for range g.IntN(4) {
			b.WriteString(g.value(depth+1) + g.gap() + "," + g.gap())
		}
		return b.String() + "]"
	}
	return literals[g.IntN(len(literals))]
}

// checkSpans holds every place to lie in the file, and what is written inside
// a block or a list to lie inside it.
func checkSpans(t *testing.T, f *text.File, tree *syntax.Tree) {
	t.Helper()
	file := text.Span{End: int32(len(f.Bytes))}
	var value func(v syntax.Value, in text.Span)
	value = func(v syntax.Value, in text.Span) {
		require.True(t, in.Covers(v.At) && v.At.Start < v.At.End, "value %v in %v of\n%s", v.At, in, f.Bytes)
		for _, e := range v.List {
			value(e, v.At)
		}
	}
	var blocks func(list []*syntax.Block)
	blocks = func(list []*syntax.Block) {
		for _, b := range list {
			require.True(t, file.Covers(b.At) && b.At.Start < b.At.End, "block %v of\n%s", b.At, f.Bytes)
			require.True(t, file.Covers(b.KindAt) && file.Covers(b.LabelAt) && b.KindAt.Len() > 0)
			for _, a := range b.Attrs {
				require.True(t, b.At.Covers(a.Key) && a.Key.End < a.Value.At.Start, "key %v in %v of\n%s", a.Key, b.At, f.Bytes)
				value(a.Value, b.At)
			}
			blocks(b.Blocks)
		}
	}
	blocks(tree.Blocks)
}
