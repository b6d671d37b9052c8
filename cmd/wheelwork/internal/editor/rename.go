package editor

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/spec"
)

// renamable says why a thing cannot be renamed, "" if it can.
func renamable(of symbol) string {
	switch of.set {
	case periods:
		return "the name of a period of the sky is the catalogue's"
	case ruled:
		return "the name of a rule is the program's own"
	case paths:
		return "a file is renamed where files are"
	}
	return ""
}

func prepareRename(q *inquiry, p *lsp.PositionParams) (any, error) {
	var result any
	var err error
	q.navigable(func(l *lens, in *file) bool {
		n := l.mentioned(in, p.Position)
		if n == nil {
			return false
		}
		if why := renamable(n.symbol); why != "" {
			err = failed("%s", why)
			return true
		}
		if r, ok := l.span(in, n.inner()); ok {
			result = lsp.PrepareRename{Range: r, Placeholder: n.name}
		}
		return true
	})
	return result, err
}

// rename gives what is named at a place another name, in all files of all
// designs that share it.
func rename(q *inquiry, p *lsp.RenameParams) (any, error) {
	list := q.mentions(p.Position)
	if len(list) == 0 {
		return nil, failed("nothing is named here")
	}
	of := list[0].symbol
	if why := renamable(of); why != "" {
		return nil, failed("%s", why)
	}
	if why := unfit(of.set, p.NewName); why != "" {
		return nil, failed("%s", why)
	}
	if of.name != p.NewName && of.set != trains {
		for _, other := range q.everywhere(symbol{of.set, p.NewName}) {
			if other.def {
				return nil, failed("%q is the name of another %s already", p.NewName, word(of.set))
			}
		}
	}
	edits := newEdits(q)
	for _, one := range list {
		switch {
		case one.unsure || one.changed:
			return nil, failed("the text of the design is broken; mend it first, so that no place is missed")
		case one.derived:
			return nil, failed("in %s the name %q comes of a named value; rename it there by hand", one.file.Name, of.name)
		}
		edits.add(one.file.path, one.location.URI, one.version, lsp.TextEdit{
			Range: q.whole(&one), NewText: one.written(p.NewName),
		})
	}
	return edits.workspace(), nil
}

// whole is the range of a mention with its quotes.
func (q *inquiry) whole(one *placed) lsp.Range {
	return q.view.Range(one.file.text, one.span.Start, one.span.End)
}

func word(set string) string {
	switch set {
	case "arbor":
		return "arbor or stud"
	case "wheel":
		return "wheel or sprocket"
	case values:
		return "named value"
	}
	return set
}

// unfit says why a text is no name, "" if it is one.
func unfit(set, name string) string {
	switch {
	case strings.TrimSpace(name) == "":
		return "a name must not be empty"
	case len(name) > spec.MostName:
		return "a name has at most " + strconv.Itoa(spec.MostName) + " bytes"
	case strings.ContainsFunc(name, unicode.IsControl):
		return "a name has no line ends or other control characters"
	case (set == "arm" || set == "arbor") && name == spec.Frame:
		return "\"frame\" is what stands still and no part's name"
	case set == values && !identifier(name):
		return "the name of a named value is a word: letters, digits, _ and -, and no digit first"
	}
	return ""
}

func identifier(s string) bool {
	for i, u := range s {
		if u != '_' && !unicode.IsLetter(u) && (i == 0 || u != '-' && !unicode.IsDigit(u)) {
			return false
		}
	}
	return s != ""
}

// written is a new name as it stands in the place of the mention.
func (n *mention) written(name string) string {
	if n.how == asPart {
		raw, _, _ := strings.Cut(string(n.file.Bytes[n.span.Start:n.span.End]), ".")
		kind := strings.TrimLeft(raw, `"'`)
		name = kind + "." + name
	}
	raw := n.file.Bytes[n.span.Start:n.span.End]
	bare := raw[0] != '"' && raw[0] != '\''
	switch {
	case n.how == asWord:
		return name
	case n.how == asLabel && n.file.toml() && bare && bareKey(name):
		return name
	case n.file.toml() && raw[0] == '\'' && !strings.Contains(name, "'"):
		return "'" + name + "'"
	case n.file.toml():
		return `"` + escapes.Replace(name) + `"`
	}
	return quoteHCL(name)
}

var escapes = strings.NewReplacer(`\`, `\\`, `"`, `\"`)

// quoteHCL writes a string of HCL, in which ${ and %{ would begin templates.
func quoteHCL(s string) string {
	s = escapes.Replace(s)
	return `"` + strings.NewReplacer("${", "$${", "%{", "%%{").Replace(s) + `"`
}

// bareKey reports whether a key of TOML needs no quotes.
func bareKey(s string) bool {
	return s != "" && strings.IndexFunc(s, func(u rune) bool {
		return u != '_' && u != '-' && !('0' <= u && u <= '9') && !('a' <= u|0x20 && u|0x20 <= 'z')
	}) < 0
}

// edits gathers edits of several files.
type edits struct {
	versioned bool
	order     []string // canonical paths
	of        map[string]*lsp.DocumentEdits
}

func newEdits(q *inquiry) *edits {
	return &edits{versioned: q.view.versioned, of: map[string]*lsp.DocumentEdits{}}
}

func (e *edits) add(path string, uri lsp.URI, version *int32, one lsp.TextEdit) {
	d := e.of[path]
	if d == nil {
		d = &lsp.DocumentEdits{TextDocument: lsp.VersionedDocument{URI: uri, Version: version}}
		e.of[path] = d
		e.order = append(e.order, path)
	}
	if !slices.Contains(d.Edits, one) {
		d.Edits = append(d.Edits, one)
	}
}

func (e *edits) workspace() *lsp.WorkspaceEdit {
	w := &lsp.WorkspaceEdit{}
	if !e.versioned {
		w.Changes = map[lsp.URI][]lsp.TextEdit{}
	}
	for _, path := range e.order {
		d := e.of[path]
		if e.versioned {
			w.DocumentChanges = append(w.DocumentChanges, *d)
		} else {
			w.Changes[d.TextDocument.URI] = d.Edits
		}
	}
	return w
}
