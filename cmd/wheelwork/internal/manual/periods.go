package manual

import (
	"fmt"
	"io"
	"strings"

	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/rules/sky"
)

// PeriodsText writes the catalogue of periods for a terminal.
func PeriodsText(w io.Writer) {
	t := table.New(table.Column{Head: "period"}, table.Column{Head: "days", Right: true}, table.Column{Head: "turns"}, table.Column{Head: "meaning"})
	for _, p := range sky.Periods() {
		t.Row(p.Name, days(p), way(p), p.About)
	}
	t.Write(w)
}

// periodsPage is the catalogue in Markdown.
func periodsPage() string {
	var b strings.Builder
	b.WriteString("# Periods of the sky\n\n" + generated +
		"What a hand may show: `shows = \"synodic month\"`. Days are of 86400 s; the way is that\nseen from the north. Any of the names will do.\n\n" +
		"| period | days | way | meaning | other names | source |\n|---|---|---|---|---|---|\n")
	for _, p := range sky.Periods() {
		fmt.Fprintf(&b, "| %s | %s | %s | %s | %s | %s |\n", cell(p.Name), days(p), way(p), cell(p.About), cell(strings.Join(p.Also, ", ")), cell(p.Source))
	}
	return b.String()
}

// days is the length of a period as a decimal, to a hundredth of a second of
// time and better.
func days(p sky.Period) string {
	return strings.TrimSuffix(strings.TrimRight(p.Days.FloatString(10), "0"), ".")
}

func way(p sky.Period) string {
	if p.Retrograde {
		return "cw"
	}
	return "ccw"
}
