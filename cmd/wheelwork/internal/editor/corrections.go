package editor

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/spec"
	"wheelwork/spec/text"
)

// meant is how a problem's hint offers what was probably meant.
var meant = regexp.MustCompile(`did you mean (?:("(?:[^"\\]|\\.)*")|(given\.[^?]+))\?`)

// correct is the action that writes what a problem says was meant; ok is false
// where it says nothing, or the text is an expression that must not be
// overwritten.
func (q *inquiry) correct(m *model, p *text.Problem) (a lsp.CodeAction, ok bool) {
	in := m.of(p.Place)
	found := meant.FindStringSubmatch(p.Hint)
	if in == nil || found == nil || p.Len() == 0 {
		return a, false
	}
	old := p.Place.Text()
	var word, written string
	switch quote := strings.IndexAny(old[:1], `"'`) == 0; {
	case found[2] != "":
		word, written = found[2], found[2]
		ok = strings.HasPrefix(old, "given")
	default:
		var err error
		if word, err = strconv.Unquote(found[1]); err != nil {
			return a, false
		}
		n := mention{file: in, span: p.Span, how: asText}
		if kind, _, part := strings.Cut(strings.Trim(old, `"'`), "."); quote && part && slices.Contains(spec.StageKinds, kind) && !strings.Contains(word, ".") {
			n.how = asPart
		}
		if written = word; quote {
			written = n.written(word)
		}
		ok = quote || plainWord(old) && (plainWord(word) || !in.toml())
	}
	e := newEdits(q)
	e.add(in.path, in.uri, in.version, lsp.TextEdit{Range: m.view.Range(in.text, p.Start, p.End), NewText: written})
	return lsp.CodeAction{
		Title: "write " + strconv.Quote(word), Kind: lsp.QuickFix, Preferred: true,
		Diagnostics: []lsp.Diagnostic{m.diagnosticOfProblem(p)}, Edit: e.workspace(),
	}, ok
}

// plainWord reports whether the text is a name or a unit, and no expression.
func plainWord(s string) bool {
	return s != "" && !strings.ContainsAny(s, "+*/%()[]{}\"'.=,\n")
}
