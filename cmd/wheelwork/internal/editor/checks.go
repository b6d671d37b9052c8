package editor

import (
	"bytes"
	"time"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/spec/folder"
)

// touch begins anew with designs whose text has changed: what was found goes
// at once, and comes again after the pause.
func (s *Server) touch(list []*design, pause time.Duration) {
	gone := map[string]bool{}
	for _, d := range list {
		for path := range d.shown {
			gone[path] = true
		}
		d.shown = nil
	}
	for path := range gone {
		s.publish(path)
	}
	for _, d := range list {
		s.begin(d, pause)
	}
}

// refresh looks at a design again whose text on disk may have changed. What
// was found stays until then.
func (s *Server) refresh(d *design) { s.begin(d, 0) }

// begin takes the texts as they are and checks them after a pause, unless they
// change again.
func (s *Server) begin(d *design, pause time.Duration) {
	d.rest()
	m := &model{name: d.name, cache: s.cache, docs: s.docs, view: s.view()}
	d.model = m
	d.timer = time.AfterFunc(pause, func() { s.check(d, m) })
}

// check works on a model as long as it is the last word.
func (s *Server) check(d *design, m *model) {
	s.slots <- struct{}{}
	defer func() { <-s.slots }()
	var shown map[string][]lsp.Diagnostic
	var err error
	func() {
		defer s.caught("check of "+d.name, &err)
		m.mu.Lock()
		defer m.mu.Unlock()
		for st := read; st <= checked; st++ {
			if m.stale.Load() {
				return
			}
			m.reach(st)
		}
		shown = m.diagnose()
	}()
	s.mu.Lock()
	defer s.mu.Unlock()
	if err != nil || m.stale.Load() || d.model != m || s.phase != initialized {
		return
	}
	if !m.fits(s.docs) {
		s.begin(d, s.pause)
		return
	}
	if s.noDesign(d, m) {
		s.drop(d)
		return
	}
	s.install(d, m, shown)
}

// noDesign reports whether a file has turned out to hold no design by itself.
func (s *Server) noDesign(d *design, m *model) bool {
	if m.design == nil {
		return s.docs[d.path] == nil
	}
	if m.design.Head.Kind != "" || folder.HoldsDesign(m.design.Files[0].Bytes) {
		return false
	}
	if s.docs[d.path] == nil {
		return true
	}
	for _, other := range s.designs {
		if _, uses := other.files[d.path]; uses && other != d {
			return true
		}
	}
	return false
}

// fits reports whether the model was made of the texts that are open now, also
// of files that were not known to be the design's when it was begun.
func (m *model) fits(docs map[string]*document) bool {
	for _, f := range m.files {
		doc := docs[f.path]
		if doc == nil && f.version != nil || doc != nil && !bytes.Equal(doc.text.Bytes, f.Bytes) {
			return false
		}
	}
	return true
}

// install puts the results of a check in the place of those before.
func (s *Server) install(d *design, m *model, shown map[string][]lsp.Diagnostic) {
	first := d.files == nil
	paths := map[string]bool{}
	for path := range d.files {
		paths[path] = true
	}
	d.files, d.names = map[string]lsp.URI{}, map[string]bool{}
	for _, f := range m.files {
		d.files[f.path] = f.uri
		d.names[f.Name] = true
		paths[f.path] = true
	}
	d.shown = shown
	if !m.broken {
		d.good = m
	}
	if m.facts != nil {
		d.sound = m
	}
	for path := range paths {
		s.publish(path)
	}
	s.forget()
	s.hintAgain(d)
	for _, doc := range s.docs {
		if first && len(s.holding(doc.path)) == 0 {
			s.unclaimed(doc) // it might have been this one's
		}
	}
}

// hintAgain has the client ask for hints anew, where several files of a design
// are open: what is hinted in one follows from the others.
func (s *Server) hintAgain(d *design) {
	open := 0
	for path := range d.files {
		if s.docs[path] != nil {
			open++
		}
	}
	if open > 1 && s.client.Workspace.InlayHint.RefreshSupport {
		s.later("workspace/inlayHint/refresh", nil)
	}
}

// forget lets go of what was read of files that no design holds any more.
func (s *Server) forget() {
	names := map[string]bool{}
	for _, d := range s.designs {
		if d.names == nil {
			return // it may be reading them just now
		}
		for name := range d.names {
			names[name] = true
		}
	}
	s.cache.keep(names)
}
