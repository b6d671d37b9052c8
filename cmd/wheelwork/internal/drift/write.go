package drift

import (
	"errors"
	"os"
	"path/filepath"
)

// Write writes the picture into a file, whole or not at all. The error does not
// name the file.
func (p *Picture) Write(file string) error {
	temp, err := os.CreateTemp(filepath.Dir(file), "."+filepath.Base(file)+".*")
	if err != nil {
		return reason(err)
	}
	_, err = temp.Write(p.SVG())
	if err == nil {
		err = temp.Chmod(0o644)
	}
	if closed := temp.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(temp.Name(), file)
	}
	if err != nil {
		os.Remove(temp.Name())
	}
	return reason(err)
}

// reason is why a file could not be written, without a path.
func reason(err error) error {
	var path *os.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
