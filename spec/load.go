package spec

import (
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"

	"wheelwork/spec/folder"
	"wheelwork/spec/hclread"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// MostFiles bounds how many files one design uses.
const MostFiles = 256

// Loader reads designs. The zero Loader reads them from disk.
type Loader struct {
	// Overlay, if set, gives the content of a file that an editor holds,
	// by its absolute path.
	Overlay func(path string) ([]byte, bool)
	// ParseHCL, if set, parses HCL files instead of hclread.Parse, such as the
	// Parse of a cache that keeps what was parsed for the next time.
	ParseHCL func(*text.File) (*hclread.Source, []text.Problem)
}

// Load reads a design with everything it uses. The design is nil only if its
// own file could not be read at all; with problems it is as complete as the
// text allows, which serves an editor, but no rule should run on it.
func Load(name string) (*Design, []text.Problem) { return new(Loader).Load(name) }

// Load is as the function of that name.
func (l *Loader) Load(name string) (*Design, []text.Problem) {
	root, err := folder.Of(name)
	if err != nil {
		return nil, []text.Problem{unread(name, err)}
	}
	defer root.Close()
	rel, err := root.Rel(name)
	if err != nil {
		return nil, []text.Problem{unread(name, err)}
	}
	g := gathering{loader: l, root: root, base: strings.TrimSuffix(filepath.ToSlash(name), filepath.ToSlash(rel)), seen: map[string]int{}}
	if g.base == filepath.ToSlash(name) { // reached through a link: name the files from the root
		g.base = filepath.ToSlash(root.Dir) + "/"
	}
	if !g.gather(filepath.ToSlash(rel), text.Place{}, name) {
		return nil, g.problems
	}
	return g.design()
}

func unread(name string, err error) text.Problem {
	return text.Problem{Place: text.Place{File: text.NewFile(filepath.ToSlash(name), nil)}, Message: name + " " + reason(err)}
}

func reason(err error) string {
	var p *os.PathError
	if errors.As(err, &p) {
		if errors.Is(err, os.ErrNotExist) {
			return "there is no such file"
		}
		return p.Err.Error()
	}
	return err.Error()
}

// gathering collects the files of a design before any is evaluated.
type gathering struct {
	loader   *Loader
	root     *folder.Root
	base     string // what stands before the path within the root in names told to people
	files    []gathered
	seen     map[string]int // path within the root: 1 being read, 2 read
	problems []text.Problem
}

type gathered struct {
	file *text.File
	hcl  *hclread.Source
	tree *syntax.Tree
}

const (
	beingRead = 1
	wasRead   = 2
)

// gather reads the file at rel and all that it uses; by is where it is used.
func (g *gathering) gather(rel string, by text.Place, told string) bool {
	if !folder.IsSpec(rel) {
		g.refuse(by, rel, told, "is no spec file: its name ends neither in .hcl nor in .toml")
		return false
	}
	content, err := g.read(rel)
	if err != nil {
		g.refuse(by, rel, told, reason(err))
		return false
	}
	file := text.NewFile(g.base+rel, content)
	g.seen[rel] = beingRead
	one := gathered{file: file}
	var problems []text.Problem
	var uses []syntax.Value
	if strings.HasSuffix(rel, ".hcl") {
		parse := hclread.Parse
		if g.loader.ParseHCL != nil {
			parse = g.loader.ParseHCL
		}
		one.hcl, problems = parse(file)
		if one.hcl != nil {
			uses = one.hcl.Uses()
		}
	} else {
		one.tree, problems = tomlread.Parse(file, formOf)
		uses = usesOf(one.tree)
	}
	g.problems = append(g.problems, problems...)
	g.files = append(g.files, one)
	for _, u := range uses {
		g.use(rel, u, text.Place{File: file, Span: u.At})
	}
	g.seen[rel] = wasRead
	return true
}

func (g *gathering) read(rel string) ([]byte, error) {
	if over := g.loader.Overlay; over != nil {
		if content, ok := over(filepath.Join(g.root.Dir, filepath.FromSlash(rel))); ok {
			return content, nil
		}
	}
	return g.root.Read(filepath.FromSlash(rel))
}

// use follows one entry of a design's uses.
func (g *gathering) use(from string, u syntax.Value, at text.Place) {
	if u.Kind != syntax.String {
		return // told when the block is read
	}
	if u.Text == "" || strings.ContainsRune(u.Text, 0) {
		g.tell(at, "uses names files, not an empty name")
		return
	}
	if path.IsAbs(u.Text) || filepath.IsAbs(u.Text) || strings.Contains(u.Text, "\\") {
		g.tell(at, fmt.Sprintf("%q is not a path from this file within the repository", clip(u.Text)))
		return
	}
	rel := path.Join(path.Dir(from), u.Text)
	if !filepath.IsLocal(filepath.FromSlash(rel)) {
		g.tell(at, fmt.Sprintf("%q leads out of the repository", clip(u.Text)))
		return
	}
	switch g.seen[rel] {
	case wasRead:
		return
	case beingRead:
		g.tell(at, fmt.Sprintf("%q uses this file in turn: uses must not go in a circle", clip(u.Text)))
		return
	}
	if len(g.files) >= MostFiles {
		g.tell(at, fmt.Sprintf("a design uses at most %d files", MostFiles))
		return
	}
	g.gather(rel, at, u.Text)
}

func (g *gathering) refuse(by text.Place, rel, told, why string) {
	if by.Known() {
		g.tell(by, clip(told)+" "+why)
		return
	}
	g.problems = append(g.problems, text.Problem{Place: text.Place{File: text.NewFile(g.base+rel, nil)}, Message: why})
}

func (g *gathering) tell(at text.Place, message string) {
	g.problems = append(g.problems, text.Problem{Place: at, Message: message})
}

// usesOf finds the strings of design.uses in a tree.
func usesOf(t *syntax.Tree) []syntax.Value {
	if t == nil {
		return nil
	}
	for _, b := range t.Blocks {
		if b.Kind == "design" {
			if a := b.Find("uses"); a != nil && a.Value.Kind == syntax.List {
				return a.Value.List
			}
		}
	}
	return nil
}

// design evaluates what was gathered and links it into one design.
func (g *gathering) design() (*Design, []text.Problem) {
	var sources []*hclread.Source
	for _, f := range g.files {
		if f.hcl != nil {
			sources = append(sources, f.hcl)
		}
	}
	trees, problems := hclread.Evaluate(sources)
	g.problems = append(g.problems, problems...)

	d := &Design{}
	r := reading{design: d}
	next := 0
	for i := range g.files {
		f := &g.files[i]
		d.Files = append(d.Files, f.file)
		if f.hcl != nil {
			f.tree = trees[next]
			next++
		}
		if f.tree != nil {
			r.tree(f.tree, i == 0)
		}
		d.Waivers = append(d.Waivers, waivers(f)...)
	}
	own := d.Files[0]
	if d.Head.Kind == "" && len(g.problems)+len(r.problems) == 0 {
		r.file = own
		r.problem(text.Span{}, "this file holds no design block, so it is no design by itself", "check the design that uses it")
	}
	l := linking{design: d}
	l.link()
	all := append(append(g.problems, r.problems...), l.problems...)
	text.SortProblems(all)
	return d, all
}
