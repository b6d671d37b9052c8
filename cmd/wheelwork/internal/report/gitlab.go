package report

import (
	"encoding/json"
	"io"

	"wheelwork/rules"
)

// GitLab writes a code quality report: a JSON list that a hosted pipeline
// shows in the change and compares with that of the branch it goes to.
func (r *Report) GitLab(w io.Writer) error {
	type lines struct {
		Begin int `json:"begin"`
		End   int `json:"end"`
	}
	type place struct {
		Path  string `json:"path"`
		Lines lines  `json:"lines"`
	}
	type issue struct {
		Description string `json:"description"`
		CheckName   string `json:"check_name"`
		Fingerprint string `json:"fingerprint"`
		Severity    string `json:"severity"`
		Location    place  `json:"location"`
	}
	severity := map[rules.Severity]string{rules.Note: "info", rules.Warning: "minor", rules.Error: "major"}
	keys := r.Keys()
	list := []issue{}
	for i, e := range r.entries() {
		one := issue{Description: e.message, CheckName: e.rule, Severity: severity[e.severity], Location: place{Path: slash(fileOf(e.Place)), Lines: lines{1, 1}}}
		if line, _, endLine, _, ok := range4(e.Place); ok {
			one.Location.Lines = lines{line, endLine}
		}
		if n := i - len(r.Problems); n >= 0 {
			one.Fingerprint = keys[n].fingerprint(slash(r.Findings[n].Design))
		} else {
			one.Severity = "critical"
			one.Fingerprint = Key{Rule: unreadable, Part: e.message, Nth: 1}.fingerprint(slash(fileOf(e.Place)))
		}
		list = append(list, one)
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(list)
}
