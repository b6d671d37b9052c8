package report

import (
	"fmt"
	"io"
	"strings"

	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules"
	"wheelwork/spec/text"
)

// entryOf is a finding or a problem, as formats see it that make no difference.
type entryOf struct {
	text.Place
	severity rules.Severity
	rule     string
	message  string
}

// entries are the problems, then the findings.
func (r *Report) entries() []entryOf {
	list := make([]entryOf, 0, len(r.Problems)+len(r.Findings))
	for _, p := range r.Problems {
		list = append(list, entryOf{p.Place, rules.Error, unreadable, withHint(p)})
	}
	for _, f := range r.Findings {
		list = append(list, entryOf{f.Place, f.Severity, f.Rule.Name, f.Message})
	}
	return list
}

// Lines writes one line a finding, `file:line:column: severity: message
// [rule]`, the form that editors and build tools know from GNU compilers.
func (r *Report) Lines(w io.Writer) error {
	for _, e := range r.entries() {
		if _, err := fmt.Fprintf(w, "%s: %s: %s [%s]\n", where(e.Place), e.severity, terminal.Printable(e.message), e.rule); err != nil {
			return err
		}
	}
	return nil
}

// GitHub writes workflow commands that a hosted run shows beside the lines of
// a change. Each line is one command; its properties and message are escaped
// as the runner's documentation says.
func (r *Report) GitHub(w io.Writer) error {
	property := strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C")
	message := strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A")
	for _, e := range r.entries() {
		command := map[rules.Severity]string{rules.Note: "notice", rules.Warning: "warning", rules.Error: "error"}[e.severity]
		place := "file=" + property.Replace(slash(fileOf(e.Place)))
		if line, column, endLine, endColumn, ok := range4(e.Place); ok {
			place += fmt.Sprintf(",line=%d,col=%d,endLine=%d,endColumn=%d", line, column, endLine, endColumn)
		}
		if _, err := fmt.Fprintf(w, "::%s %s,title=%s::%s\n", command, place, property.Replace(e.rule), message.Replace(e.message)); err != nil {
			return err
		}
	}
	return nil
}

// Azure writes the logging commands of a hosted pipeline. It knows errors and
// warnings; a note is written as a plain line.
func (r *Report) Azure(w io.Writer) error {
	escape := strings.NewReplacer("%", "%AZP25", "\r", "%0D", "\n", "%0A", ";", "%3B", "]", "%5D")
	for _, e := range r.entries() {
		if e.severity == rules.Note {
			fmt.Fprintf(w, "%s: %s: %s [%s]\n", where(e.Place), e.severity, terminal.Printable(e.message), e.rule)
			continue
		}
		properties := "type=" + e.severity.String() + ";sourcepath=" + escape.Replace(fileOf(e.Place))
		if line, column, _, _, ok := range4(e.Place); ok {
			properties += fmt.Sprintf(";linenumber=%d;columnnumber=%d", line, column)
		}
		properties += ";code=" + escape.Replace(e.rule)
		if _, err := fmt.Fprintf(w, "##vso[task.logissue %s]%s\n", properties, strings.NewReplacer("%", "%AZP25", "\r", "%0D", "\n", "%0A").Replace(e.message)); err != nil {
			return err
		}
	}
	return nil
}

// TeamCity writes service messages: each rule once as an inspection type, then
// its inspections.
func (r *Report) TeamCity(w io.Writer) error {
	escape := func(s string) string {
		var out strings.Builder
		for _, c := range s {
			switch {
			case strings.ContainsRune("|'[]", c):
				out.WriteRune('|')
				out.WriteRune(c)
			case c == '\n':
				out.WriteString("|n")
			case c == '\r':
				out.WriteString("|r")
			case c > 127 && c <= 0xffff:
				fmt.Fprintf(&out, "|0x%04x", c)
			case c > 0xffff:
				out.WriteRune('?')
			default:
				out.WriteRune(c)
			}
		}
		return out.String()
	}
	known := map[string]bool{}
	for _, e := range r.entries() {
		if !known[e.rule] {
			known[e.rule] = true
			what, group := "the text can be read as a design", "language"
			if rule := rules.Named(e.rule); rule != nil {
				what, group = rule.Checks, string(rule.Group)
			}
			fmt.Fprintf(w, "##teamcity[inspectionType id='%s' name='%s' category='%s' description='%s']\n", escape(e.rule), escape(e.rule), escape(group), escape(what))
		}
		severity := map[rules.Severity]string{rules.Note: "INFO", rules.Warning: "WARNING", rules.Error: "ERROR"}[e.severity]
		line, _, _, _, _ := range4(e.Place)
		if _, err := fmt.Fprintf(w, "##teamcity[inspection typeId='%s' message='%s' file='%s' line='%d' SEVERITY='%s']\n",
			escape(e.rule), escape(e.message), escape(fileOf(e.Place)), line, severity); err != nil {
			return err
		}
	}
	return nil
}

func fileOf(at text.Place) string {
	if !at.Known() {
		return ""
	}
	return at.File.Name
}

// range4 is where a place starts and ends; ok is false where there is no text.
func range4(at text.Place) (line, column, endLine, endColumn int, ok bool) {
	if !at.Known() || len(at.File.Bytes) == 0 {
		return 0, 0, 0, 0, false
	}
	start, end := at.File.Position(at.Start), at.File.Position(at.End)
	return start.Line, start.Column, end.Line, end.Column, true
}
