package inspect

import (
	"os"
	"path/filepath"
	"slices"

	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/folder"
)

// Touched lists the designs that the files belong to, each once: a design that
// a file is, and every design in the file's repository that uses it. Files that
// are no specs, and those that no design uses, belong to none. A file that is
// gone leads to the designs that still name it, which then say so.
func Touched(paths []string) []Design {
	var list []Design
	var changed []string
	tops := map[string]bool{}
	for _, path := range paths {
		if !folder.IsSpec(path) {
			continue
		}
		root, err := folder.Of(path)
		if err != nil {
			list = append(list, failed(path, err.Error()))
			continue
		}
		tops[root.Dir] = true
		changed = append(changed, real(path))
		root.Close()
	}
	var all []string
	for top := range tops {
		names, err := folder.Designs(top)
		if err != nil {
			list = append(list, failed(top, err.Error()))
		}
		all = append(all, names...)
	}
	slices.Sort(all)
	found := make([]Design, 0, len(all))
	for _, name := range slices.Compact(all) {
		found = append(found, Design{Name: here(name)})
	}
	each(found, func(d *Design) {
		if !d.uses(changed) {
			d.Name = ""
		}
	})
	for i := range found {
		if found[i].Name != "" {
			list = append(list, found[i])
		}
	}
	return list
}

// uses reads the design and reports whether one of the files belongs to it.
func (d *Design) uses(changed []string) bool {
	design, problems := spec.Load(d.Name)
	touched := slices.Contains(changed, real(d.Name))
	if design != nil {
		for _, f := range design.Files {
			touched = touched || slices.Contains(changed, real(f.Name))
		}
		for _, u := range design.Head.Uses.List {
			// Also what could not be read: a file that is gone, or is broken.
			touched = touched || slices.Contains(changed, real(filepath.Join(filepath.Dir(d.Name), filepath.FromSlash(u.Text))))
		}
	}
	d.Problems = problems
	if touched && len(problems) == 0 {
		d.Facts = rules.NewFacts(design)
	}
	return touched
}

// real is the path by which a file is known whatever the way to it.
func real(path string) string {
	abs, err := filepath.Abs(path)
	if err != nil {
		return path
	}
	if resolved, err := filepath.EvalSymlinks(abs); err == nil {
		return resolved
	}
	// The file is gone; its folder may be there.
	if dir, err := filepath.EvalSymlinks(filepath.Dir(abs)); err == nil {
		return filepath.Join(dir, filepath.Base(abs))
	}
	return abs
}

// here is the path as seen from the current folder where it lies below it.
func here(path string) string {
	folder, err := os.Getwd()
	if err != nil {
		return path
	}
	if folder, err = filepath.EvalSymlinks(folder); err != nil {
		return path
	}
	rel, err := filepath.Rel(folder, path)
	if err != nil || !filepath.IsLocal(rel) {
		return path
	}
	return rel
}

// Files lists the files of the designs that could be read, and the files of
// those that could not, each once, in order.
func Files(list []Design) []string {
	var names []string
	for i := range list {
		d := &list[i]
		names = append(names, d.Name)
		if d.Facts != nil {
			for _, f := range d.Facts.Design.Files {
				names = append(names, f.Name)
			}
		}
		for _, p := range d.Problems {
			if p.Known() {
				names = append(names, p.File.Name)
			}
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}
