// Package rules holds what wheelwork checks: one file per rule, with its page
// in the file. A rule is a value; adding one touches no other file.
package rules

import (
	"fmt"
	"sort"
	"sync"

	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

// Severity is how much a finding weighs.
type Severity uint8

// The severities, by consequence: what cannot be assembled, jams or tells
// wrong is an error; what wears or is hard to make a warning; a better habit a
// note.
const (
	Off Severity = iota
	Note
	Warning
	Error
)

// Severities are the words for the severities, Off first.
var Severities = []string{"off", "note", "warning", "error"}

func (s Severity) String() string { return Severities[s] }

// ParseSeverity is the severity of that word.
func ParseSeverity(word string) (Severity, bool) {
	for i, w := range Severities {
		if w == word {
			return Severity(i), true
		}
	}
	return Off, false
}

// Group is what a rule is about, for lists of rules.
type Group string

// The groups, in the order in which a design grows.
const (
	Structure Group = "structure"
	Motion    Group = "motion"
	Eclipses  Group = "eclipses"
	Teeth     Group = "teeth"
	Chains    Group = "chains"
	Fit       Group = "fit"
	Making    Group = "making"
	Load      Group = "load"
	Setting   Group = "setting"
	Waivers   Group = "waivers"
)

// Groups lists the groups in order.
var Groups = []Group{Structure, Motion, Eclipses, Teeth, Chains, Fit, Making, Load, Setting, Waivers}

// Threshold is a bound of a rule that a design may set in its bounds block.
type Threshold struct {
	Name      string
	Dimension quantity.Dimension
	Default   string // as a spec would write it
	Doc       string
}

// Rule is one check and its page.
type Rule struct {
	Name     string // kebab-case, the trade's own words
	Group    Group
	Severity Severity // unless a design says otherwise

	Checks  string // what it checks, one sentence
	Why     string // why it matters in the workshop
	Formula string // "" where there is none
	Source  string // where formula and threshold are published, or that they are common practice

	Thresholds []Threshold

	// The examples are made when they are asked for: made at every start, they
	// would cost it half a millisecond.
	Breaks func() string // a spec in HCL that the rule reports
	Keeps  func() string // the same made right

	Run func(*Pass)
}

// Line is the rule in one line, for lists.
func (r *Rule) Line() string { return fmt.Sprintf("%-22s %-8s %s", r.Name, r.Severity, r.Checks) }

var registered []*Rule

// register adds a rule; each rule's file calls it from init.
func register(r *Rule) { registered = append(registered, r) }

var all = sync.OnceValue(func() []*Rule {
	sort.Slice(registered, func(i, j int) bool { return registered[i].Name < registered[j].Name })
	return registered
})

// All lists the rules by name.
func All() []*Rule { return all() }

// Named returns the rule of that name, nil if there is none.
func Named(name string) *Rule {
	list := All()
	i := sort.Search(len(list), func(i int) bool { return list[i].Name >= name })
	if i < len(list) && list[i].Name == name {
		return list[i]
	}
	return nil
}

// threshold returns the rule's threshold of that name, nil if it has none.
func (r *Rule) threshold(name string) *Threshold {
	for i := range r.Thresholds {
		if r.Thresholds[i].Name == name {
			return &r.Thresholds[i]
		}
	}
	return nil
}

// value is the default as a figure; a default that does not parse is a fault
// of the rule, which a test finds.
func (t *Threshold) value() exact.Rat {
	x, err := quantity.Parse(t.Default, t.Dimension)
	if err != nil {
		panic(fmt.Sprintf("threshold %s: %v", t.Name, err))
	}
	return x
}
