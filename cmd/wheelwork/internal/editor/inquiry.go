package editor

import (
	"bytes"
	"context"

	"github.com/sourcegraph/jsonrpc2"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/spec/text"
)

// inquiry is what a request is answered from: the texts and designs as they
// were when it came.
type inquiry struct {
	doc  *document // that it is about
	docs map[string]*document
	view view
	of   []*candidate // the designs that may hold the document
	all  []*candidate
}

// candidate is a design's models: of the texts as they are, and of before.
type candidate struct {
	now, good, sound *model
	files            map[string]lsp.URI
}

// inquire takes a view for a request about a document. It is nil for documents
// that are no specs.
func (s *Server) inquire(uri lsp.URI) (*inquiry, error) {
	doc := s.document(uri)
	if doc == nil {
		if s.foreign[uri] {
			return nil, nil
		}
		return nil, invalid("%s is not open", uri)
	}
	q := &inquiry{doc: doc, docs: s.docs, view: s.view()}
	for _, d := range s.designs {
		c := &candidate{now: d.model, good: d.good, sound: d.sound, files: d.files}
		q.all = append(q.all, c)
		if d.holds(doc.path) {
			q.of = append(q.of, c)
		}
	}
	return q, nil
}

// about makes a handler of a question about a document.
func about[P any](of func(*P) lsp.URI, f func(*inquiry, *P) (any, error)) handler {
	return takes(func(s *Server, p *P) (answer, error) {
		q, err := s.inquire(of(p))
		if q == nil {
			return nil, err
		}
		var sought chan struct{}
		if len(q.of) == 0 && s.seeking > 0 {
			sought = s.sought
		}
		return func(ctx context.Context) (any, error) {
			if sought != nil {
				if q = s.once(ctx, sought, of(p)); q == nil {
					return nil, nil
				}
			}
			return f(q, p)
		}, nil
	})
}

// once takes the view anew when the designs are found.
func (s *Server) once(ctx context.Context, sought chan struct{}, uri lsp.URI) *inquiry {
	select {
	case <-sought:
	case <-ctx.Done():
		return nil
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	q, _ := s.inquire(uri) // a document that was closed meanwhile has no answer
	return q
}

// passing is as about for what clients ask of themselves after each change: an
// answer about texts that have changed again is not worked out.
func passing[P any](of func(*P) lsp.URI, f func(*inquiry, *P) (any, error)) handler {
	return about(of, func(q *inquiry, p *P) (any, error) {
		late := len(q.of) > 0
		for _, c := range q.of {
			late = late && c.now.stale.Load()
		}
		if late {
			return nil, &jsonrpc2.Error{Code: lsp.ContentModified, Message: "the text has changed since"}
		}
		return f(q, p)
	})
}

func positioned(p *lsp.PositionParams) lsp.URI { return p.TextDocument.URI }

// lens looks at a model with the eyes of the present: places in texts that have
// changed since are moved along.
type lens struct {
	*model
	docs   map[string]*document
	shifts map[*file]*shift
}

// navigable calls f with each design that holds the document, in turn until one
// says that it is done: as the texts are, or if they are broken as they were.
// The model's mutex is held meanwhile.
func (q *inquiry) navigable(f func(l *lens, in *file) (done bool)) {
	for _, c := range q.of {
		if q.look(c, f) {
			return
		}
	}
}

func (q *inquiry) look(c *candidate, f func(l *lens, in *file) bool) bool {
	m := c.current()
	m.mu.Lock()
	defer m.mu.Unlock()
	m.reach(read)
	l := &lens{model: m, docs: q.docs, shifts: map[*file]*shift{}}
	in := m.at(q.doc.path)
	return in != nil && f(l, in)
}

// current is the model of the texts as they are, or if they are broken the last
// one that was not.
func (c *candidate) current() *model {
	c.now.mu.Lock()
	defer c.now.mu.Unlock()
	c.now.reach(read)
	if c.now.broken && c.good != nil {
		return c.good
	}
	return c.now
}

// shift is how one text became another: what both begin and end with stays.
type shift struct {
	before   int32 // bytes at the beginning that are the same
	old, new int32 // where the same end begins in either
}

func newShift(old, new []byte) *shift {
	most := min(len(old), len(new))
	before := 0
	for before < most && old[before] == new[before] {
		before++
	}
	after := 0
	for after < most-before && old[len(old)-1-after] == new[len(new)-1-after] {
		after++
	}
	return &shift{before: int32(before), old: int32(len(old) - after), new: int32(len(new) - after)}
}

// forth moves a span of the old text to the new; ok is false where it changed.
func (s *shift) forth(p text.Span) (moved text.Span, ok bool) {
	switch by := s.new - s.old; {
	case p.End <= s.before:
		return p, true
	case p.Start >= s.old:
		return text.Span{Start: p.Start + by, End: p.End + by}, true
	}
	return p, false
}

// back moves an offset of the new text to the old.
func (s *shift) back(offset int32) (moved int32, ok bool) {
	switch {
	case offset <= s.before:
		return offset, true
	case offset >= s.new:
		return offset + s.old - s.new, true
	}
	return s.before, false
}

// shift is how a file of the model became what it is now, nil if it did not change.
func (l *lens) shift(f *file) *shift {
	doc := l.docs[f.path]
	if doc == nil || bytes.Equal(doc.text.Bytes, f.Bytes) {
		return nil
	}
	if l.shifts[f] == nil {
		l.shifts[f] = newShift(f.Bytes, doc.text.Bytes)
	}
	return l.shifts[f]
}

// offset is where a place of the document lies in the model's text; ok is false
// where that changed.
func (l *lens) offset(f *file, p lsp.Position) (int32, bool) {
	doc := l.docs[f.path]
	if doc == nil {
		return l.view.Offset(f.text, p), true
	}
	offset := l.view.Offset(doc.text, p)
	if s := l.shift(f); s != nil {
		return s.back(offset)
	}
	return offset, true
}

// span is the range of a span of the model in the text as it is; ok is false
// where that changed.
func (l *lens) span(f *file, p text.Span) (lsp.Range, bool) {
	t := f.text
	if doc := l.docs[f.path]; doc != nil {
		t = doc.text
	}
	if s := l.shift(f); s != nil {
		moved, ok := s.forth(p)
		return l.view.Range(t, moved.Start, moved.End), ok
	}
	return l.view.Range(t, p.Start, p.End), true
}

// uriNow is the file as the client names it now.
func (l *lens) uriNow(f *file) lsp.URI {
	if doc := l.docs[f.path]; doc != nil {
		return doc.uri
	}
	return f.uri
}
