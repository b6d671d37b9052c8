package editor

import (
	"path/filepath"
	"sync"
	"sync/atomic"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/hclread"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// model is a design as the texts of one moment say it. It is read, solved and
// checked when that is asked for, once.
type model struct {
	name  string // of the design's file
	cache *cache
	docs  map[string]*document
	view  view
	// stale is set once a text of the design has changed.
	stale atomic.Bool

	mu       sync.Mutex
	stage    stage
	design   *spec.Design
	problems []text.Problem
	files    []*file // the design's own first
	byName   map[string]*file
	broken   bool // the text of a file is
	facts    *rules.Facts
	result   rules.Result
	indexed  *index
}

type stage uint8

const (
	unread stage = iota
	read
	solved
	checked
)

// file is one file of a model.
type file struct {
	*text.File
	path    string // canonical
	uri     lsp.URI
	version *int32 // nil if it is not open
	text    *lines.Text
	tree    *syntax.Tree
	broken  bool
}

// reach brings the model to a stage. The caller holds its mutex.
func (m *model) reach(s stage) {
	if m.stage < read && s >= read {
		m.read()
		m.stage = read
	}
	if m.stage < solved && s >= solved {
		if len(m.problems) == 0 {
			m.facts = rules.NewFacts(m.design)
		}
		m.stage = solved
	}
	if m.stage < checked && s >= checked {
		if m.facts != nil {
			var problems []text.Problem
			m.result, problems = rules.CheckFacts(m.facts)
			m.problems = append(m.problems, problems...)
		}
		m.stage = checked
	}
}

func (m *model) read() {
	broken := map[string]bool{}
	l := spec.Loader{
		Overlay: func(path string) ([]byte, bool) {
			if d := m.docs[path]; d != nil {
				return d.text.Bytes, true
			}
			return nil, false
		},
		ParseHCL: func(f *text.File) (*hclread.Source, []text.Problem) {
			source, problems := m.cache.parseHCL(f)
			broken[f.Name] = len(problems) > 0
			return source, problems
		},
		ParseTOML: func(f *text.File, form func(string) tomlread.Form) (*syntax.Tree, []text.Problem) {
			tree, problems := m.cache.parseTOML(f, form)
			broken[f.Name] = len(problems) > 0
			return tree, problems
		},
	}
	m.design, m.problems = l.Load(m.name)
	m.byName = map[string]*file{}
	if m.design == nil {
		m.broken = true
		return
	}
	for i, f := range m.design.Files {
		one := m.file(f)
		one.tree, one.broken = m.design.Trees[i], broken[f.Name]
		m.broken = m.broken || one.broken
		m.files = append(m.files, one)
		m.byName[f.Name] = one
	}
}

// file finds out which document a file of the design is.
func (m *model) file(f *text.File) *file {
	named := filepath.FromSlash(f.Name)
	one := &file{File: f, path: canonical(named), uri: uriOf(named)}
	if d := m.docs[one.path]; d != nil {
		version := d.version
		one.uri, one.version, one.text = d.uri, &version, d.text
		return one
	}
	one.text = lines.New(f.Bytes)
	return one
}

// of is the model's file of a place, nil if it has none there.
func (m *model) of(p text.Place) *file {
	if p.File == nil {
		return nil
	}
	return m.byName[p.File.Name]
}

// at is the model's file of a canonical path, nil if it has none there.
func (m *model) at(path string) *file {
	for _, f := range m.files {
		if f.path == path {
			return f
		}
	}
	return nil
}
