//go:build unix

package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/sample"
)

// server is the editor command as a process.
type server struct {
	*exec.Cmd
	in  io.WriteCloser
	out *bufio.Reader
}

func startEditor(t *testing.T, dir string) *server {
	self, err := os.Executable()
	require.NoError(t, err)
	s := &server{Cmd: exec.Command(self, "editor", "--pause", "0s")}
	s.Dir = dir
	s.Env = append(os.Environ(), asCommand+"=1")
	s.Stderr = os.Stderr
	s.in, err = s.StdinPipe()
	require.NoError(t, err)
	out, err := s.StdoutPipe()
	require.NoError(t, err)
	s.out = bufio.NewReader(out)
	require.NoError(t, s.Start())
	t.Cleanup(func() {
		s.Process.Kill() // one that has ended is none the worse
		s.Wait()
	})
	return s
}

func (s *server) send(t *testing.T, message map[string]any) {
	message["jsonrpc"] = "2.0"
	body, err := json.Marshal(message)
	require.NoError(t, err)
	_, err = fmt.Fprintf(s.in, "Content-Length: %d\r\n\r\n%s", len(body), body)
	require.NoError(t, err)
}

// next is the next message of the server.
func (s *server) next(t *testing.T) map[string]any {
	length := 0
	for {
		line, err := s.out.ReadString('\n')
		require.NoError(t, err)
		if line = strings.TrimSpace(line); line == "" {
			break
		}
		_, err = fmt.Sscanf(line, "Content-Length: %d", &length)
		require.NoError(t, err)
	}
	body := make([]byte, length)
	_, err := io.ReadFull(s.out, body)
	require.NoError(t, err)
	var m map[string]any
	require.NoError(t, json.Unmarshal(body, &m))
	return m
}

// until takes messages until one has the method, or is the answer of the id.
func (s *server) until(t *testing.T, of any) map[string]any {
	for {
		if m := s.next(t); m["method"] == of || m["id"] == of && m["method"] == nil {
			return m
		}
	}
}

// snapshot is all files below a folder, with their times.
func snapshot(t *testing.T, dir string) map[string]string {
	files := map[string]string{}
	require.NoError(t, filepath.WalkDir(dir, func(name string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		content, err := os.ReadFile(name)
		info, _ := e.Info()
		files[name] = string(content) + info.ModTime().Format(time.RFC3339Nano)
		return err
	}))
	return files
}

// A server that is killed at work, with text that is not saved and edits that
// are asked for, leaves every file as it was.
func TestKilledEditorChangesNoFile(t *testing.T) {
	for _, n := range []sample.Notation{sample.HCL, sample.TOML} {
		dir := t.TempDir()
		name := filepath.Join(dir, "design."+string(n))
		text := string(sample.Design(200, n))
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
		before := snapshot(t, dir)
		uri := "file://" + name
		for wait := range 5 {
			s := startEditor(t, dir)
			s.send(t, map[string]any{"id": 1, "method": "initialize", "params": map[string]any{"rootUri": "file://" + dir, "capabilities": map[string]any{}}})
			s.until(t, 1.0)
			s.send(t, map[string]any{"method": "textDocument/didOpen", "params": map[string]any{"textDocument": map[string]any{"uri": uri, "languageId": "x", "version": 1, "text": text}}})
			s.until(t, "textDocument/publishDiagnostics")
			for v := range 10 {
				s.send(t, map[string]any{"method": "textDocument/didChange", "params": map[string]any{
					"textDocument":   map[string]any{"uri": uri, "version": v + 2},
					"contentChanges": []any{map[string]any{"range": map[string]any{"start": map[string]any{"line": v, "character": 0}, "end": map[string]any{"line": v, "character": 1}}, "text": "#"}},
				}})
				s.send(t, map[string]any{"id": v + 2, "method": "textDocument/formatting", "params": map[string]any{"textDocument": map[string]any{"uri": uri}}})
			}
			time.Sleep(time.Duration(wait) * 3 * time.Millisecond)
			require.NoError(t, s.Process.Kill())
			s.Wait()
			assert.Equal(t, before, snapshot(t, dir))
		}
	}
}

// The process ends with the protocol's exit codes.
func TestEditorEnds(t *testing.T) {
	s := startEditor(t, t.TempDir())
	s.send(t, map[string]any{"id": 1, "method": "initialize", "params": map[string]any{"capabilities": map[string]any{}}})
	s.until(t, 1.0)
	s.send(t, map[string]any{"id": 2, "method": "shutdown"})
	s.until(t, 2.0)
	s.send(t, map[string]any{"method": "exit"})
	assert.NoError(t, s.Wait())

	s = startEditor(t, t.TempDir())
	s.in.Close()
	s.Wait()
	assert.Equal(t, 1, s.ProcessState.ExitCode(), "the editor is gone")

	assert.Equal(t, "! wheelwork editor: it takes no argument\n! wheelwork help editor tells how it is used\nexit 2\n", said([]string{"editor", "x"}))
	assert.Contains(t, said([]string{"editor", "--pause", "-1s"}), "must not be negative")
}
