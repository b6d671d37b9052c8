// Package table writes tables for people: columns lined up by how wide text
// stands on a terminal.
package table

import (
	"io"
	"strings"

	"wheelwork/cmd/wheelwork/internal/terminal"
)

// Table is rows of cells under a head.
type Table struct {
	columns []Column
	rows    [][]string
}

// Column is the head of a column; figures stand to the right.
type Column struct {
	Head  string
	Right bool
}

// New makes an empty table.
func New(columns ...Column) *Table { return &Table{columns: columns} }

// Row adds a row. Cells that are missing are empty.
func (t *Table) Row(cells ...string) {
	row := make([]string, len(t.columns))
	for i := range row {
		if i < len(cells) {
			row[i] = terminal.Printable(cells[i])
		}
	}
	t.rows = append(t.rows, row)
}

// Write writes the table with an indent of two. A column that has no cell
// filled is left out.
func (t *Table) Write(w io.Writer) error {
	width := make([]int, len(t.columns))
	for i, c := range t.columns {
		filled := false
		for _, row := range t.rows {
			width[i] = max(width[i], terminal.Width(row[i]))
			filled = filled || row[i] != ""
		}
		if filled {
			width[i] = max(width[i], terminal.Width(c.Head))
		}
	}
	var all, one strings.Builder
	line := func(cells []string) {
		one.Reset()
		for i, c := range t.columns {
			if width[i] == 0 {
				continue
			}
			pad := strings.Repeat(" ", width[i]-terminal.Width(cells[i]))
			one.WriteString("  ")
			if c.Right {
				one.WriteString(pad + cells[i])
			} else {
				one.WriteString(cells[i] + pad)
			}
		}
		all.WriteString(strings.TrimRight(one.String(), " ") + "\n")
	}
	heads := make([]string, len(t.columns))
	for i, c := range t.columns {
		heads[i] = c.Head
	}
	line(heads)
	for _, row := range t.rows {
		line(row)
	}
	_, err := io.WriteString(w, all.String())
	return err
}
