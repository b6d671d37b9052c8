package rules_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
	"wheelwork/spec"
)

// Each rule has a page, and its examples do what the page says.
func TestEveryRuleHasAPageThatIsTrue(t *testing.T) {
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			for what, text := range map[string]string{"Checks": r.Checks, "Why": r.Why, "Source": r.Source, "Breaks": r.Breaks(), "Keeps": r.Keeps()} {
				assert.NotEmpty(t, text, what)
			}
			assert.Contains(t, rules.Groups, r.Group)
			assert.NotEqual(t, rules.Off, r.Severity)
			assert.Contains(t, names(check(t, r.Breaks())), r.Name, "the example that breaks it")
			assert.NotContains(t, names(check(t, r.Keeps())), r.Name, "the example that keeps it")
		})
	}
}

// A rule's file is named after it, so the folder is the list.
func TestEveryRuleHasItsFile(t *testing.T) {
	for _, r := range rules.All() {
		file := strings.ReplaceAll(r.Name, "-", "_") + ".go"
		content, err := os.ReadFile(file)
		if assert.NoError(t, err, r.Name) {
			assert.Contains(t, string(content), `"`+r.Name+`"`)
		}
	}
}

// Every threshold's default can be read, and a design can set it.
func TestThresholdsCanBeSet(t *testing.T) {
	for _, r := range rules.All() {
		for _, threshold := range r.Thresholds {
			text := "design { title = \"x\" }\nbounds {\n  " + r.Name + " {\n    " + threshold.Name + " = \"" + threshold.Default + "\"\n  }\n}\n"
			check(t, text)
		}
	}
}

func check(t *testing.T, text string) rules.Result {
	t.Helper()
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems, text)
	result, problems := rules.Check(d)
	require.Empty(t, problems, text)
	return result
}

func names(r rules.Result) []string {
	var list []string
	for _, f := range r.Findings {
		list = append(list, f.Rule.Name)
	}
	return list
}
