package editor

import (
	"reflect"
	"slices"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/rules"
	"wheelwork/spec/text"
)

// actions lists what can be done about the problems and findings in a range:
// the word that was meant, the remedies of each, and a waiver to give a reason
// for.
func actions(q *inquiry, p *lsp.CodeActionParams) (any, error) {
	list := []lsp.CodeAction{}
	if len(p.Context.Only) > 0 && !slices.ContainsFunc(p.Context.Only, func(kind string) bool {
		return kind == "" || kind == lsp.QuickFix
	}) {
		return list, nil
	}
	var waivers []lsp.CodeAction
	from, to := p.Range.Start, p.Range.End
	for _, c := range q.of {
		m := c.now
		m.mu.Lock()
		if m.reach(checked); m.at(q.doc.path) != nil && m.fits(q.docs) {
			for i := range m.problems {
				if p := &m.problems[i]; q.wants(m, p.Place, from, to) {
					if a, ok := q.correct(m, p); ok {
						list = joined(list, a)
					}
				}
			}
			for i := range m.result.Findings {
				f := &m.result.Findings[i]
				if !q.wants(m, f.Place, from, to) {
					continue
				}
				for _, a := range q.mend(m, f) {
					list = joined(list, a)
				}
				if f.Rule.Group != rules.Waivers {
					waivers = joined(waivers, q.waiver(m, f))
				}
			}
		}
		m.mu.Unlock()
	}
	return append(list, waivers...), nil
}

// wants reports whether a place lies in the document and touches the range.
func (q *inquiry) wants(m *model, at text.Place, from, to lsp.Position) bool {
	in := m.of(at)
	if in == nil || in.path != q.doc.path {
		return false
	}
	r := m.view.Range(in.text, at.Start, at.End)
	return !to.Before(r.Start) && !r.End.Before(from)
}

// joined adds an action to a list. One that is there already, for another
// finding or of another design, is for both.
func joined(list []lsp.CodeAction, a lsp.CodeAction) []lsp.CodeAction {
	for i := range list {
		b := &list[i]
		if a.Title != b.Title || !reflect.DeepEqual(a.Edit, b.Edit) {
			continue
		}
		for _, d := range a.Diagnostics {
			if !slices.ContainsFunc(b.Diagnostics, func(other lsp.Diagnostic) bool { return reflect.DeepEqual(d, other) }) {
				b.Diagnostics = append(b.Diagnostics, d)
			}
		}
		return list
	}
	return append(list, a)
}

// mend makes actions of the remedies of a finding.
func (q *inquiry) mend(m *model, f *rules.Finding) []lsp.CodeAction {
	var list []lsp.CodeAction
	of := []lsp.Diagnostic{m.diagnosticOf(f)}
	for i := range f.Remedies {
		e := newEdits(q)
		for _, one := range f.Remedies[i].Edits {
			if in := m.of(one.Place); in != nil {
				e.add(in.path, in.uri, in.version, lsp.TextEdit{Range: m.view.Range(in.text, one.Start, one.End), NewText: one.Text})
			}
		}
		list = append(list, lsp.CodeAction{
			Title: f.Remedies[i].Title, Kind: lsp.QuickFix, Diagnostics: of,
			Preferred: len(f.Remedies) == 1, Edit: e.workspace(),
		})
	}
	return list
}

// waiver is the action that puts a waiver on a line of its own above a finding.
// It does not hold before its reason is written.
func (q *inquiry) waiver(m *model, f *rules.Finding) lsp.CodeAction {
	in := m.of(f.Place)
	line := in.text.LineOf(f.Start)
	start := in.text.Start(line)
	content := string(in.Bytes[start:in.text.End(line)])
	indent := content[:len(content)-len(strings.TrimLeft(content, " \t\ufeff"))]
	ending := "\n"
	if strings.HasSuffix(string(in.Bytes[start:in.lineAfter(line)]), "\r\n") {
		ending = "\r\n"
	}
	at := start + int32(len(indent))
	e := newEdits(q)
	e.add(in.path, in.uri, in.version, lsp.TextEdit{
		Range:   m.view.Range(in.text, at, at),
		NewText: "# waive " + f.Rule.Name + ": " + ending + strings.TrimPrefix(indent, "\ufeff"),
	})
	return lsp.CodeAction{
		Title: "waive " + f.Rule.Name + " here, with a reason to be given",
		Kind:  lsp.QuickFix, Diagnostics: []lsp.Diagnostic{m.diagnosticOf(f)}, Edit: e.workspace(),
	}
}

// lineAfter is where the line ends, with its line end.
func (f *file) lineAfter(line int) int32 {
	if line+1 < f.text.Count() {
		return f.text.Start(line + 1)
	}
	return int32(len(f.Bytes))
}
