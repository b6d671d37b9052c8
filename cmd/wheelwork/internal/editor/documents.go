package editor

import (
	"maps"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/spec/folder"
)

// document is one version of a file that the editor holds. It does not change:
// each change makes another.
type document struct {
	uri     lsp.URI
	named   string // the path the client uses
	path    string // the canonical one
	version int32
	text    *lines.Text
}

// document finds an open file by the URI its client gave.
func (s *Server) document(uri lsp.URI) *document {
	named, ok := pathOf(uri)
	if !ok {
		return nil
	}
	for _, d := range s.docs { // few are open, and none has two names
		if d.uri == uri || d.named == named {
			return d
		}
	}
	return s.docs[canonical(named)]
}

// keep puts a version of a document in the place of the one before, nil taking
// it away.
func (s *Server) keep(path string, d *document) {
	s.docs = maps.Clone(s.docs)
	if d == nil {
		delete(s.docs, path)
		return
	}
	s.docs[path] = d
}

func (s *Server) didOpen(p *lsp.DidOpenParams) (answer, error) {
	named, ok := pathOf(p.TextDocument.URI)
	if !ok || !folder.IsSpec(named) {
		s.foreign[p.TextDocument.URI] = true
		return nil, nil
	}
	if len(p.TextDocument.Text) > folder.MostBytes {
		s.foreign[p.TextDocument.URI] = true
		return nil, invalid("%s is larger than a spec file may be", p.TextDocument.URI)
	}
	d := &document{
		uri: p.TextDocument.URI, named: named, path: canonical(named),
		version: p.TextDocument.Version, text: lines.New([]byte(p.TextDocument.Text)),
	}
	s.keep(d.path, d)
	s.claim(d)
	return nil, nil
}

func (s *Server) didChange(p *lsp.DidChangeParams) (answer, error) {
	if s.foreign[p.TextDocument.URI] {
		return nil, nil
	}
	old := s.document(p.TextDocument.URI)
	if old == nil {
		return nil, invalid("%s is not open", p.TextDocument.URI)
	}
	d := *old
	d.version = p.TextDocument.Version
	for i := range p.Changes {
		d.text = s.edited(d.text, &p.Changes[i])
	}
	if len(d.text.Bytes) > folder.MostBytes {
		s.log.Printf("%s is larger than a spec file may be", d.uri)
	}
	s.keep(d.path, &d)
	s.changed(&d)
	return nil, nil
}

// edited is the text with a change made.
func (s *Server) edited(t *lines.Text, c *lsp.Change) *lines.Text {
	if c.Range == nil {
		return lines.New([]byte(c.Text))
	}
	start, end := s.encoding.Offset(t, c.Range.Start), s.encoding.Offset(t, c.Range.End)
	if end < start {
		start, end = end, start
	}
	text := make([]byte, 0, len(t.Bytes)-int(end-start)+len(c.Text))
	text = append(append(append(text, t.Bytes[:start]...), c.Text...), t.Bytes[end:]...)
	return lines.New(text)
}

func (s *Server) didClose(p *lsp.DocumentParams) (answer, error) {
	if s.foreign[p.TextDocument.URI] {
		delete(s.foreign, p.TextDocument.URI)
		return nil, nil
	}
	d := s.document(p.TextDocument.URI)
	if d == nil {
		return nil, invalid("%s is not open", p.TextDocument.URI)
	}
	s.keep(d.path, nil)
	s.closed(d)
	return nil, nil
}

// didSave looks again at what lies on disk beside the text, for clients that
// do not tell of it.
func (s *Server) didSave(p *lsp.DocumentParams) (answer, error) {
	if d := s.document(p.TextDocument.URI); d != nil {
		for _, of := range s.holding(d.path) {
			s.refresh(of)
		}
	}
	return nil, nil
}
