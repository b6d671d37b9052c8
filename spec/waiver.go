package spec

import (
	"bytes"
	"strings"

	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// Waiver is a comment that lets a finding stand: `# waive rule-name: reason`.
type Waiver struct {
	Rule   string
	Reason string
	// At is the comment from the word waive on, RuleAt the rule's name in it.
	At, RuleAt text.Place
	// Scope is what it covers: the line it stands on or above, and if a block
	// or an attribute begins there, the whole of that.
	Scope text.Span
}

// Covers reports whether the place lies in the waiver's scope.
func (w *Waiver) Covers(p text.Place) bool {
	return p.File == w.At.File && w.Scope.Start <= p.Start && p.Start < w.Scope.End
}

var waive = []byte("waive")

// waivers finds the waivers in one file. Comments are looked for only where
// the word occurs at all.
func waivers(f *gathered) []Waiver {
	if !bytes.Contains(f.file.Bytes, waive) {
		return nil
	}
	var comments []text.Span
	if f.hcl != nil {
		comments = f.hcl.Comments()
	} else {
		comments = tomlread.Comments(f.file)
	}
	var list []Waiver
	var in *scopes
	for i, c := range comments {
		if w, ok := waiver(f.file, c); ok {
			if in == nil {
				in = newScopes(f, comments)
			}
			w.Scope = in.of(i)
			list = append(list, w)
		}
	}
	return list
}

// waiver reads a comment, which may be none.
func waiver(file *text.File, comment text.Span) (Waiver, bool) {
	s := string(file.Bytes[comment.Start:comment.End])
	body := strings.TrimLeft(s, "#/* \t\r\n")
	start := comment.Start + int32(len(s)-len(body))
	if strings.HasPrefix(s, "/*") {
		body = strings.TrimSuffix(body, "*/")
	}
	body = strings.TrimRight(body, " \t\r\n")
	rest, ok := strings.CutPrefix(body, "waive")
	if !ok || rest == "" || rest[0] != ' ' && rest[0] != '\t' {
		return Waiver{}, false
	}
	name := strings.TrimLeft(rest, " \t")
	at := start + int32(len(body)-len(name))
	rule, reason, _ := strings.Cut(name, ":")
	rule = strings.TrimRight(rule, " \t")
	if rule == "" || strings.ContainsAny(rule, " \t\r\n") {
		return Waiver{}, false // prose that happens to begin so
	}
	return Waiver{
		Rule:   rule,
		Reason: strings.TrimSpace(reason),
		At:     text.Place{File: file, Span: text.Span{Start: start, End: start + int32(len(body))}},
		RuleAt: text.Place{File: file, Span: text.Span{Start: at, End: at + int32(len(rule))}},
	}, true
}
