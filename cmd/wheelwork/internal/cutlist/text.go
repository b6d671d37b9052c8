package cutlist

import (
	"fmt"
	"io"
	"strings"

	"github.com/mitchellh/go-wordwrap"

	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules/cutting"
)

const pageWidth = 80

// Text writes a list as tables for people.
func Text(w io.Writer, l *cutting.List) error {
	fmt.Fprintf(w, "%s\n", terminal.Printable(l.Design))
	list := sheets(l)
	if len(list) == 0 {
		fmt.Fprint(w, "\nThe design has neither wheels nor chains.\n")
	}
	for _, s := range list {
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
	paragraphs(w, "Notes", l.Notes)
	paragraphs(w, "Cautions", l.Cautions)
	return nil
}

func paragraphs(w io.Writer, head string, list []string) {
	fmt.Fprintf(w, "\n%s\n", head)
	for _, p := range list {
		fmt.Fprintf(w, "  - %s\n", strings.ReplaceAll(wordwrap.WrapString(p, pageWidth-4), "\n", "\n    "))
	}
}
