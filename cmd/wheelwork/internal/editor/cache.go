package editor

import (
	"bytes"
	"sync"

	"wheelwork/spec/hclread"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// cache holds of each file what was read last, so that a change of one file
// reads no other again. It may be used by several checks at once.
type cache struct {
	mu    sync.Mutex
	tomls map[string]*tomlFile // by name
	hcl   hclread.Cache
}

type tomlFile struct {
	mu       sync.Mutex
	reader   tomlread.Reader
	content  []byte
	tree     *syntax.Tree
	problems []text.Problem
}

func newCache() *cache { return &cache{tomls: map[string]*tomlFile{}} }

// keep forgets all files but those named.
func (c *cache) keep(names map[string]bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	for name := range c.tomls {
		if !names[name] {
			delete(c.tomls, name)
		}
	}
}

func (c *cache) parseTOML(f *text.File, form func(string) tomlread.Form) (*syntax.Tree, []text.Problem) {
	c.mu.Lock()
	one := c.tomls[f.Name]
	if one == nil {
		one = &tomlFile{}
		c.tomls[f.Name] = one
	}
	c.mu.Unlock()
	one.mu.Lock()
	defer one.mu.Unlock()
	if one.tree == nil || !bytes.Equal(one.content, f.Bytes) {
		one.tree, one.problems = one.reader.Parse(f, form)
		one.content = f.Bytes
		return one.tree, one.problems
	}
	tree := *one.tree
	tree.File = f
	return &tree, moved(one.problems, f)
}

func (c *cache) parseHCL(f *text.File) (*hclread.Source, []text.Problem) { return c.hcl.Parse(f) }

// moved is the problems of a file of the same name and content.
func moved(list []text.Problem, to *text.File) []text.Problem {
	out := append([]text.Problem(nil), list...)
	for i := range out {
		p := &out[i]
		if p.File != nil {
			p.File = to
		}
		p.Related = append([]text.Related(nil), p.Related...)
		for j := range p.Related {
			if p.Related[j].File != nil {
				p.Related[j].File = to
			}
		}
	}
	return out
}
