package scan

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/spec"
	"wheelwork/spec/hclread"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

func form(kind string) tomlread.Form {
	if k := spec.KindOf(kind); k != nil {
		return k.Form
	}
	return tomlread.Unknown
}

// fixtures are all sound spec files of the repository.
func fixtures(t testing.TB, each func(name string, content []byte, tree *syntax.Tree)) {
	take := func(name string, content []byte) {
		f := text.NewFile(name, content)
		switch filepath.Ext(name) {
		case ".hcl":
			source, problems := hclread.Parse(f)
			if len(problems) == 0 {
				trees, _ := hclread.Evaluate([]*hclread.Source{source})
				each(name, content, trees[0])
			}
		case ".toml":
			if tree, problems := tomlread.Parse(f, form); len(problems) == 0 {
				each(name, content, tree)
			}
		}
	}
	err := filepath.WalkDir("../../../../../fixtures", func(name string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		content, err := os.ReadFile(name)
		if filepath.Ext(name) != ".txtar" {
			take(name, content)
			return err
		}
		for _, f := range txtar.Parse(content).Files {
			take(name+"/"+f.Name, f.Data)
		}
		return err
	})
	require.NoError(t, err)
}

// The outline of every sound fixture names the same blocks and attributes, at
// the same places, as the readers do.
func TestOutlineAgreesWithTheReaders(t *testing.T) {
	files := 0
	fixtures(t, func(name string, content []byte, tree *syntax.Tree) {
		files++
		toml := strings.HasSuffix(name, ".toml")
		o := Read(content, toml, form)
		have := map[string]bool{}
		for _, b := range o.Blocks {
			for _, e := range b.Entries {
				have[key(b, e.Key)] = true
			}
			have[key(b, Part{})] = true
		}
		labels := map[text.Span]string{}
		for _, l := range o.Labels {
			labels[text.Span{Start: l.Start, End: l.End}] = l.Text
		}
		var within func(outer string, list []*syntax.Block)
		within = func(outer string, list []*syntax.Block) {
			for _, b := range list {
				if b.Kind == "given" {
					continue
				}
				kind, label := b.Kind, b.Label
				if b.Kind == "bounds" && label != "" { // bounds "rule" and [bounds.rule]
					kind, outer, label = label, "bounds/", ""
				}
				path := outer + kind + " " + label
				if !assert.True(t, have[path+" @0"], "%s: no %s in %v", name, path, have) {
					return
				}
				for _, a := range b.Attrs {
					assert.True(t, have[path+" "+a.Name+"@"+itoa(a.Key.Start)], "%s: no %s of %s", name, a.Name, path)
				}
				if toml && label != "" {
					assert.Equal(t, label, labels[b.LabelAt], "%s: label of %s", name, path)
				}
				within(b.Kind+"/", b.Blocks)
			}
		}
		within("", tree.Blocks)
	})
	assert.Greater(t, files, 100)
}

func key(b *Block, k Part) string {
	path := b.Kind.Text + " " + b.Label.Text
	if b.Within != nil {
		path = b.Within.Kind.Text + "/" + path
	}
	return path + " " + k.Text + "@" + itoa(k.Start)
}

func itoa(n int32) string { return strconv.Itoa(int(n)) }
