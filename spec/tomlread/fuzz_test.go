package tomlread

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/text"
)

var seeds = []string{
	"", "a = 1", "[design]\ntitle = \"Tide\"\n", "[wheel.fixed]\nteeth = 84\nmodule = 0.5\n[[mesh]]\nwheels = [\"a\", 'b']\n",
	"wheel = {a = {teeth = 1}, b = {teeth = 0x10}}\nmesh = [{wheels = [\"a\", \"b\"]}, {}]\n",
	"wheel.a.teeth = 1\nwheel.a.x.y = [[1], [2, []]] # c\n", "[bounds.drift]\nseverity = \"off\"\n[bounds]\nx = 1\n",
	"[a.b.c]\nx = 1\n[a]\nb.d = 2\n", "[[a]]\n[a.b]\n[[a]]\n[a.b]\n", "[a.b.c]\n[[a]]\n", "a = \"\"\"\n[b]\nc = 1\n\"\"\"\n",
	"[design\ntitle = 1\n[wheel.a]\nteeth = = 3\nx = [1, 2\n[wheel.b]\nteeth = 3\n", "a = '''\r\nx'''\r\n", byteOrderMark + "[design]\n",
	"d = 2027-01-01\ne = 2027-13-01\n", "a = inf\nb = 1e999999999\n", "a = \"\\u00e9\\UD8000000\"", "a = {b = {c.d = 1}}\n", "[wheel]\nteeth = 3\n",
	"[hand.a]\n[wheel.b]\nhand = \"left\"\n", "a=[{b=[{c=1}]},{b=2}]\n",
}

// FuzzParse: nothing panics; every place lies in the file; a second reading
// gives the same; what BurntSushi/toml refuses has a problem; and what it
// takes is refused for no error of syntax and has the same values.
func FuzzParse(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	fixtures, err := filepath.Glob("../../fixtures/*/*.toml")
	require.NoError(f, err)
	for _, name := range fixtures {
		content, err := os.ReadFile(name)
		require.NoError(f, err)
		f.Add(string(content))
	}
	f.Fuzz(func(t *testing.T, src string) {
		if len(src) > 1<<14 {
			return
		}
		file := text.NewFile("t.toml", []byte(src))
		tree, problems := Parse(file, forms)
		checkSpans(t, file, tree)
		for _, p := range problems {
			require.True(t, (text.Span{End: int32(len(src))}).Covers(p.Span), "%v", p.Span)
			require.NotEmpty(t, p.Message)
			for _, r := range p.Related {
				require.True(t, (text.Span{End: int32(len(src))}).Covers(r.Span), "%v", r.Span)
			}
		}
		again, more := Parse(file, forms)
		require.Equal(t, problems, more)
		require.Equal(t, tree, again)

		var decoded map[string]any
		err := decodeWhole(src, &decoded)
		if len(problems) == 0 {
			require.Empty(t, disagreement(file, tree))
			require.NoError(t, err)
		}
		if err == nil {
			r := reader{file: file, src: src, form: forms, tree: tree}
			if r.encoding() {
				r.checker = checker{file: file, src: src}
				faults, _ := r.checker.end(r.read())
				require.Empty(t, faults)
				for _, p := range r.problems {
					require.True(t, ours(p), "%v", p)
				}
			}
		}
		comments := Comments(file)
		for i, at := range comments {
			require.Equal(t, byte('#'), src[at.Start])
			require.True(t, i == 0 || comments[i-1].End < at.Start)
		}
	})
}

// decodeWhole has BurntSushi/toml read the text as a whole.
func decodeWhole(src string, v any) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("panic: %v", p)
		}
	}()
	_, err = toml.Decode(src, v)
	return err
}

// ours reports whether a problem is one that valid TOML can have here: of the
// form of blocks, of the bounds, or of a name defined twice, where
// BurntSushi/toml is milder than TOML.
func ours(p text.Problem) bool {
	for _, part := range []string{
		"stands in no", "stands outside", "is not a single table", "is not an array of tables", "takes no name", "needs a name",
		"is a block, not a value", "a design can hold", "a value among tables", "a table within",
		"deeper than", "more than 120", "are allowed", "is given twice", "cannot be added to", "the file is empty",
	} {
		if strings.Contains(p.Message, part) {
			return true
		}
	}
	return false
}

// FuzzEdit: a Reader that has read one version of a file reads the next as a
// new one would.
func FuzzEdit(f *testing.F) {
	for i, s := range seeds {
		f.Add(s, uint16(i), uint16(i%4), "1\n")
		f.Add(s, uint16(3*i), uint16(0), "\"\"\"")
	}
	f.Fuzz(func(t *testing.T, before string, at, drop uint16, put string) {
		if len(before)+len(put) > 1<<12 {
			return
		}
		start := min(int(at), len(before))
		end := min(start+int(drop), len(before))
		after := before[:start] + put + before[end:]
		var m Reader
		for _, src := range []string{before, after, before} {
			file := text.NewFile("t.toml", []byte(src))
			tree, problems := m.Parse(file, forms)
			want, wantProblems := Parse(file, forms)
			require.Equal(t, wantProblems, problems)
			require.Equal(t, want, tree)
		}
	})
}
