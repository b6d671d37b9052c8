package editor

import (
	"os"
	"path/filepath"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// PagesBeside finds the rules' pages of an installation: in the documentation
// that lies beside the program, or beside the folder it lies in. It returns ""
// where there is none.
func PagesBeside(program string) string {
	dir := filepath.Dir(program)
	for _, pages := range []string{
		filepath.Join(dir, "docs", "rules"),
		filepath.Join(dir, "..", "docs", "rules"),
		filepath.Join(dir, "..", "share", "doc", "wheelwork", "rules"),
	} {
		if info, err := os.Stat(filepath.Join(pages, "period-error.md")); err == nil && info.Mode().IsRegular() {
			return pages
		}
	}
	return ""
}

// pageOf is the page of a rule below a folder or URI.
func pageOf(pages, rule string) lsp.URI {
	if strings.Contains(pages, "://") {
		return lsp.URI(strings.TrimSuffix(pages, "/") + "/" + rule + ".md")
	}
	return uriOf(filepath.Join(pages, rule+".md"))
}
