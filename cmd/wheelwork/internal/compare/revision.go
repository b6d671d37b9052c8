package compare

import (
	"archive/zip"
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
	archive, err := git(root.Dir, "archive", "--format=zip", rev)
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
	files, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil {
		return err
	}
	for _, f := range files.File {
		name := filepath.FromSlash(f.Name)
		if !folder.IsSpec(name) || !filepath.IsLocal(name) || f.UncompressedSize64 > folder.MostBytes {
			continue
		}
		if err := lay(root, f, name); err != nil {
			return err
		}
	}
	return nil
}

// lay writes one file of an archive, or its link.
func lay(root *os.Root, f *zip.File, name string) error {
	if err := root.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		return err
	}
	packed, err := f.Open()
	if err != nil {
		return err
	}
	defer packed.Close()
	content, err := io.ReadAll(io.LimitReader(packed, folder.MostBytes+1))
	if err != nil {
		return err
	}
	if f.Mode()&os.ModeSymlink != 0 {
		return root.Symlink(string(content), name)
	}
	return root.WriteFile(name, content, 0o644)
}
