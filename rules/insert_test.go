package rules_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
	"wheelwork/spec"
)

// What was read back after the edit is the design with the attribute.
func TestInsertedAttributesAreRead(t *testing.T) {
	for _, row := range []struct{ name, file, text, want string }{
		{"in a column, before a comment's end", "d.hcl", `
design { title = "x" }
arbor "a" {}
wheel "w" {
  on     = "a"
  teeth  = 12 # few
  module = 1
}
`, "\n  teeth  = 12 # few\n  shift  = 0.3\n  module = 1\n"},
		{"no column", "d.hcl", `
design { title = "x" }
arbor "a" {}
wheel "w" {
	on = "a"
	teeth = 12
}
`, "\n\tteeth = 12\n\tshift = 0.3\n}"},
		{"a key longer than the column", "d.hcl", "design { title = \"x\" }\r\narbor \"a\" {}\r\nwheel \"w\" {\r\n  on = \"a\"\r\n  teeth = 12\r\n}\r\n",
			"\r\n  teeth = 12\r\n  shift = 0.3\r\n}"},
		{"toml", "d.toml", `
[design]
title = "x"
[arbor.a]
[wheel.w]
on = "a"
teeth = 12`, "\nteeth = 12\nshift = 0.3"},
		{"toml inline", "d.toml", `
design = { title = "x" }
arbor = { a = {} }
wheel = { w = { on = "a", teeth = 12 } }
`, "teeth = 12, shift = 0.3 } }"},
	} {
		t.Run(row.name, func(t *testing.T) {
			d := loadText(t, row.file, row.text)
			w := d.Wheels[0]
			edit, ok := rules.Assign(w.Shift.At, w.Teeth.At, "shift", "0.3")
			require.True(t, ok)
			after := row.text[:edit.Start] + edit.Text + row.text[edit.End:]
			assert.Contains(t, after, row.want)
			again := loadText(t, row.file, after).Wheels[0]
			assert.Equal(t, 0.3, again.Shift.Or(0))
			edit, ok = rules.Assign(again.Shift.At, again.Teeth.At, "shift", "0.4")
			require.True(t, ok)
			after = after[:edit.Start] + edit.Text + after[edit.End:]
			assert.Equal(t, 0.4, loadText(t, row.file, after).Wheels[0].Shift.Or(0))
		})
	}
}

func loadText(t testing.TB, file, text string) *spec.Design {
	t.Helper()
	name := filepath.Join(t.TempDir(), file)
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems, text)
	return d
}
