// Package manual writes the pages that are made from the program itself: of
// each rule, of the language and of the catalogue of periods.
package manual

import (
	"fmt"
	"io"
	"strings"

	"github.com/mitchellh/go-wordwrap"

	"wheelwork/rules"
)

const pageWidth = 80

// RuleText writes the page of a rule for a terminal.
func RuleText(w io.Writer, r *rules.Rule) {
	fmt.Fprintf(w, "%s\n\n", r.Name)
	paragraph := func(head, body string) {
		if body != "" {
			fmt.Fprintf(w, "%s\n%s\n\n", head, indent(wordwrap.WrapString(body, pageWidth-2), "  "))
		}
	}
	paragraph("Checks that", sentence(r.Checks))
	paragraph("Why", capital(sentence(r.Why)))
	paragraph("Formula", r.Formula)
	paragraph("Source", capital(sentence(r.Source)))
	if len(r.Thresholds) > 0 {
		fmt.Fprint(w, "Thresholds\n")
		for _, t := range r.Thresholds {
			fmt.Fprintf(w, "  %s = %s\n%s\n", t.Name, t.Default, indent(wordwrap.WrapString(t.Doc, pageWidth-6), "      "))
		}
		fmt.Fprintln(w)
	}
	fmt.Fprintf(w, "Severity\n  %s, unless a design says otherwise:\n%s\n\n", r.Severity, indent(boundsExample(r), "      "))
	fmt.Fprintf(w, "To let one finding stand, with its reason, on its line or its block:\n      # waive %s: why it may stand here\n\n", r.Name)
	fmt.Fprintf(w, "Breaks it\n%s\n\n", indent(strings.TrimSpace(r.Breaks()), "      "))
	fmt.Fprintf(w, "Keeps it\n%s\n", indent(strings.TrimSpace(r.Keeps()), "      "))
}

// boundsExample is a bounds block for the rule, with its thresholds at their
// defaults and another severity.
func boundsExample(r *rules.Rule) string {
	other := rules.Warning
	if r.Severity == rules.Warning {
		other = rules.Error
	}
	var b strings.Builder
	fmt.Fprintf(&b, "bounds {\n  %s {\n    severity = %q\n", r.Name, other)
	for _, t := range r.Thresholds {
		fmt.Fprintf(&b, "    %s = %q\n", t.Name, t.Default)
	}
	b.WriteString("  }\n}")
	return b.String()
}

// RuleList writes all rules in their groups, one a line.
func RuleList(w io.Writer, all []*rules.Rule) {
	eachGroup(all, func(g rules.Group, list []*rules.Rule) {
		fmt.Fprintf(w, "%s\n", g)
		for _, r := range list {
			fmt.Fprintf(w, "  %s\n", r.Line())
		}
		fmt.Fprintln(w)
	})
}

// eachGroup calls do for each group that has rules.
func eachGroup(all []*rules.Rule, do func(rules.Group, []*rules.Rule)) {
	for _, g := range rules.Groups {
		var list []*rules.Rule
		for _, r := range all {
			if r.Group == g {
				list = append(list, r)
			}
		}
		if len(list) > 0 {
			do(g, list)
		}
	}
}

// sentence ends a text with a full stop.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" || strings.HasSuffix(s, ".") {
		return s
	}
	return s + "."
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func indent(s, by string) string {
	lines := strings.Split(s, "\n")
	for i, l := range lines {
		if l != "" {
			lines[i] = by + l
		}
	}
	return strings.Join(lines, "\n")
}
