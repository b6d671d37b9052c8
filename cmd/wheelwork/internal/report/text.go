package report

import (
	"fmt"
	"io"
	"strings"

	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules"
	"wheelwork/spec/text"
)

// Style is how the report for people looks.
type Style struct {
	Colour bool
	Aside  string // "brief", "full" or "off"
	// Threshold is the severity from which on a finding fails, for JUnit.
	Threshold rules.Severity
	Version   string // of wheelwork, for SARIF
}

// Formats are the words for the forms of a report, the one for people first.
var Formats = []string{"text", "json", "sarif", "junit", "lines", "markdown", "github", "gitlab", "azure", "teamcity"}

// Write writes the report in one of the Formats.
func (r *Report) Write(w io.Writer, format string, s Style) error {
	switch format {
	case "json":
		return r.JSON(w)
	case "sarif":
		return r.SARIF(w, s.Version)
	case "junit":
		return r.JUnit(w, s.Threshold)
	case "lines":
		return r.Lines(w)
	case "markdown":
		return r.Markdown(w)
	case "github":
		return r.GitHub(w)
	case "gitlab":
		return r.GitLab(w)
	case "azure":
		return r.Azure(w)
	case "teamcity":
		return r.TeamCity(w)
	}
	r.Text(w, s)
	return nil
}

// Text writes the report for people: each finding with its source line and the
// place marked beneath it, then the rules that stood aside, then the sum.
func (r *Report) Text(w io.Writer, s Style) {
	p := newPaint(s.Colour)
	for _, problem := range r.Problems {
		message := problem.Message
		if problem.Hint != "" {
			message += "; " + problem.Hint
		}
		p.entry(w, problem.Place, rules.Error, message, "", problem.Related, nil)
	}
	for _, f := range r.Findings {
		p.entry(w, f.Place, f.Severity, f.Message, f.Rule.Name, f.Related, f.Remedies)
	}
	if s.Aside != "off" {
		r.aside(w, s.Aside == "full")
	}
	r.gone(w)
	fmt.Fprintln(w, r.sum())
}

// entry writes one finding or problem.
func (p *paint) entry(w io.Writer, at text.Place, severity rules.Severity, message, rule string, related []text.Related, remedies []rules.Remedy) {
	fmt.Fprintf(w, "%s: %s: %s", p.place(where(at)), p.severity(severity), terminal.Printable(message))
	if rule != "" {
		fmt.Fprintf(w, " [%s]", rule)
	}
	fmt.Fprintln(w)
	if line, mark := excerpt(at); mark != "" {
		fmt.Fprintf(w, "    %s\n    %s\n", line, p.mark(severity, mark))
	}
	for _, r := range related {
		fmt.Fprintf(w, "  %s: %s\n", p.place(where(r.Place)), terminal.Printable(r.Message))
	}
	for _, m := range remedies {
		fmt.Fprintf(w, "  remedy: %s\n", terminal.Printable(m.Title))
	}
}

// where is file:line:column, or the file alone where there is no text.
func where(at text.Place) string {
	switch {
	case !at.Known():
		return "wheelwork"
	case len(at.File.Bytes) == 0:
		return terminal.Printable(at.File.Name)
	}
	pos := at.File.Position(at.Start)
	return fmt.Sprintf("%s:%d:%d", terminal.Printable(at.File.Name), pos.Line, pos.Column)
}

// aside says which rules stood aside in which design, rules with the same
// reasons together. In brief, one reason stands for all of a rule's.
func (r *Report) aside(w io.Writer, full bool) {
	for at := 0; at < len(r.Aside); {
		end := at
		for end < len(r.Aside) && r.Aside[end].Design == r.Aside[at].Design {
			end++
		}
		fmt.Fprint(w, "stood aside")
		if len(r.Designs) > 1 {
			fmt.Fprintf(w, " in %s", terminal.Printable(r.Aside[at].Design))
		}
		fmt.Fprintln(w)
		for _, g := range groups(r.Aside[at:end], full) {
			fmt.Fprintf(w, "  %s: %s\n", strings.Join(g.rules, ", "), terminal.Printable(g.why))
		}
		at = end
	}
}

type group struct {
	why   string
	rules []string
}

// groups puts rules that stood aside for the same reason together, in the
// order in which the reasons come first.
func groups(list []Aside, full bool) []group {
	var out []group
	add := func(rule, why string) {
		for i := range out {
			if out[i].why == why {
				out[i].rules = append(out[i].rules, rule)
				return
			}
		}
		out = append(out, group{why, []string{rule}})
	}
	for i := 0; i < len(list); {
		n := i
		for n < len(list) && list[n].Rule == list[i].Rule {
			if full {
				add(list[n].Rule.Name, list[n].Why)
			}
			n++
		}
		if !full {
			why := list[i].Why
			if more := n - i - 1; more > 0 {
				why += fmt.Sprintf(" (and %d more)", more)
			}
			add(list[i].Rule.Name, why)
		}
		i = n
	}
	return out
}

// sum is the last line.
func (r *Report) sum() string {
	var parts []string
	add := func(n int, noun string) {
		if n > 0 {
			parts = append(parts, counted(n, noun))
		}
	}
	add(len(r.Problems), "problem")
	add(r.count(rules.Error), "error")
	add(r.count(rules.Warning), "warning")
	add(r.count(rules.Note), "note")
	s := strings.Join(parts, ", ")
	if s == "" {
		s = "nothing found"
	}
	if n := len(r.Designs); n > 0 {
		s += " in " + counted(n, "design")
	}
	if r.Waived > 0 {
		s += ", " + counted(r.Waived, "finding") + " waived"
	}
	if r.Known > 0 {
		s += ", " + counted(r.Known, "finding") + " known"
	}
	return s
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
