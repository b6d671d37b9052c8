package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"wheelwork/rules"
	"wheelwork/spec"
)

// Whatever the text, no rule fails on what can be read of it.
func FuzzCheck(f *testing.F) {
	for _, pattern := range []string{"../../fixtures/trains/*.hcl", "../../fixtures/trains/*.toml", "../../fixtures/designs/*/stages.*"} {
		files, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, name := range files {
			content, err := os.ReadFile(name)
			require.NoError(f, err)
			f.Add(string(content), filepath.Ext(name) == ".hcl")
		}
	}
	f.Fuzz(func(t *testing.T, content string, hcl bool) {
		name := "x.toml"
		if hcl {
			name = "x.hcl"
		}
		loader := spec.Loader{Overlay: func(string) ([]byte, bool) { return []byte(content), true }}
		d, problems := loader.Load(name)
		if len(problems) > 0 {
			return
		}
		result, _ := rules.Check(d)
		for _, f := range result.Findings {
			require.True(t, f.Known(), f.Message)
			require.NotEmpty(t, f.Message)
		}
	})
}
