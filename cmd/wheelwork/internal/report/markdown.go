package report

import (
	"fmt"
	"io"
	"strings"

	"wheelwork/rules"
)

// Markdown writes the report as a comment for a review: the sum, a table a
// severity, and what would mend each finding folded away.
func (r *Report) Markdown(w io.Writer) error {
	var out strings.Builder
	fmt.Fprintf(&out, "### wheelwork: %s\n", cell(r.sum()))
	if len(r.Problems) > 0 {
		out.WriteString("\n| place | cannot be read |\n|---|---|\n")
		for _, p := range r.Problems {
			fmt.Fprintf(&out, "| %s | %s |\n", code(where(p.Place)), cell(withHint(p)))
		}
	}
	for s := rules.Error; s >= rules.Note; s-- {
		if r.count(s) == 0 {
			continue
		}
		fmt.Fprintf(&out, "\n| place | %s | rule |\n|---|---|---|\n", s)
		for _, f := range r.Findings {
			if f.Severity == s {
				fmt.Fprintf(&out, "| %s | %s | %s |\n", code(where(f.Place)), cell(f.Message), code(f.Rule.Name))
			}
		}
	}
	r.remedies(&out)
	_, err := io.WriteString(w, out.String())
	return err
}

func (r *Report) remedies(out *strings.Builder) {
	opened := false
	for _, f := range r.Findings {
		for _, m := range f.Remedies {
			if !opened {
				out.WriteString("\n<details><summary>What would mend it</summary>\n\n")
				opened = true
			}
			fmt.Fprintf(out, "- %s: %s\n", code(where(f.Place)), cell(m.Title))
		}
	}
	if opened {
		out.WriteString("\n</details>\n")
	}
}

// cell is text that cannot end a table's cell or start markup.
func cell(s string) string {
	return strings.NewReplacer("|", "\\|", "\n", " ", "\r", " ", "<", "&lt;", ">", "&gt;", "*", "\\*", "_", "\\_", "`", "\\`", "[", "\\[", "]", "\\]").Replace(s)
}

func code(s string) string {
	return "`" + strings.NewReplacer("`", "'", "|", "\\|", "\n", " ").Replace(s) + "`"
}
