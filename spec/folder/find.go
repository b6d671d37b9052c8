package folder

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"
)

// IsSpec reports whether the name is that of a spec file.
func IsSpec(name string) bool {
	return strings.HasSuffix(name, ".hcl") || strings.HasSuffix(name, ".toml")
}

// Designs lists the files that may hold a design: the path itself if it is a
// file, else the spec files in the folder and below it that have a design
// block, in the order in which names sort. Hidden folders are passed over and
// links to folders are not followed.
func Designs(path string) ([]string, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, plain(err)
	}
	if !info.IsDir() {
		return []string{path}, nil
	}
	var found []string
	err = filepath.WalkDir(path, func(name string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() && name != path && strings.HasPrefix(e.Name(), ".") {
			return fs.SkipDir
		}
		if IsSpec(e.Name()) && e.Type().IsRegular() && holdsDesign(name) {
			found = append(found, name)
		}
		return nil
	})
	if err != nil {
		return nil, plain(err)
	}
	sort.Strings(found)
	return found, nil
}

// holdsDesign looks for a line that begins a design block. It must also say
// yes to a file that is broken elsewhere, so it does not parse.
func holdsDesign(name string) bool {
	info, err := os.Stat(name)
	if err != nil || !info.Mode().IsRegular() {
		return false
	}
	if info.Size() > MostBytes {
		return false
	}
	content, err := os.ReadFile(name)
	if err != nil {
		return true // reading it again will tell why
	}
	for _, line := range bytes.Split(content, []byte("\n")) {
		line = bytes.TrimPrefix(bytes.TrimSpace(line), []byte("\xef\xbb\xbf"))
		rest, ok := bytes.CutPrefix(line, []byte("design"))
		if !ok {
			rest, ok = bytes.CutPrefix(line, []byte("["))
			if ok {
				rest, ok = bytes.CutPrefix(bytes.TrimSpace(rest), []byte("design"))
				ok = ok && bytes.HasPrefix(bytes.TrimSpace(rest), []byte("]"))
			}
		} else {
			rest = bytes.TrimSpace(rest)
			ok = len(rest) == 0 || bytes.IndexByte([]byte("{.="), rest[0]) >= 0
		}
		if ok {
			return true
		}
	}
	return false
}
