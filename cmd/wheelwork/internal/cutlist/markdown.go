package cutlist

import (
	"fmt"
	"io"
	"strings"

	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules/cutting"
)

// Markdown writes a list as a page with tables.
func Markdown(w io.Writer, l *cutting.List) error {
	var b strings.Builder
	fmt.Fprintf(&b, "# Cut list: %s\n", plain(l.Design))
	list := sheets(l)
	if len(list) == 0 {
		b.WriteString("\nThe design has neither wheels nor chains.\n")
	}
	for _, s := range list {
		fmt.Fprintf(&b, "\n## %s\n\n|", s.title)
		for _, c := range s.columns {
			fmt.Fprintf(&b, " %s |", c.head)
		}
		b.WriteString("\n|")
		for _, c := range s.columns {
			if c.right {
				b.WriteString("---:|")
			} else {
				b.WriteString("---|")
			}
		}
		b.WriteString("\n")
		for _, row := range s.rows {
			b.WriteString("|")
			for _, cell := range row {
				fmt.Fprintf(&b, " %s |", plain(cell))
			}
			b.WriteString("\n")
		}
	}
	bullets(&b, "Notes", l.Notes)
	bullets(&b, "Cautions", l.Cautions)
	_, err := io.WriteString(w, b.String())
	return err
}

func bullets(b *strings.Builder, head string, list []string) {
	fmt.Fprintf(b, "\n## %s\n\n", head)
	for _, p := range list {
		fmt.Fprintf(b, "- %s\n", p)
	}
}

// marks are what Markdown reads as more than text, in a cell of a table.
var marks = strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "`", "\\`", "<", "&lt;", ">", "&gt;", "[", `\[`, "]", `\]`, "\n", " ", "\r", " ")

// plain is text that Markdown shows as it stands.
func plain(s string) string { return marks.Replace(terminal.Printable(s)) }
