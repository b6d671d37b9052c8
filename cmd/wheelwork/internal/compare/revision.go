package compare

import (
	"archive/tar"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"wheelwork/spec/folder"
)

// Revision lays the spec files of a git revision into a new folder, which the
// caller removes, and returns the path there of a path in the working tree.
func Revision(rev, path string) (temporary, there string, err error) {
	root, err := folder.Of(path)
	if err != nil {
		return "", "", err
	}
	defer root.Close()
	rel, err := root.Rel(path)
	if err != nil {
		return "", "", err
	}
	if strings.HasPrefix(rev, "-") {
		return "", "", fmt.Errorf("%q is no revision", rev)
	}
	archive, err := git(root.Dir, "archive", "--format=tar", rev)
	if err != nil {
		return "", "", err
	}
	if temporary, err = os.MkdirTemp("", "wheelwork-"); err != nil {
		return "", "", err
	}
	if temporary, err = filepath.EvalSymlinks(temporary); err == nil {
		err = unpack(archive, temporary)
	}
	if err != nil {
		os.RemoveAll(temporary)
		return "", "", err
	}
	return temporary, filepath.Join(temporary, rel), nil
}

// git runs git in a folder and returns what it writes.
func git(dir string, args ...string) ([]byte, error) {
	command := exec.Command("git", args...)
	command.Dir = dir
	var out, complaint bytes.Buffer
	command.Stdout, command.Stderr = &out, &complaint
	if err := command.Run(); err != nil {
		if errors.Is(err, exec.ErrNotFound) {
			return nil, errors.New("git is needed to compare revisions")
		}
		said, _, _ := strings.Cut(strings.TrimSpace(complaint.String()), "\n")
		return nil, fmt.Errorf("git: %s", strings.TrimPrefix(said, "fatal: "))
	}
	return out.Bytes(), nil
}

// unpack writes the spec files of an archive, and a .git that makes the folder
// a repository, so that nothing outside it is read.
func unpack(archive []byte, to string) error {
	if err := os.Mkdir(filepath.Join(to, ".git"), 0o755); err != nil {
		return err
	}
	root, err := os.OpenRoot(to)
	if err != nil {
		return err
	}
	defer root.Close()
	files := tar.NewReader(bytes.NewReader(archive))
	for {
		header, err := files.Next()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		name := filepath.FromSlash(header.Name)
		if !folder.IsSpec(name) || !filepath.IsLocal(name) || header.Size > folder.MostBytes {
			continue
		}
		if err := root.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return err
		}
		switch header.Typeflag {
		case tar.TypeSymlink:
			err = root.Symlink(header.Linkname, name)
		case tar.TypeReg:
			var f *os.File
			if f, err = root.Create(name); err == nil {
				_, err = io.Copy(f, files)
				err = errors.Join(err, f.Close())
			}
		}
		if err != nil {
			return err
		}
	}
}
