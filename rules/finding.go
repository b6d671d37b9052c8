package rules

import (
	"fmt"
	"sort"

	"wheelwork/spec"
	"wheelwork/spec/text"
)

// Finding is one thing a design does wrong, at the exact value.
type Finding struct {
	Rule     *Rule
	Severity Severity
	text.Place
	// Part is what it is about, such as `mesh moon_1/moon_2`: findings of two
	// versions of a design are matched by rule and part.
	Part     string
	Message  string
	Related  []text.Related
	Remedies []Remedy
}

// Remedy is a set of edits to the text that makes the rule hold.
type Remedy struct {
	Title string
	Edits []Edit
}

// Edit puts text in the place of what stands there.
type Edit struct {
	text.Place
	Text string
}

// Replace is the edit that gives an attribute another value. ok is false where
// the value is worked out from named values, which an edit must not overwrite.
func Replace(at spec.At, value string) (edit Edit, ok bool) {
	return Edit{Place: at.Place(), Text: value}, at.Set() && !at.Derived
}

// valid reports whether the edits lie within their files and apart from one
// another; it sorts them.
func (r *Remedy) valid() error {
	sort.SliceStable(r.Edits, func(i, j int) bool {
		a, b := r.Edits[i], r.Edits[j]
		if a.File != b.File {
			return a.File.Name < b.File.Name
		}
		return a.Start < b.Start
	})
	for i, e := range r.Edits {
		switch {
		case e.File == nil:
			return fmt.Errorf("remedy %q edits no file", r.Title)
		case e.Start < 0 || e.End < e.Start || int(e.End) > len(e.File.Bytes):
			return fmt.Errorf("remedy %q edits outside %s", r.Title, e.File.Name)
		case i > 0 && r.Edits[i-1].File == e.File && r.Edits[i-1].End > e.Start:
			return fmt.Errorf("remedy %q has edits that overlap", r.Title)
		}
	}
	return nil
}

// sortFindings puts findings in the order of the design's files, their places,
// rules and messages.
func sortFindings(d *spec.Design, list []Finding) {
	order := make(map[*text.File]int, len(d.Files))
	for i, f := range d.Files {
		order[f] = i
	}
	sort.SliceStable(list, func(i, j int) bool {
		a, b := &list[i], &list[j]
		switch {
		case a.File != b.File:
			return order[a.File] < order[b.File]
		case a.Start != b.Start:
			return a.Start < b.Start
		case a.Rule.Name != b.Rule.Name:
			return a.Rule.Name < b.Rule.Name
		}
		return a.Message < b.Message
	})
}
