package spec

import (
	"errors"
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

const (
	// MostFiles bounds how many files make one design.
	MostFiles = 256
	mostFiles = "a design is made of %d files at most"
	// MostBytes bounds all its files together.
	MostBytes = 2 * folder.MostBytes
)

// gathering collects the files of a design before any is evaluated.
type gathering struct {
	telling
	loader  *Loader
	root    *folder.Root
	names   naming
	files   []gathered
	bytes   int
	seen    map[string]int // by path within the repository
	using   []text.Place   // the uses that lead to the file being read, one for each file but the first
	partial bool           // a file could not be read
}

type gathered struct {
	file *text.File
	hcl  *hclread.Source
	tree *syntax.Tree
}

// In seen, a file that is being read has the number of uses that led to it,
// from 1, and one that was read has wasRead.
const wasRead = -1

// locate finds where a file really lies, by its path within the repository.
func (g *gathering) locate(rel string) (string, error) {
	real := rel
	if folder.IsSpec(rel) {
		var err error
		real, err = g.root.Resolve(rel)
		if errors.Is(err, folder.ErrMissing) && g.loader.Overlay != nil {
			return rel, nil // an editor may hold it
		} else if err != nil {
			return "", err
		}
	}
	if !folder.IsSpec(real) {
		return "", errors.New("is no spec file: its name ends neither in .hcl nor in .toml")
	}
	return real, nil
}

func (g *gathering) read(rel string) ([]byte, error) {
	if over := g.loader.Overlay; over != nil {
		if content, ok := over(filepath.Join(g.root.Dir, rel)); ok {
			return content, nil
		}
	}
	return g.root.Read(rel)
}

// gather takes in the file at rel and all that it uses.
func (g *gathering) gather(rel string, content []byte) {
	file := text.NewFile(g.names.of(rel), content)
	g.seen[rel] = len(g.using) + 1
	g.bytes += len(content)
	one := gathered{file: file}
	var problems []text.Problem
	var uses []syntax.Value
	if strings.HasSuffix(rel, ".hcl") {
		parse := hclread.Parse
		if g.loader.ParseHCL != nil {
			parse = g.loader.ParseHCL
		}
		one.hcl, problems = parse(file)
		uses = one.hcl.Uses()
	} else {
		parse := tomlread.Parse
		if g.loader.ParseTOML != nil {
			parse = g.loader.ParseTOML
		}
		one.tree, problems = parse(file, formOf)
		uses = usesOf(one.tree)
	}
	g.list = append(g.list, problems...)
	g.files = append(g.files, one)
	for i := range uses {
		if i == MostFiles-1 { // with this file they are that many
			g.refuse(text.Place{File: file, Span: uses[i].At}, "", mostFiles, MostFiles)
			break
		}
		g.use(rel, &uses[i], text.Place{File: file, Span: uses[i].At})
	}
	g.seen[rel] = wasRead
}

// use follows one entry of a design's uses.
func (g *gathering) use(from string, u *syntax.Value, at text.Place) {
	name := u.Text
	switch {
	case u.Kind != syntax.String || strings.TrimSpace(name) == "":
		return // told when the block is read
	case strings.ContainsRune(name, 0):
		g.refuse(at, "", "%q is no path", clip(name))
		return
	case path.IsAbs(name) || filepath.IsAbs(name):
		g.refuse(at, "write the path from this file to it", "%q is an absolute path", clip(name))
		return
	case strings.Contains(name, "\\"):
		g.refuse(at, "write it with /", "%q is no path", clip(name))
		return
	}
	rel := filepath.FromSlash(path.Join(path.Dir(filepath.ToSlash(from)), name))
	if !filepath.IsLocal(rel) {
		g.unreadable(at, name, from, rel, folder.ErrOutside)
		return
	}
	real, err := g.locate(rel)
	if err != nil {
		g.unreadable(at, name, from, rel, err)
		return
	}
	switch n := g.seen[real]; {
	case n == wasRead:
		return
	case n > 0 && n == len(g.using)+1:
		g.tell(at, "", "%q is this file itself", clip(name))
		return
	case n > 0:
		p := g.tell(at, "", "%q uses this file in turn: uses must not go in a circle", clip(name))
		for _, u := range g.using[n-1:] {
			p.Related = append(p.Related, see(u, "is used here")...)
		}
		return
	case len(g.files) >= MostFiles:
		g.refuse(at, "", mostFiles, MostFiles)
		return
	}
	content, err := g.read(real)
	switch {
	case err != nil:
		g.unreadable(at, name, from, rel, err)
	case g.bytes+len(content) > MostBytes:
		g.refuse(at, "", "with %q the design is larger than %d MB", clip(name), MostBytes>>20)
	default:
		g.using = append(g.using, at)
		g.gather(real, content)
		g.using = g.using[:len(g.using)-1]
	}
}

func (g *gathering) unreadable(at text.Place, name, from, rel string, err error) {
	hint := ""
	switch {
	case errors.Is(err, folder.ErrMissing):
		hint = g.nearFile(name, from, rel)
	case errors.Is(err, folder.ErrOutside):
		hint = g.whyOutside()
	}
	g.refuse(at, hint, "%q %v", clip(name), err)
}

// refuse tells why a file is not read.
func (g *gathering) refuse(at text.Place, hint, format string, args ...any) {
	g.partial = true
	g.tell(at, hint, format, args...)
}

func (g *gathering) whyOutside() string {
	if _, err := os.Lstat(filepath.Join(g.root.Dir, ".git")); err == nil {
		return ""
	}
	return "without a .git in it or above it, the design's own folder is its repository"
}

// nearFile offers a spec file of the folder.
func (g *gathering) nearFile(name, from, rel string) string {
	dir, err := g.root.Resolve(filepath.Dir(rel))
	if err != nil {
		return ""
	}
	entries, err := os.ReadDir(filepath.Join(g.root.Dir, dir))
	if err != nil {
		return ""
	}
	files := map[string]string{} // by the name without its notation
	var names []string
	for _, e := range entries {
		if folder.IsSpec(e.Name()) {
			names = append(names, stem(e.Name()))
			files[stem(e.Name())] = e.Name()
		}
	}
	word := stem(filepath.Base(rel))
	near, ok := files[word] // in the other notation
	if !ok {
		near = files[Nearest(word, names)]
	}
	if near != "" {
		return offer(path.Join(path.Dir(name), near))
	}
	return "paths go from the folder of " + filepath.Base(from)
}

func stem(name string) string { return strings.TrimSuffix(name, filepath.Ext(name)) }

// usesOf finds the strings of design.uses in a tree.
func usesOf(t *syntax.Tree) []syntax.Value {
	for _, b := range t.Blocks {
		if b.Kind == "design" {
			if a := b.Find("uses"); a != nil && a.Value.Kind == syntax.List {
				return a.Value.List
			}
		}
	}
	return nil
}
