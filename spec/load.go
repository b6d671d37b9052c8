package spec

import (
	"os"
	"path/filepath"

	"wheelwork/spec/folder"
	"wheelwork/spec/hclread"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// Loader reads designs. The zero Loader reads them from disk.
type Loader struct {
	// Overlay, if set, gives the content of a file that an editor holds, by
	// its absolute path, in which no link is left. It is asked for the design
	// and for all it uses, also for files that are not on disk yet.
	Overlay func(path string) ([]byte, bool)
	// ParseHCL, if set, parses HCL files instead of hclread.Parse, such as the
	// Parse of a cache that keeps what was parsed for the next time.
	ParseHCL func(*text.File) (*hclread.Source, []text.Problem)
	// ParseTOML, if set, parses TOML files instead of tomlread.Parse, such as
	// the Parse of a tomlread.Reader.
	ParseTOML func(*text.File, func(kind string) tomlread.Form) (*syntax.Tree, []text.Problem)
}

// Load reads a design with everything it uses. The design is nil only if its
// own file could not be read at all; with problems it is as complete as the
// text allows, which serves an editor, but no rule should run on it.
func Load(name string) (*Design, []text.Problem) { return new(Loader).Load(name) }

// Load is as the function of that name.
func (l *Loader) Load(name string) (*Design, []text.Problem) {
	root, err := folder.Of(name)
	if err != nil {
		return nil, unreadable(name, err)
	}
	defer root.Close()
	rel, err := root.Rel(name)
	if err != nil {
		return nil, unreadable(name, err)
	}
	g := gathering{loader: l, root: root, seen: map[string]int{}}
	real, err := g.locate(rel)
	if err != nil {
		return nil, unreadable(name, err)
	}
	content, err := g.read(real)
	if err != nil {
		return nil, unreadable(name, err)
	}
	g.names = naming{root: root.Dir, given: filepath.Clean(name), own: real}
	g.gather(real, content)
	return g.design()
}

func unreadable(name string, err error) []text.Problem {
	told := filepath.ToSlash(filepath.Clean(name))
	at := text.Place{File: text.NewFile(told, nil)}
	return []text.Problem{{Place: at, Message: "this file " + err.Error()}}
}

// design evaluates what was gathered and links it into one design.
func (g *gathering) design() (*Design, []text.Problem) {
	broken := len(g.list) > 0
	var sources []*hclread.Source
	for _, f := range g.files {
		if f.hcl != nil {
			sources = append(sources, f.hcl)
		}
	}
	trees, problems := hclread.Evaluate(sources)
	g.list = append(g.list, problems...)

	d := &Design{}
	r := reading{telling: &g.telling, design: d, rooms: make([]any, len(language))}
	for i := range g.files {
		f := &g.files[i]
		d.Files = append(d.Files, f.file)
		if f.hcl != nil {
			f.tree, trees = trees[0], trees[1:]
		}
		d.Trees = append(d.Trees, f.tree)
		r.tree(f.tree, i == 0)
		d.Waivers = append(d.Waivers, waivers(f)...)
	}
	headless := d.Head.Kind == ""
	if headless && !broken && !misspelt(g.files[0].tree) {
		r.file = d.Files[0]
		r.problem(text.Span{}, "check the design that uses it", "this file holds no design block, so it is no design by itself")
	}
	l := linking{telling: &g.telling, design: d, partial: g.partial || headless}
	l.link()
	return d, g.told()
}

// misspelt reports whether a block of the file may be meant for its heading.
func misspelt(t *syntax.Tree) bool {
	for _, b := range t.Blocks {
		if b.Kind == "design" || KindOf(b.Kind) == nil && Nearest(b.Kind, []string{"design"}) != "" {
			return true
		}
	}
	return false
}

// naming says how people are told of files: from the path that was given for
// the design, where the others can be named from it, else by their whole path.
type naming struct {
	root  string // of the repository
	given string // the design's path
	own   string // the same within the repository
}

// of is the name of a file by its path within the repository.
func (n *naming) of(rel string) string {
	whole := filepath.Join(n.root, rel)
	name := n.given
	if rel != n.own {
		if from, err := filepath.Rel(filepath.Dir(n.own), rel); err == nil {
			name = filepath.Join(filepath.Dir(n.given), from)
		}
	}
	if rel != n.own && !leads(name, whole) {
		name = whole
	}
	return filepath.ToSlash(name)
}

// leads reports whether the name is that of the file, whatever links are in it.
func leads(name, whole string) bool {
	abs, err := filepath.Abs(name)
	if err != nil || abs == whole {
		return err == nil
	}
	one, err1 := os.Stat(abs)
	two, err2 := os.Stat(whole)
	return err1 == nil && err2 == nil && os.SameFile(one, two)
}
