package main

import (
	"bytes"
	"io"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pipe is what a watching command writes, read while it goes on.
type pipe struct {
	sync.Mutex
	bytes.Buffer
}

func (p *pipe) Write(b []byte) (int, error) {
	p.Lock()
	defer p.Unlock()
	return p.Buffer.Write(b)
}

func (p *pipe) said(what string) bool {
	p.Lock()
	defer p.Unlock()
	return strings.Contains(p.String(), what)
}

func TestWatchChecksAgainOnSave(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("table.hcl", []byte("design {\n  title = \"Table\"\n  uses  = [\"parts.toml\"]\n}\n"), 0o644))
	require.NoError(t, os.WriteFile("parts.toml", []byte("[arbor.day]\n"), 0o644))
	stop := make(chan os.Signal, 1)
	out := &pipe{}
	c := &Command{Stdout: out, Stderr: io.Discard, stop: stop}
	ended := make(chan int)
	go func() { ended <- c.Main([]string{"check", "--watch", "table.hcl"}) }()
	wait := func(what string) {
		t.Helper()
		require.Eventually(t, func() bool { return out.said(what) }, 20*time.Second, 10*time.Millisecond, what)
	}
	wait("nothing found")
	// A file that the design only uses, broken and mended again; written beside
	// and moved into place, as editors do.
	require.NoError(t, os.WriteFile("new", []byte("[arbor.day]\ntilt = \"5 parsec\"\n"), 0o644))
	require.NoError(t, os.Rename("new", "parts.toml"))
	wait("parsec")
	require.NoError(t, os.WriteFile("parts.toml", []byte("[arbor.day]\n[arbor.day]\n"), 0o644))
	wait("1 problem")
	stop <- os.Interrupt
	select {
	case code := <-ended:
		assert.Equal(t, clean, code)
	case <-time.After(20 * time.Second):
		t.Fatal("an interrupt does not end it")
	}
}
