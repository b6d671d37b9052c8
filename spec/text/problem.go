package text

import (
	"fmt"
	"sort"
)

// Problem is something wrong with the text itself: it could not be read as a
// design. What a design that was read does wrong is a finding, not a problem.
type Problem struct {
	Place
	Message string
	// Hint says what would mend it, "" if nothing is near.
	Hint string
	// Related places, such as the first use of a doubled name.
	Related []Related
}

// Related is a further place that helps to understand a problem or finding.
type Related struct {
	Place
	Message string
}

func (p Problem) Error() string {
	message := p.Message
	if p.Hint != "" {
		message += "; " + p.Hint
	}
	if !p.Known() {
		return message
	}
	at := p.File.Position(p.Start)
	return fmt.Sprintf("%s:%d:%d: %s", p.File.Name, at.Line, at.Column, message)
}

// SortProblems puts problems in the order of files and places, files in the
// order in which names sort.
func SortProblems(list []Problem) {
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if a.Known() != b.Known() {
			return !a.Known()
		}
		if a.Known() && a.File.Name != b.File.Name {
			return a.File.Name < b.File.Name
		}
		if a.Start != b.Start {
			return a.Start < b.Start
		}
		return a.End < b.End
	})
}
