package cutlist

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/mitchellh/go-wordwrap"

	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules/cutting"
)

// Formats are the forms of the list, the one for people first.
var Formats = []string{"text", "csv", "markdown"}

// Write writes the list of a design in one of the Formats. All lengths are mm.
func Write(w io.Writer, title string, l *cutting.List, format string) error {
	switch format {
	case "csv":
		return writeCSV(w, l)
	case "markdown":
		return writeMarkdown(w, title, l)
	}
	return writeText(w, title, l)
}

func writeText(w io.Writer, title string, l *cutting.List) error {
	fmt.Fprintf(w, "%s\nLengths are in mm. Tolerances, finish and heat treatment are the drawing's.\n", terminal.Printable(title))
	for _, s := range sheets(l) {
		if len(s.rows) == 0 {
			continue
		}
		fmt.Fprintf(w, "\n%s\n", s.title)
		columns := make([]table.Column, len(s.columns))
		for i, c := range s.columns {
			columns[i] = table.Column{Head: c.head, Right: c.right}
		}
		t := table.New(columns...)
		for _, row := range s.rows {
			t.Row(row...)
		}
		if err := t.Write(w); err != nil {
			return err
		}
	}
	fmt.Fprint(w, "\nCautions\n")
	for _, c := range cutting.Cautions {
		lines := strings.Split(wordwrap.WrapString(c, 76), "\n")
		fmt.Fprintf(w, "  - %s\n", strings.Join(lines, "\n    "))
	}
	return nil
}

// writeCSV writes one table: what a row is stands first, columns that do not
// concern it are empty, and the cautions stand at the end as remarks.
func writeCSV(w io.Writer, l *cutting.List) error {
	keys := []string{"part"}
	all := sheets(l)
	for _, s := range all {
		for _, c := range s.columns {
			if !slices.Contains(keys, c.key) {
				keys = append(keys, c.key)
			}
		}
	}
	out := csv.NewWriter(w)
	out.Write(keys)
	for _, s := range all {
		for _, row := range s.rows {
			cells := make([]string, len(keys))
			cells[0] = s.kind
			for i, c := range s.columns {
				cells[slices.Index(keys, c.key)] = safe(row[i])
			}
			out.Write(cells)
		}
	}
	for _, c := range cutting.Cautions {
		cells := make([]string, len(keys))
		cells[0] = "caution"
		cells[slices.Index(keys, "remark")] = c
		out.Write(cells)
	}
	out.Flush()
	return out.Error()
}

// safe keeps a spreadsheet from taking a name for a formula.
func safe(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

func writeMarkdown(w io.Writer, title string, l *cutting.List) error {
	escape := strings.NewReplacer("|", "\\|", "\n", " ", "\r", " ", "<", "&lt;", "*", "\\*", "_", "\\_", "`", "\\`", "[", "\\[")
	var out strings.Builder
	fmt.Fprintf(&out, "# Cut list: %s\n\nLengths are in mm. Tolerances, finish and heat treatment are the drawing's.\n", escape.Replace(title))
	for _, s := range sheets(l) {
		if len(s.rows) == 0 {
			continue
		}
		fmt.Fprintf(&out, "\n## %s\n\n|", s.title)
		for _, c := range s.columns {
			fmt.Fprintf(&out, " %s |", c.head)
		}
		out.WriteString("\n|")
		for _, c := range s.columns {
			out.WriteString(map[bool]string{true: "---:|", false: "---|"}[c.right])
		}
		out.WriteString("\n")
		for _, row := range s.rows {
			out.WriteString("|")
			for _, cell := range row {
				fmt.Fprintf(&out, " %s |", escape.Replace(cell))
			}
			out.WriteString("\n")
		}
	}
	out.WriteString("\n## Cautions\n\n")
	for _, c := range cutting.Cautions {
		fmt.Fprintf(&out, "- %s\n", c)
	}
	_, err := io.WriteString(w, out.String())
	return err
}
