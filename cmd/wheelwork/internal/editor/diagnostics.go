package editor

import (
	"slices"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/rules"
	"wheelwork/spec/text"
)

// view is what decides how things are shown to the client.
type view struct {
	lines.Encoding
	related   bool   // whether diagnostics may have related places
	pages     string // where the rules' pages lie, "" if links cannot be shown
	versioned bool   // whether edits can name the version they are of
	markdown  bool   // whether texts that are shown may be Markdown
	snippets  bool   // whether completions may have places to fill in
	tree      bool   // whether symbols may have symbols within
}

func (s *Server) view() view {
	can := s.client.TextDocument.PublishDiagnostics
	v := view{
		Encoding: s.encoding, related: can.RelatedInformation,
		versioned: s.client.Workspace.WorkspaceEdit.DocumentChanges,
		markdown:  slices.Contains(s.client.TextDocument.Hover.ContentFormat, lsp.Markdown),
		snippets:  s.client.TextDocument.Completion.CompletionItem.SnippetSupport,
		tree:      s.client.TextDocument.DocumentSymbol.Hierarchical,
	}
	if can.CodeDescriptionSupport {
		v.pages = s.pages
	}
	return v
}

const source = "wheelwork"

// diagnose makes diagnostics of a model's problems and findings, by the
// canonical path of the file. The caller holds the model's mutex.
func (m *model) diagnose() map[string][]lsp.Diagnostic {
	all := map[string][]lsp.Diagnostic{}
	for i := range m.problems {
		p := &m.problems[i]
		m.show(all, p.Place, m.diagnosticOfProblem(p))
	}
	for i := range m.result.Findings {
		f := &m.result.Findings[i]
		m.show(all, f.Place, m.diagnosticOf(f))
	}
	return all
}

// diagnosticOfProblem is a problem as the client is told of it.
func (m *model) diagnosticOfProblem(p *text.Problem) lsp.Diagnostic {
	one := lsp.Diagnostic{Severity: lsp.SeverityError, Source: source, Message: p.Message, Related: m.related(p.Related)}
	if p.Hint != "" {
		one.Message += "; " + p.Hint
	}
	if at, ok := m.location(p.Place); ok {
		one.Range = at.Range
	}
	return one
}

// diagnosticOf is a finding as the client is told of it.
func (m *model) diagnosticOf(f *rules.Finding) lsp.Diagnostic {
	one := lsp.Diagnostic{
		Severity: severity(f.Severity), Code: f.Rule.Name, Source: source,
		Message: f.Message, Related: m.related(f.Related),
	}
	if m.view.pages != "" {
		one.CodeDescription = &lsp.CodeDescription{Href: pageOf(m.view.pages, f.Rule.Name)}
	}
	if at, ok := m.location(f.Place); ok {
		one.Range = at.Range
	}
	return one
}

func (m *model) show(all map[string][]lsp.Diagnostic, at text.Place, d lsp.Diagnostic) {
	if f := m.of(at); f != nil {
		all[f.path] = append(all[f.path], d)
	}
}

func severity(s rules.Severity) int {
	switch s {
	case rules.Error:
		return lsp.SeverityError
	case rules.Warning:
		return lsp.SeverityWarning
	}
	return lsp.SeverityInformation
}

func (m *model) related(list []text.Related) []lsp.Related {
	if !m.view.related {
		return nil
	}
	var out []lsp.Related
	for _, r := range list {
		if at, ok := m.location(r.Place); ok {
			out = append(out, lsp.Related{Location: at, Message: r.Message})
		}
	}
	return out
}

// location is where a place lies for the client.
func (m *model) location(p text.Place) (lsp.Location, bool) {
	f := m.of(p)
	if f == nil {
		return lsp.Location{}, false
	}
	return lsp.Location{URI: f.uri, Range: m.view.Range(f.text, p.Start, p.End)}, true
}
