// Package folder reads spec files and nothing else: only regular files of a
// bounded size that lie within the repository, whatever links point where.
package folder

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// MostBytes bounds a spec file; a design of 20,000 wheels needs a fifth of it.
const MostBytes = 32 << 20

// Root is a repository: the folder nothing is read outside of.
type Root struct {
	Dir  string // absolute, links resolved
	root *os.Root
}

// Of finds the repository that holds the path: the nearest folder above it
// that holds .git, or the path's own folder where there is none.
func Of(path string) (*Root, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return nil, plain(err)
	}
	dir := abs
	if info, err := os.Stat(abs); err != nil || !info.IsDir() {
		dir = filepath.Dir(abs)
	}
	if dir, err = filepath.EvalSymlinks(dir); err != nil {
		return nil, plain(err)
	}
	top := dir
	for up := dir; ; up = filepath.Dir(up) {
		if _, err := os.Lstat(filepath.Join(up, ".git")); err == nil {
			top = up
			break
		}
		if filepath.Dir(up) == up {
			break
		}
	}
	root, err := os.OpenRoot(top)
	if err != nil {
		return nil, plain(err)
	}
	return &Root{Dir: top, root: root}, nil
}

// Close lets go of the folder.
func (r *Root) Close() error { return r.root.Close() }

// The errors of paths. Like all errors of this package they go on after the
// name of a file: "moon.hcl does not exist".
var (
	ErrOutside = errors.New("leads out of the repository")
	ErrMissing = errors.New("does not exist")
)

// Rel is the path within the repository of a path of the file system. Links
// in its folder are resolved, the last name is left as it is.
func (r *Root) Rel(path string) (string, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return "", plain(err)
	}
	dir, err := filepath.EvalSymlinks(filepath.Dir(abs))
	if err != nil {
		return "", plain(err)
	}
	return r.within(filepath.Join(dir, filepath.Base(abs)))
}

// Resolve follows the links of a path within the repository to the path
// within the repository where the file itself lies.
func (r *Root) Resolve(rel string) (string, error) {
	if !filepath.IsLocal(rel) {
		return "", ErrOutside
	}
	real, err := filepath.EvalSymlinks(filepath.Join(r.Dir, rel))
	if err != nil {
		return "", plain(err)
	}
	return r.within(real)
}

func (r *Root) within(abs string) (string, error) {
	rel, err := filepath.Rel(r.Dir, abs)
	if err != nil || !filepath.IsLocal(rel) {
		return "", ErrOutside
	}
	return rel, nil
}

// Read reads a file by its path within the repository. It refuses what is no
// regular file, is larger than MostBytes or lies outside, by `..` or by a link.
func (r *Root) Read(rel string) ([]byte, error) {
	if !filepath.IsLocal(rel) {
		return nil, ErrOutside
	}
	// Asked before it is opened, as opening a pipe would wait for its writer.
	info, err := r.root.Stat(rel)
	if err != nil {
		return nil, plain(err)
	}
	if err := readable(info); err != nil {
		return nil, err
	}
	f, err := r.root.Open(rel)
	if err != nil {
		return nil, plain(err)
	}
	defer f.Close()
	// Asked again of the open file: the name may point elsewhere by now.
	if info, err = f.Stat(); err != nil {
		return nil, plain(err)
	}
	if err := readable(info); err != nil {
		return nil, err
	}
	content := make([]byte, 0, info.Size()+1)
	for len(content) <= MostBytes {
		if len(content) == cap(content) {
			content = append(content, 0)[:len(content)]
		}
		n, err := f.Read(content[len(content):cap(content)])
		content = content[:len(content)+n]
		if errors.Is(err, io.EOF) {
			return content, nil
		}
		if err != nil {
			return nil, plain(err)
		}
	}
	return nil, tooLarge(int64(len(content)))
}

func readable(info fs.FileInfo) error {
	switch {
	case info.IsDir():
		return errors.New("is a folder, not a file")
	case !info.Mode().IsRegular():
		return errors.New("is no regular file")
	case info.Size() > MostBytes:
		return tooLarge(info.Size())
	}
	return nil
}

func tooLarge(size int64) error {
	return fmt.Errorf("is larger than a spec file may be: %d MB, at most %d MB", size>>20, MostBytes>>20)
}

// plain takes the path out of an error, which its reader names anyway.
func plain(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return ErrMissing
	case errors.Is(err, fs.ErrPermission):
		return errors.New("may not be read")
	case strings.Contains(err.Error(), "path escapes"): // os.Root has no name for it
		return ErrOutside
	case strings.Contains(err.Error(), "too many"): // links
		return errors.New("is a link that leads back to itself")
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return fmt.Errorf("cannot be read: %w", err)
}
