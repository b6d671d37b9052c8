//go:build unix

package folder

import (
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Opening a pipe that nobody writes to would wait for ever.
func TestAPipeIsNotOpened(t *testing.T) {
	root := repository(t, map[string]string{})
	name := filepath.Join(root.Dir, "pipe.hcl")
	require.NoError(t, syscall.Mkfifo(name, 0o644))
	_, err := root.Read("pipe.hcl")
	assert.EqualError(t, err, "is no regular file")
	assert.Empty(t, designs(t, root.Dir))
}
