package rules_test

import (
	"os"
	"path/filepath"
	"regexp"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/rules"
	"wheelwork/spec"
)

// Every remedy in the cases does what it promises: with its edits made the text
// still reads, and the finding is gone, or no longer as grave.
func TestRemediesMakeTheRuleHold(t *testing.T) {
	archives, err := filepath.Glob(filepath.Join(casesDir, "*.txtar"))
	require.NoError(t, err)
	tried := 0
	for _, name := range archives {
		archive, err := txtar.ParseFile(name)
		require.NoError(t, err)
		t.Run(filepath.Base(name), func(t *testing.T) {
			dir := t.TempDir()
			written := map[string][]byte{}
			for _, f := range archive.Files {
				to := filepath.Join(dir, f.Name)
				written[to] = f.Data
				require.NoError(t, os.WriteFile(to, f.Data, 0o644))
			}
			for _, f := range archive.Files {
				design := filepath.Join(dir, f.Name)
				d, problems := spec.Load(design)
				if len(problems) > 0 {
					continue
				}
				result, _ := rules.Check(d)
				for _, finding := range result.Findings {
					for _, remedy := range finding.Remedies {
						tried++
						apply(t, remedy)
						d, problems := spec.Load(design)
						if assert.Empty(t, problems, "%s: %s", f.Name, remedy.Title) {
							after, _ := rules.Check(d)
							for _, left := range after.Findings {
								if same(left, finding) {
									t.Errorf("%s: %s: %s is still reported: %s", f.Name, remedy.Title, left.Part, left.Message)
								}
							}
						}
						for _, e := range remedy.Edits {
							require.NoError(t, os.WriteFile(e.File.Name, written[e.File.Name], 0o644))
						}
					}
				}
			}
		})
	}
	require.Greater(t, tried, 20)
}

var figures = regexp.MustCompile(`[0-9.]+`)

// same reports whether a finding still stands, be it with other figures.
func same(left, before rules.Finding) bool {
	return left.Rule == before.Rule && left.Part == before.Part && left.Severity >= before.Severity &&
		figures.ReplaceAllString(left.Message, "") == figures.ReplaceAllString(before.Message, "")
}

// apply makes a remedy's edits in the files, the last first.
func apply(t *testing.T, r rules.Remedy) {
	t.Helper()
	edits := append([]rules.Edit(nil), r.Edits...)
	sort.SliceStable(edits, func(i, j int) bool { return edits[i].Start > edits[j].Start })
	for _, e := range edits {
		content, err := os.ReadFile(e.File.Name)
		require.NoError(t, err)
		mended := string(content[:e.Start]) + e.Text + string(content[e.End:])
		require.NoError(t, os.WriteFile(e.File.Name, []byte(mended), 0o644))
	}
}
