package editor

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/spec/folder"
)

// design is one design that the server watches.
type design struct {
	name string // the path of its file, as the client or the search named it
	path string // the canonical one

	files map[string]lsp.URI // of its last reading, by canonical path; nil before the first
	names map[string]bool    // the same as messages name them
	shown map[string][]lsp.Diagnostic
	model *model // of the texts as they are
	good  *model // the last one whose texts were not broken
	sound *model // the last one that had no problems
	timer *time.Timer
}

// rest lets no further check begin.
func (d *design) rest() {
	if d.timer != nil {
		d.timer.Stop()
	}
	if d.model != nil {
		d.model.stale.Store(true)
	}
}

// holds reports whether the file is, or for all that is known may be, of the design.
func (d *design) holds(path string) bool {
	if d.files == nil {
		return true
	}
	_, ok := d.files[path]
	return ok || path == d.path
}

// holding lists the designs that hold a file.
func (s *Server) holding(path string) []*design {
	var list []*design
	for _, d := range s.designs {
		if d.holds(path) {
			list = append(list, d)
		}
	}
	return list
}

// add watches one design more. It returns nil if it is watched already.
func (s *Server) add(name string) *design {
	d := &design{name: name, path: canonical(name)}
	i, there := slices.BinarySearchFunc(s.designs, d.path, func(one *design, path string) int { return strings.Compare(one.path, path) })
	if there {
		return nil
	}
	s.designs = slices.Insert(s.designs, i, d)
	return d
}

// drop watches a design no more.
func (s *Server) drop(d *design) {
	d.rest()
	s.designs = slices.DeleteFunc(s.designs, func(one *design) bool { return one == d })
	gone := d.shown
	d.shown = nil
	for path := range gone {
		s.publish(path)
	}
}

// open watches the designs of folders, which are sought beside all else.
func (s *Server) open(folders []lsp.WorkspaceFolder) {
	for _, f := range folders {
		if dir, ok := pathOf(f.URI); ok {
			s.seek(dir, true)
		}
	}
}

// seek looks for designs in a folder and, if deep, below it, once.
func (s *Server) seek(dir string, deep bool) {
	real := canonical(dir)
	if s.searched[real] {
		return
	}
	s.searched[real] = true
	if s.seeking++; s.seeking == 1 {
		s.sought = make(chan struct{})
	}
	go func() {
		names, err := designsIn(dir, deep)
		if err != nil {
			s.log.Printf("%s %v", dir, err)
		}
		s.mu.Lock()
		defer s.mu.Unlock()
		s.found(names)
	}()
}

// found takes in the designs that a search found.
func (s *Server) found(names []string) {
	if s.phase == initialized {
		for _, name := range names {
			if d := s.add(name); d != nil {
				s.begin(d, 0)
			}
		}
	}
	if s.seeking--; s.seeking > 0 {
		return
	}
	close(s.sought)
	for _, doc := range s.docs {
		if len(s.holding(doc.path)) == 0 {
			s.publish(doc.path) // that there is nothing to be said
		}
	}
}

func designsIn(dir string, deep bool) ([]string, error) {
	if deep {
		return folder.Designs(dir)
	}
	entries, err := os.ReadDir(dir)
	var names []string
	for _, e := range entries {
		if !e.IsDir() && folder.IsSpec(e.Name()) {
			found, _ := folder.Designs(filepath.Join(dir, e.Name())) // a file names itself
			for _, name := range found {
				if content, err := os.ReadFile(name); err == nil && folder.HoldsDesign(content) {
					names = append(names, name)
				}
			}
		}
	}
	return names, err
}

// claim finds the designs of a document that was opened.
func (s *Server) claim(doc *document) {
	if folder.HoldsDesign(doc.text.Bytes) {
		s.add(doc.named)
	}
	held := s.holding(doc.path)
	for _, d := range held {
		s.refresh(d)
	}
	if len(held) == 0 {
		s.unclaimed(doc)
	}
}

// unclaimed looks for the design that uses a file: in its repository, or where
// that is not known in its folder alone.
func (s *Server) unclaimed(doc *document) {
	root, err := folder.Of(doc.path)
	if err != nil {
		return
	}
	dir := root.Dir
	root.Close()
	_, err = os.Lstat(filepath.Join(dir, ".git"))
	s.seek(dir, err == nil)
	for _, d := range s.designs {
		if d.model != nil && d.lacks() { // the file may be what it lacks
			s.refresh(d)
		}
	}
	if s.seeking == 0 {
		s.publish(doc.path)
	}
}

// lacks reports whether the last reading had problems, as a file that is
// missing makes.
func (d *design) lacks() bool { return d.sound != d.model }

func (s *Server) changed(doc *document) {
	if folder.HoldsDesign(doc.text.Bytes) {
		s.add(doc.named)
	}
	held := s.holding(doc.path)
	s.touch(held, s.pause)
	if len(held) == 0 && s.seeking == 0 {
		s.publish(doc.path)
	}
}

func (s *Server) closed(doc *document) {
	var kept []*design
	for _, d := range s.holding(doc.path) {
		if !s.gone(d) {
			kept = append(kept, d)
		}
	}
	s.touch(kept, 0)
	s.publish(doc.path)
	delete(s.sent, doc.path)
}

// gone drops a design whose file is neither open nor on disk.
func (s *Server) gone(d *design) bool {
	if s.docs[d.path] != nil {
		return false
	}
	if _, err := os.Stat(d.path); err == nil {
		return false
	}
	s.drop(d)
	return true
}

func (s *Server) didChangeWatchedFiles(p *lsp.DidChangeWatchedFilesParams) (answer, error) {
	again := map[*design]bool{}
	for _, c := range p.Changes {
		named, ok := pathOf(c.URI)
		if !ok {
			continue
		}
		path := canonical(named)
		if s.docs[path] != nil {
			continue // the editor's text counts
		}
		if content, err := os.ReadFile(named); err == nil && folder.IsSpec(named) && folder.HoldsDesign(content) {
			if d := s.add(named); d != nil {
				again[d] = true
			}
		}
		for _, d := range s.designs {
			if d.holds(path) || d.lacks() {
				again[d] = true
			}
		}
	}
	for _, d := range slices.Clone(s.designs) {
		if again[d] && !s.gone(d) {
			s.refresh(d)
		}
	}
	return nil, nil
}

func (s *Server) didChangeFolders(p *lsp.DidChangeFoldersParams) (answer, error) {
	s.open(p.Event.Added)
	for _, f := range p.Event.Removed {
		dir, ok := pathOf(f.URI)
		if !ok {
			continue
		}
		real := canonical(dir)
		delete(s.searched, real)
		for _, d := range slices.Clone(s.designs) {
			if strings.HasPrefix(d.path, real+string(filepath.Separator)) && s.docs[d.path] == nil {
				s.drop(d)
			}
		}
	}
	return nil, nil
}
