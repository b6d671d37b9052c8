package editor

import (
	"path"
	"path/filepath"
	"slices"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/spec/text"
)

// inner is a mention without its quotes, and of a part's name the name.
func (n *mention) inner() text.Span {
	at := n.span
	raw := string(n.file.Bytes[at.Start:at.End])
	if n.derived || len(raw) < 2 || raw[0] != '"' && raw[0] != '\'' {
		return at
	}
	width := int32(1)
	if len(raw) >= 6 && strings.HasPrefix(raw, strings.Repeat(raw[:1], 3)) {
		width = 3
	}
	at = text.Span{Start: at.Start + width, End: at.End - width}
	if n.how == asPart {
		if dot := strings.IndexByte(raw, '.'); dot > 0 {
			at.Start = n.span.Start + int32(dot) + 1
		}
	}
	return at
}

// definition is where the thing is made that is named at a place.
func definition(q *inquiry, p *lsp.PositionParams) (any, error) {
	list := []lsp.Location{}
	q.navigable(func(l *lens, in *file) bool {
		n := l.mentioned(in, p.Position)
		if n == nil {
			return false
		}
		if n.set == paths {
			if at := l.used(in, n.name); at != nil {
				list = append(list, lsp.Location{URI: l.uriNow(at)})
			}
			return true
		}
		for _, one := range l.index().all {
			if one.symbol == n.symbol && one.def {
				if r, ok := l.span(one.file, one.inner()); ok {
					list = append(list, lsp.Location{URI: l.uriNow(one.file), Range: r})
					break
				}
			}
		}
		return true
	})
	return list, nil
}

// mentioned is what is named at a place, nil if nothing is.
func (l *lens) mentioned(in *file, at lsp.Position) *mention {
	offset, ok := l.offset(in, at)
	if !ok {
		return nil
	}
	return l.index().at(in, offset)
}

// used is the file that a path in another one leads to.
func (l *lens) used(from *file, name string) *file {
	to := filepath.Join(filepath.Dir(filepath.FromSlash(from.Name)), filepath.FromSlash(path.Clean(name)))
	if f := l.byName[filepath.ToSlash(to)]; f != nil {
		return f
	}
	return l.at(canonical(to))
}

// references lists the places that name what is named at a place, over all
// designs that share a file with it.
func references(q *inquiry, p *lsp.ReferenceParams) (any, error) {
	list := []lsp.Location{}
	for _, one := range q.mentions(p.Position) {
		if (p.Context.IncludeDeclaration || !one.def) && !slices.Contains(list, one.location) {
			list = append(list, one.location)
		}
	}
	return list, nil
}

// placed is a mention with its place as it is now.
type placed struct {
	mention
	location lsp.Location
	version  *int32
	changed  bool // since the model was made
	unsure   bool // whether more may name it in text that is broken
}

// mentions gathers the mentions of what is named at a place. A name in a file
// that several designs use is one name in all of them.
func (q *inquiry) mentions(at lsp.Position) []placed {
	var of symbol
	q.navigable(func(l *lens, in *file) bool {
		if n := l.mentioned(in, at); n != nil {
			of = n.symbol
			return true
		}
		return false
	})
	if of.name == "" {
		return nil
	}
	return q.everywhere(of)
}

func (q *inquiry) everywhere(of symbol) []placed {
	var list []placed
	reached := map[string]bool{q.doc.path: true} // files that name it
	taken := make([]bool, len(q.all))
	for again := true; again; {
		again = false
		for i, c := range q.all {
			if taken[i] {
				continue
			}
			m := c.current()
			m.mu.Lock()
			m.reach(read)
			if slices.ContainsFunc(m.files, func(f *file) bool { return reached[f.path] }) {
				taken[i], again = true, true
				l := &lens{model: m, docs: q.docs, shifts: map[*file]*shift{}}
				for _, one := range l.index().all {
					if one.symbol != of {
						continue
					}
					reached[one.file.path] = true
					r, ok := l.span(one.file, one.inner())
					list = append(list, placed{
						mention: one, location: lsp.Location{URI: l.uriNow(one.file), Range: r}, version: one.file.version,
						changed: !ok, unsure: m != c.now || m.broken || l.shift(one.file) != nil,
					})
				}
			}
			m.mu.Unlock()
		}
	}
	return list
}

// highlights lists the places in the document that name the same.
func highlights(q *inquiry, p *lsp.PositionParams) (any, error) {
	list := []lsp.Highlight{}
	for _, one := range q.mentions(p.Position) {
		h := lsp.Highlight{Range: one.location.Range}
		if one.file.path == q.doc.path && !one.changed && !slices.Contains(list, h) {
			list = append(list, h)
		}
	}
	return list, nil
}
