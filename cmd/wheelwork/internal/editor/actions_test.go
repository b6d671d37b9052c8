package editor

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/rules"
	"wheelwork/spec"
)

const designs = "../../../../fixtures/designs"

// folderOf is the spec files of a folder.
func folderOf(t testing.TB, dir string) map[string]string {
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	files := map[string]string{}
	for _, e := range entries {
		if ext := filepath.Ext(e.Name()); ext == ".hcl" || ext == ".toml" {
			content, err := os.ReadFile(filepath.Join(dir, e.Name()))
			require.NoError(t, err)
			files[e.Name()] = string(content)
		}
	}
	return files
}

func (c *client) actions(name string, d lsp.Diagnostic) []lsp.CodeAction {
	c.t.Helper()
	var list []lsp.CodeAction
	c.call("textDocument/codeAction", map[string]any{
		"textDocument": map[string]any{"uri": c.uri(name)}, "range": d.Range, "context": map[string]any{"diagnostics": []any{d}},
	}, &list)
	var own []lsp.CodeAction
	for _, a := range list {
		if slices.ContainsFunc(a.Diagnostics, func(of lsp.Diagnostic) bool { return assert.ObjectsAreEqual(d, of) }) {
			own = append(own, a)
		}
	}
	return own
}

// The first finding of each rule in the faulty table offers its remedies, whose
// edits as the client makes them are those of the rule, and a waiver that holds
// as soon as it has a reason.
func TestActions(t *testing.T) {
	dir := filepath.Join(designs, "harbour-table-faulty")
	files := folderOf(t, dir)
	d, problems := spec.Load(filepath.Join(dir, "table.hcl"))
	require.Empty(t, problems)
	result, problems := rules.Check(d)
	require.Empty(t, problems)
	c := start(t, files)
	for name := range files {
		c.open(name)
	}
	remedies, waivers := 0, 0
	seen := map[*rules.Rule]bool{}
	for _, f := range result.Findings {
		if seen[f.Rule] && (len(f.Remedies) == 0 || remedies > 5) || waivers > 16 && len(f.Remedies) == 0 {
			continue
		}
		if testing.Short() && remedies > 1 && waivers > 3 {
			return
		}
		seen[f.Rule] = true
		name := filepath.Base(f.File.Name)
		want := c.encoding.Position(linesOf(files[name]), f.Start)
		var finding lsp.Diagnostic
		find := func(list []lsp.Diagnostic) bool {
			for _, one := range list {
				if one.Code == f.Rule.Name && one.Message == f.Message && one.Range.Start == want {
					finding = one
					return true
				}
			}
			return false
		}
		c.settled(name, find)
		list := c.actions(name, finding)
		require.GreaterOrEqual(t, len(list), len(f.Remedies), f.Message)
		for _, r := range f.Remedies {
			remedies++
			i := slices.IndexFunc(list, func(a lsp.CodeAction) bool { return a.Title == r.Title })
			require.GreaterOrEqual(t, i, 0, r.Title)
			assert.Equal(t, "quickfix", list[i].Kind)
			c.apply(list[i].Edit)
			touched := map[string]string{}
			for _, e := range r.Edits {
				touched[filepath.Base(e.File.Name)] = ""
			}
			for file := range touched {
				want := files[file]
				for j := len(r.Edits) - 1; j >= 0; j-- { // sorted by place
					if e := r.Edits[j]; filepath.Base(e.File.Name) == file {
						want = want[:e.Start] + e.Text + want[e.End:]
					}
				}
				assert.Equal(t, want, c.text(file), r.Title)
				c.edit(file, 0, len(c.text(file)), files[file])
			}
			c.settled(name, find)
			list = c.actions(name, finding) // of the version that it is now
		}
		if f.Rule.Group == rules.Waivers {
			continue
		}
		waivers++
		waiver := list[len(list)-1]
		require.True(t, strings.HasPrefix(waiver.Title, "waive "+f.Rule.Name), waiver.Title)
		c.apply(waiver.Edit)
		c.settled(name, func(list []lsp.Diagnostic) bool {
			for _, one := range list {
				if one.Code == "stale-waiver" && strings.Contains(one.Message, "gives no reason") {
					return true
				}
			}
			return false
		})
		reason := "# waive " + f.Rule.Name + ": "
		at := strings.Index(c.text(name), reason+"\n") + len(reason)
		c.edit(name, at, at, "a visitor asked for it")
		c.settled(name, func(list []lsp.Diagnostic) bool {
			for _, one := range list {
				if one.Code == f.Rule.Name && one.Message == f.Message || one.Code == "stale-waiver" && strings.Contains(one.Message, f.Rule.Name) {
					return false
				}
			}
			return true
		})
		c.edit(name, 0, len(c.text(name)), files[name])
	}
	assert.Greater(t, remedies, 5)
	assert.Greater(t, waivers, 10)
}

// Where the client does not know versions the edits come without.
func TestActionsWithoutVersions(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		c.replace(ring, "30", "31")
		list := c.actions(ring, c.settled(ring, any1)[0])
		require.NotEmpty(t, list)
		for _, a := range list {
			assert.Empty(t, a.Edit.DocumentChanges)
			assert.NotEmpty(t, a.Edit.Changes[c.uri(ring)])
		}
	}, func(_ *Options, params map[string]any) {
		delete(params["capabilities"].(map[string]any), "workspace")
	})
}
