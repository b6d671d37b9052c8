package editor

import (
	"net/url"
	"path/filepath"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// pathOf is the file that a URI names; ok is false if it names none of this
// machine.
func pathOf(uri lsp.URI) (path string, ok bool) {
	u, err := url.Parse(string(uri))
	if err != nil || u.Scheme != "file" || u.Host != "" && u.Host != "localhost" || strings.ContainsRune(u.Path, 0) {
		return "", false
	}
	p := u.Path
	if len(p) >= 3 && p[0] == '/' && p[2] == ':' { // /C:/folder
		p = p[1:]
	}
	p = filepath.FromSlash(p)
	if !filepath.IsAbs(p) {
		return "", false
	}
	return filepath.Clean(p), true
}

// uriOf names a file by its absolute path.
func uriOf(path string) lsp.URI {
	p := filepath.ToSlash(path)
	if !strings.HasPrefix(p, "/") {
		p = "/" + p
	}
	return lsp.URI((&url.URL{Scheme: "file", Path: p}).String())
}

// canonical is the path without links, by which files are told apart. A file
// that is not there yet is known by its folder.
func canonical(path string) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		return real
	}
	if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		return filepath.Join(dir, filepath.Base(path))
	}
	return filepath.Clean(path)
}
