//go:build unix

package spec

import (
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Opening a pipe that nobody writes to would wait for ever.
func TestAPipeIsNoSpec(t *testing.T) {
	dir := tree(t, map[string]string{"table.hcl": using("pipe.hcl")})
	require.NoError(t, syscall.Mkfifo(filepath.Join(dir, "pipe.hcl"), 0o644))
	_, problems := Load(filepath.Join(dir, "table.hcl"))
	assert.Contains(t, lines(problems), `"pipe.hcl" is no regular file`)
	d, problems := Load(filepath.Join(dir, "pipe.hcl"))
	assert.Nil(t, d)
	assert.Contains(t, lines(problems), "this file is no regular file")
}

func TestADeviceIsNoSpec(t *testing.T) {
	dir := tree(t, map[string]string{"table.hcl": using("zero.hcl")})
	const zero = 1<<8 | 5 // Linux's numbers of /dev/zero
	if err := syscall.Mknod(filepath.Join(dir, "zero.hcl"), syscall.S_IFCHR|0o644, zero); err != nil {
		t.Skip("no devices can be made here:", err)
	}
	_, problems := Load(filepath.Join(dir, "table.hcl"))
	assert.Contains(t, lines(problems), `"zero.hcl" is no regular file`)
}
