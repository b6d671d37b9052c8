package rules

import (
	"fmt"
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
)

// Result is what a check of one design found.
type Result struct {
	Findings []Finding
	Aside    []Aside
	Waived   int // findings that a waiver lets stand
}

// Aside is a rule that stood aside, or did so in part.
type Aside struct {
	Rule *Rule
	Why  string
}

// Check runs every rule on a design that was read without problems. The
// problems returned are faults in the design's bounds; with any of them
// nothing is checked.
func Check(d *spec.Design) (Result, []text.Problem) { return CheckFacts(NewFacts(d)) }

// CheckFacts is as Check where the facts are already there.
func CheckFacts(facts *Facts) (Result, []text.Problem) {
	d := facts.Design
	set, problems := settings(d)
	if len(problems) > 0 {
		return Result{}, problems
	}
	var r Result
	idle := map[string]bool{} // rules that did not run in full: their waivers are not stale
	for _, rule := range All() {
		s, ok := set[rule.Name]
		severity := rule.Severity
		if ok && s.severity != nil {
			severity = *s.severity
		}
		if severity == Off || rule.Run == nil {
			idle[rule.Name] = severity == Off
			continue
		}
		p := &Pass{Facts: facts, rule: rule, severity: severity, bounds: s.values, findings: &r.Findings}
		rule.Run(p)
		for _, why := range p.aside {
			r.Aside = append(r.Aside, Aside{rule, why})
			idle[rule.Name] = true
		}
	}
	waive(d, set, idle, &r)
	sortFindings(d, r.Findings)
	return r, nil
}

// setting is what a design says of one rule.
type setting struct {
	severity *Severity
	values   map[string]exact.Rat
}

// settings reads the bounds. The first word on a severity or threshold holds.
func settings(d *spec.Design) (map[string]setting, []text.Problem) {
	if len(d.Bounds) == 0 {
		return nil, nil
	}
	set := map[string]setting{}
	var problems []text.Problem
	tell := func(at text.Place, message, hint string) {
		problems = append(problems, text.Problem{Place: at, Message: message, Hint: hint})
	}
	for _, b := range d.Bounds {
		rule := Named(b.Rule.Text)
		if rule == nil {
			tell(b.Rule.Place(), fmt.Sprintf("no rule is named %q", b.Rule.Text), didYouMean(b.Rule.Text, ruleNames()))
			continue
		}
		s := set[rule.Name]
		if s.values == nil {
			s.values = map[string]exact.Rat{}
		}
		for _, v := range b.Values {
			if v.Key == "severity" {
				word, _ := v.Value.(spec.Name)
				severity, ok := ParseSeverity(word.Text)
				if !ok {
					tell(v.At.Place(), "severity is one of "+strings.Join(Severities, ", "), didYouMean(word.Text, Severities))
				} else if s.severity == nil {
					s.severity = &severity
				}
				continue
			}
			t := rule.threshold(v.Key)
			if t == nil {
				tell(v.At.KeyPlace(), fmt.Sprintf("rule %s has no threshold %q", rule.Name, v.Key), offer(rule, v.Key))
				continue
			}
			x, err := figure(v.Value, t.Dimension)
			if err != nil {
				tell(v.At.Place(), fmt.Sprintf("%s: %v", t.Name, err), "")
				continue
			}
			if _, ok := s.values[t.Name]; !ok {
				s.values[t.Name] = x
			}
		}
		set[rule.Name] = s
	}
	return set, problems
}

func figure(value any, d quantity.Dimension) (exact.Rat, error) {
	switch v := value.(type) {
	case spec.Number:
		return v.Exact, nil
	case spec.Name:
		return quantity.Parse(v.Text, d)
	}
	return exact.Rat{}, fmt.Errorf("%s is wanted", d.Noun())
}

func offer(rule *Rule, word string) string {
	names := []string{"severity"}
	for _, t := range rule.Thresholds {
		names = append(names, t.Name)
	}
	if near := didYouMean(word, names); near != "" {
		return near
	}
	return "it takes " + strings.Join(names, ", ")
}

func ruleNames() []string {
	var names []string
	for _, r := range All() {
		names = append(names, r.Name)
	}
	return names
}

func didYouMean(word string, candidates []string) string {
	if near := spec.Nearest(word, candidates); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return ""
}

// waive takes out the findings that a waiver covers and reports waivers that
// have no reason, name no rule or waive nothing.
func waive(d *spec.Design, set map[string]setting, idle map[string]bool, r *Result) {
	if len(d.Waivers) == 0 {
		return
	}
	used := make([]bool, len(d.Waivers))
	kept := r.Findings[:0]
	for _, f := range r.Findings {
		waived := false
		for i := range d.Waivers {
			w := &d.Waivers[i]
			if w.Rule == f.Rule.Name && w.Reason != "" && w.Covers(f.Place) {
				used[i], waived = true, true
			}
		}
		if waived {
			r.Waived++
			continue
		}
		kept = append(kept, f)
	}
	r.Findings = kept

	s := set[staleWaiver.Name]
	severity := staleWaiver.Severity
	if s.severity != nil {
		severity = *s.severity
	}
	if severity == Off {
		return
	}
	p := &Pass{rule: staleWaiver, severity: severity, findings: &r.Findings}
	for i := range d.Waivers {
		w := &d.Waivers[i]
		switch {
		case Named(w.Rule) == nil:
			f := p.Found(nil, w.RuleAt, "the waiver names no rule: %q", w.Rule)
			if near := spec.Nearest(w.Rule, ruleNames()); near != "" {
				f.Message += fmt.Sprintf("; did you mean %q?", near)
				f.Mend("name the rule "+near, Edit{Place: w.RuleAt, Text: near})
			}
			p.Report(f)
		case w.Reason == "":
			p.Report(p.Found(nil, w.At, "the waiver of %s gives no reason, so it does not hold: write # waive %s: why", w.Rule, w.Rule))
		case !used[i] && !idle[w.Rule]:
			p.Report(p.Found(nil, w.At, "the waiver of %s waives nothing here: the finding is gone, or stands elsewhere", w.Rule))
		}
	}
}

// Worst is the highest severity among the findings, Off if there is none.
func (r *Result) Worst() Severity {
	worst := Off
	for i := range r.Findings {
		worst = max(worst, r.Findings[i].Severity)
	}
	return worst
}
