package folder

import (
	"bytes"
	"errors"
	"fmt"
	"io"
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
// links in the folder are not followed.
func Designs(path string) ([]string, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, plain(err)
	}
	if !info.IsDir() {
		return []string{path}, nil
	}
	top := path
	if info, err := os.Lstat(path); err == nil && info.Mode()&fs.ModeSymlink != 0 {
		top += string(filepath.Separator) // WalkDir follows no link, not even this
	}
	var found []string
	err = filepath.WalkDir(top, func(name string, e fs.DirEntry, err error) error {
		switch {
		case err != nil && name == top:
			return plain(err)
		case err != nil:
			return fmt.Errorf("holds %s, which %w", name, plain(err))
		case e.IsDir() && name != top && strings.HasPrefix(e.Name(), "."):
			return fs.SkipDir
		case IsSpec(e.Name()) && e.Type().IsRegular() && holdsDesign(name):
			found = append(found, name)
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	sort.Strings(found)
	return found, nil
}

// holdsDesign looks into a file. Where it could not look it says yes: who reads
// the file is told what is wrong with it.
func holdsDesign(name string) bool {
	f, err := os.Open(name)
	if err != nil {
		return true
	}
	defer f.Close()
	// Most designs begin with the block: the rest need not be read then.
	content := make([]byte, 16<<10)
	n, err := io.ReadFull(f, content)
	content = content[:n]
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return HoldsDesign(content)
	}
	if HoldsDesign(content[:bytes.LastIndexByte(content, '\n')+1]) {
		return true
	}
	rest, err := io.ReadAll(io.LimitReader(f, MostBytes))
	return err != nil || HoldsDesign(append(content, rest...))
}

// HoldsDesign reports whether the text of a spec file may hold a design block,
// however broken it is elsewhere: it looks for a line that begins one.
func HoldsDesign(content []byte) bool {
	if bytes.HasPrefix(content, []byte("\xff\xfe")) || bytes.HasPrefix(content, []byte("\xfe\xff")) {
		return true
	}
	content = bytes.TrimPrefix(content, []byte("\xef\xbb\xbf"))
	top := true // no header of TOML has come yet
	for len(content) > 0 {
		var line []byte
		line, content, _ = bytes.Cut(content, []byte("\n"))
		line = bytes.TrimSpace(line)
		if beginsDesign(line, top) {
			return true
		}
		top = top && !bytes.HasPrefix(line, []byte("["))
	}
	return false
}

// beginsDesign knows `design {`, also with a name or a line end before the
// brace, and `[design]`; and at the top of a file `design.title = ...` and
// `design = {`, which further down would be some table's own.
func beginsDesign(line []byte, top bool) bool {
	rest, bracket := bytes.CutPrefix(line, []byte("["))
	if bracket {
		rest = bytes.TrimSpace(bytes.TrimPrefix(rest, []byte("[")))
	}
	rest, ok := bytes.CutPrefix(rest, []byte("design"))
	if !ok {
		return false
	}
	rest = bytes.TrimSpace(rest)
	if bracket {
		return bytes.HasPrefix(rest, []byte("]"))
	}
	if len(rest) == 0 {
		return true
	}
	switch rest[0] {
	case '{', '"', '#', '/':
		return true
	case '.':
		return top
	case '=':
		return top && bytes.HasPrefix(bytes.TrimSpace(rest[1:]), []byte("{"))
	}
	return false
}
