package rules

import (
	"fmt"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/text"
	"wheelwork/spec/train"
)

// Facts is what the rules share about one design, each worked out once.
type Facts struct {
	Design *spec.Design
	Train  *train.Train

	memo map[any]any
}

// NewFacts works out a design's motion.
func NewFacts(d *spec.Design) *Facts {
	return &Facts{Design: d, Train: train.Solve(d), memo: map[any]any{}}
}

// Shared returns what make works out from the facts, working it out only the
// first time it is asked for. The key is a private type of the asking file.
func Shared[T any](f *Facts, key any, make func(*Facts) T) T {
	if v, ok := f.memo[key]; ok {
		return v.(T)
	}
	v := make(f)
	f.memo[key] = v
	return v
}

// Pass is one rule at work on one design.
type Pass struct {
	*Facts
	rule     *Rule
	severity Severity
	bounds   map[string]exact.Rat
	findings *[]Finding
	aside    []string
}

// Bound is the threshold of that name, in its base unit, exactly.
func (p *Pass) Bound(name string) exact.Rat {
	if x, ok := p.bounds[name]; ok {
		return x
	}
	t := p.rule.threshold(name)
	if t == nil {
		panic(fmt.Sprintf("rule %s has no threshold %s", p.rule.Name, name))
	}
	return t.value()
}

// Limit is the threshold of that name as a float, for geometry.
func (p *Pass) Limit(name string) float64 { return p.Bound(name).Float() }

// Severity is what a finding of this rule weighs in this design.
func (p *Pass) Severity() Severity { return p.severity }

// Found is a finding about a part, to be refined before Report.
func (p *Pass) Found(part *spec.Part, at text.Place, message string, args ...any) *Finding {
	f := &Finding{Place: at, Message: fmt.Sprintf(message, args...)}
	if part != nil {
		f.Part = part.Title()
	}
	return f
}

// See adds a related place.
func (f *Finding) See(at text.Place, message string, args ...any) *Finding {
	if at.Known() {
		f.Related = append(f.Related, text.Related{Place: at, Message: fmt.Sprintf(message, args...)})
	}
	return f
}

// Mend adds a remedy of edits. It adds none where there is no edit.
func (f *Finding) Mend(title string, edits ...Edit) *Finding {
	if len(edits) > 0 {
		f.Remedies = append(f.Remedies, Remedy{Title: title, Edits: edits})
	}
	return f
}

// Weigh gives the finding another severity than the rule's, unless the design
// sets the rule's own.
func (f *Finding) Weigh(s Severity) *Finding {
	f.Severity = s
	return f
}

// Report hands in a finding. A finding without a place, or with a remedy that
// cannot be carried out, is a fault of the rule.
func (p *Pass) Report(f *Finding) {
	if !f.Known() {
		panic(fmt.Sprintf("rule %s reports without a place: %s", p.rule.Name, f.Message))
	}
	for i := range f.Remedies {
		if err := f.Remedies[i].valid(); err != nil {
			panic(fmt.Sprintf("rule %s: %v", p.rule.Name, err))
		}
	}
	f.Rule = p.rule
	if f.Severity == Off || p.severity != p.rule.Severity {
		f.Severity = p.severity
	}
	*p.findings = append(*p.findings, *f)
}

// StandAside says that the rule, or part of it, cannot run, and for want of what.
func (p *Pass) StandAside(why string, args ...any) {
	said := fmt.Sprintf(why, args...)
	for _, w := range p.aside {
		if w == said {
			return
		}
	}
	p.aside = append(p.aside, said)
}
