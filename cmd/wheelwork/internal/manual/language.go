package manual

import (
	"fmt"
	"io"
	"strings"

	"github.com/mitchellh/go-wordwrap"

	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/tomlread"
)

const (
	tomlLabelled = tomlread.Labelled
	tomlRepeated = tomlread.Repeated
	tomlGrouped  = tomlread.Grouped
)

// LanguageText writes the blocks of the language for a terminal, one a line.
func LanguageText(w io.Writer) {
	t := table.New(table.Column{Head: "block"}, table.Column{Head: "what it is"})
	for _, k := range spec.Language() {
		t.Row(k.Kind, k.Doc)
	}
	t.Write(w)
}

// BlockText writes the page of one block for a terminal.
func BlockText(w io.Writer, k *spec.BlockKind) {
	hcl, toml := Written(k)
	fmt.Fprintf(w, "%s: %s\n\n  HCL   %s\n", k.Kind, k.Doc, hcl)
	if toml != "" {
		fmt.Fprintf(w, "  TOML  %s\n", toml)
	}
	for i := range k.Attributes {
		a := &k.Attributes[i]
		fmt.Fprintf(w, "\n  %s  (%s", a.Name, Holds(a))
		if g := Given(a); a.Required {
			fmt.Fprintf(w, "; %s", g)
		} else if g != "" {
			fmt.Fprintf(w, "; %s unless given", g)
		}
		fmt.Fprintf(w, ")\n%s\n", indent(wordwrap.WrapString(a.Doc, pageWidth-6), "      "))
	}
}

// languagePage is the table of the whole language in Markdown.
func languagePage() string {
	var b strings.Builder
	b.WriteString("# The language, block by block\n\n" + generated +
		"[language.md](language.md) explains the language; here is all of it. Figures without a\nunit are in the unit named here.\n\n")
	for _, k := range spec.Language() {
		hcl, toml := Written(k)
		fmt.Fprintf(&b, "## %s\n\n%s: `%s`", k.Kind, capital(k.Doc), hcl)
		if toml != "" {
			fmt.Fprintf(&b, ", in TOML `%s`", toml)
		}
		b.WriteString(".\n\n")
		if len(k.Attributes) == 0 {
			continue
		}
		b.WriteString("| attribute | value | unless given | meaning |\n|---|---|---|---|\n")
		for i := range k.Attributes {
			a := &k.Attributes[i]
			fmt.Fprintf(&b, "| `%s` | %s | %s | %s |\n", a.Name, cell(Holds(a)), cell(Given(a)), cell(a.Doc))
		}
		b.WriteString("\n")
	}
	b.WriteString("## Units\n\n| measure | unit | meaning |\n|---|---|---|\n")
	for _, d := range []quantity.Dimension{quantity.Length, quantity.Angle, quantity.Time, quantity.Speed, quantity.Torque} {
		for _, u := range quantity.Units(d) {
			meaning := u.Meaning
			if u.Name == d.Base() {
				meaning += "; a figure without a unit is in this one"
			}
			fmt.Fprintf(&b, "| %s | `%s` | %s |\n", strings.TrimPrefix(strings.TrimPrefix(d.Noun(), "an "), "a "), u.Name, cell(meaning))
		}
	}
	return b.String()
}

// cell is text fit for a cell of a Markdown table.
func cell(s string) string { return strings.ReplaceAll(s, "|", "\\|") }
