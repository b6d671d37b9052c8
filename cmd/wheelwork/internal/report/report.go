// Package report writes what a check found: for people, and for programs.
package report

import (
	"slices"

	"wheelwork/cmd/wheelwork/internal/inspect"
	"wheelwork/rules"
	"wheelwork/spec/text"
)

// Report is what came of a check of one or more designs.
type Report struct {
	Designs  []string // the designs that were checked
	Findings []Finding
	Aside    []Aside
	Problems []text.Problem
	Waived   int
	Known    int     // findings that a record knows
	Gone     []Known // entries of the record that no longer match

	only []string // the rules looked at, all where it is empty
}

// Finding is a finding and the design it belongs to.
type Finding struct {
	*rules.Finding
	Design string
}

// Aside is a rule that stood aside, and the design in which it did.
type Aside struct {
	rules.Aside
	Design string
}

// New puts the results of designs together, in their order. What two designs
// that share a file say alike is told once.
func New(designs []inspect.Design) *Report {
	r := &Report{}
	type said struct {
		file, message, rule string
		text.Span
	}
	told := map[said]bool{}
	again := func(at text.Place, message, rule string) bool {
		if len(designs) < 2 {
			return false
		}
		s := said{message: message, rule: rule, Span: at.Span}
		if at.Known() {
			s.file = at.File.Name
		}
		before := told[s]
		told[s] = true
		return before
	}
	for i := range designs {
		d := &designs[i]
		for _, p := range d.Problems {
			if !again(p.Place, p.Message, "") {
				r.Problems = append(r.Problems, p)
			}
		}
		if len(d.Problems) > 0 {
			continue
		}
		r.Designs = append(r.Designs, d.Name)
		for j := range d.Result.Findings {
			f := &d.Result.Findings[j]
			if !again(f.Place, f.Message, f.Rule.Name) {
				r.Findings = append(r.Findings, Finding{f, d.Name})
			}
		}
		for _, a := range d.Result.Aside {
			r.Aside = append(r.Aside, Aside{a, d.Name})
		}
		r.Waived += d.Result.Waived
	}
	return r
}

// Only leaves the findings and asides of the named rules; without names it
// leaves all.
func (r *Report) Only(names []string) {
	if len(names) == 0 {
		return
	}
	r.only = names
	r.Findings = slices.DeleteFunc(r.Findings, func(f Finding) bool { return !slices.Contains(names, f.Rule.Name) })
	r.Aside = slices.DeleteFunc(r.Aside, func(a Aside) bool { return !slices.Contains(names, a.Rule.Name) })
}

// Worst is the highest severity among the findings, rules.Off if there is none.
func (r *Report) Worst() rules.Severity {
	worst := rules.Off
	for _, f := range r.Findings {
		worst = max(worst, f.Severity)
	}
	return worst
}

// count says how many findings have the severity.
func (r *Report) count(s rules.Severity) int {
	n := 0
	for _, f := range r.Findings {
		if f.Severity == s {
			n++
		}
	}
	return n
}
