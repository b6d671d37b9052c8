package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/jstemmer/go-junit-report/v2/junit"

	"wheelwork/rules"
	"wheelwork/spec/text"
)

// JUnit writes a test suite a design and a test case a rule. A rule fails where
// a finding of it reaches the threshold, is skipped where it stood aside, and
// passes otherwise. A text that could not be read is a case in error.
func (r *Report) JUnit(w io.Writer, threshold rules.Severity) error {
	all := junit.Testsuites{Name: "wheelwork"}
	if len(r.Problems) > 0 {
		suite := junit.Testsuite{Name: "reading"}
		byFile := map[string][]text.Problem{}
		var order []string
		for _, p := range r.Problems {
			name := fileOf(p.Place)
			if byFile[name] == nil {
				order = append(order, name)
			}
			byFile[name] = append(byFile[name], p)
		}
		for _, name := range order {
			var lines strings.Builder
			for _, p := range byFile[name] {
				fmt.Fprintf(&lines, "%s: %s\n", where(p.Place), withHint(p))
			}
			suite.AddTestcase(junit.Testcase{Name: name, Classname: unreadable, Error: &junit.Result{Message: withHint(byFile[name][0]), Type: unreadable, Data: lines.String()}})
		}
		all.AddSuite(suite)
	}
	for i, design := range r.Designs {
		suite := junit.Testsuite{Name: design, ID: i + 1}
		for _, rule := range rules.All() {
			suite.AddTestcase(r.caseOf(design, rule, threshold))
		}
		all.AddSuite(suite)
	}
	if _, err := io.WriteString(w, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"); err != nil {
		return err
	}
	return all.WriteXML(w)
}

func (r *Report) caseOf(design string, rule *rules.Rule, threshold rules.Severity) junit.Testcase {
	c := junit.Testcase{Name: rule.Name, Classname: design}
	var failing, passing strings.Builder
	first, n := "", 0
	for _, f := range r.Findings {
		if f.Design != design || f.Rule != rule {
			continue
		}
		line := fmt.Sprintf("%s: %s: %s\n", where(f.Place), f.Severity, f.Message)
		if f.Severity < threshold {
			passing.WriteString(line)
			continue
		}
		if n++; n == 1 {
			first = f.Message
		}
		failing.WriteString(line)
	}
	if n > 1 {
		first = fmt.Sprintf("%s (and %d more)", first, n-1)
	}
	switch {
	case n > 0:
		c.Failure = &junit.Result{Message: first, Type: rule.Name, Data: failing.String()}
	default:
		for _, a := range r.Aside {
			if a.Design == design && a.Rule == rule {
				c.Skipped = &junit.Result{Message: a.Why}
				break
			}
		}
	}
	if passing.Len() > 0 {
		c.SystemOut = &junit.Output{Data: passing.String()}
	}
	return c
}
