package editor

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// The messages that sequences are made of. A letter of a sequence picks one;
// the letters behind it fill in places, texts and names.
var fuzzed = []string{
	"textDocument/didOpen", "textDocument/didChange", "textDocument/didChange", "textDocument/didChange", "textDocument/didClose", "textDocument/didSave",
	"workspace/didChangeWatchedFiles", "workspace/didChangeWorkspaceFolders", "workspace/didChangeConfiguration", "$/cancelRequest", "$/setTrace",
	"textDocument/hover", "textDocument/completion", "textDocument/definition", "textDocument/references", "textDocument/documentHighlight",
	"textDocument/prepareRename", "textDocument/rename", "textDocument/documentSymbol", "textDocument/inlayHint", "textDocument/codeAction", "textDocument/formatting",
	"initialize", "initialized", "no/such", "raw",
}

// sequence reads messages off the input of the fuzzer.
type sequence struct {
	bytes []byte
	dir   string
}

func (s *sequence) next() int {
	if len(s.bytes) == 0 {
		return 0
	}
	b := s.bytes[0]
	s.bytes = s.bytes[1:]
	return int(b)
}

func (s *sequence) text() string {
	n := s.next()
	if n < len(scraps) {
		return scraps[n]
	}
	n = min(n-len(scraps), len(s.bytes))
	text := string(s.bytes[:n])
	s.bytes = s.bytes[n:]
	return text
}

func (s *sequence) uri() lsp.URI {
	names := []string{"date.hcl", "ring.hcl", "date.toml", "ring.toml", "new.hcl", "notes.txt"}
	n := s.next()
	if n%16 == 15 {
		return lsp.URI([]string{"", "untitled:1", "file://other/x.hcl", "%zz", "file:///", "file:relative.hcl"}[n/16%6])
	}
	return uriOf(filepath.Join(s.dir, names[n%len(names)]))
}

func (s *sequence) position() map[string]any {
	number := func() any {
		switch n := s.next(); n {
		case 255:
			return -1
		case 254:
			return 1 << 40
		case 253:
			return "x"
		default:
			return n
		}
	}
	return map[string]any{"line": number(), "character": number()}
}

func (s *sequence) rangeOf() any {
	if s.next()%8 == 7 {
		return nil
	}
	return map[string]any{"start": s.position(), "end": s.position()}
}

// params fills in what any of the messages may ask for.
func (s *sequence) params(method string) any {
	document := map[string]any{"uri": s.uri(), "version": s.next(), "text": "", "languageId": "spec"}
	switch method {
	case "textDocument/didOpen":
		document["text"] = dateRing["hcl"]["ring.hcl"] + s.text()
	case "textDocument/didChange":
		var changes []any
		for range s.next()%3 + 1 {
			changes = append(changes, map[string]any{"range": s.rangeOf(), "text": s.text()})
		}
		return map[string]any{"textDocument": document, "contentChanges": changes}
	case "workspace/didChangeWatchedFiles":
		return map[string]any{"changes": []any{map[string]any{"uri": s.uri(), "type": s.next()}}}
	case "workspace/didChangeWorkspaceFolders":
		folder := []any{map[string]any{"uri": uriOf(s.dir), "name": s.text()}}
		return map[string]any{"event": map[string]any{[]string{"added", "removed"}[s.next()%2]: folder}}
	case "workspace/didChangeConfiguration":
		return map[string]any{"settings": map[string]any{"wheelwork": map[string]any{"pauseMilliseconds": s.next() % 3, "rulePages": s.text()}}}
	case "$/cancelRequest":
		return map[string]any{"id": s.next()}
	}
	return map[string]any{
		"textDocument": document, "position": s.position(), "range": s.rangeOf(), "newName": s.text(),
		"context": map[string]any{"includeDeclaration": true, "only": []string{"quickfix"}},
	}
}

// FuzzMessages holds that whatever is sent in whatever order, the server does
// not fall over, answers each request once, and ends as it is told.
func FuzzMessages(f *testing.F) {
	dir, err := os.MkdirTemp("", "editor")
	require.NoError(f, err)
	dir, err = filepath.EvalSymlinks(dir)
	require.NoError(f, err)
	f.Cleanup(func() { os.RemoveAll(dir) })
	for _, files := range dateRing {
		for name, text := range files {
			require.NoError(f, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
		}
	}
	f.Add([]byte("\x00\x01\x01\x00\x01\x01\x02\x00\x00\x01\x05\x01\x05\x02abc"))
	f.Add([]byte("\x00\x00\x01\x0b\x00\x01\x03\x03\x0c\x01\x00\x02\x02\x11\x01\x02\x03\x04\x05"))
	f.Add([]byte("\x00\x03\x01\x01\x03\x02\x01\x00\x00\x00\x00\x04\x13\x14\x15\x16\x17\x18\x19{}\x04\x03"))
	f.Fuzz(func(t *testing.T, program []byte) { converse(t, &sequence{program, dir}) })
}

func converse(t *testing.T, s *sequence) {
	fromClient, toServer := io.Pipe()
	fromServer, toClient := io.Pipe()
	code := make(chan int, 1)
	go func() { code <- Serve(context.Background(), fromClient, toClient, Options{strict: true}) }()
	answers := make(chan reply, 4096)
	go func() {
		in := newStream(fromServer, io.Discard)
		for {
			length, err := in.header()
			if err != nil {
				close(answers)
				return
			}
			body := make([]byte, length)
			if _, err := io.ReadFull(in.in, body); err != nil {
				close(answers)
				return
			}
			var r struct {
				reply
				Method string `json:"method"`
			}
			if json.Unmarshal(body, &r) == nil && r.Method == "" {
				answers <- r.reply
			}
		}
	}()
	raw := func(body string) { fmt.Fprintf(toServer, "Content-Length: %d\r\n\r\n%s", len(body), body) }
	send := func(id int, method string, params any) {
		m := map[string]any{"jsonrpc": "2.0", "method": method, "params": params}
		if id > 0 {
			m["id"] = id
		}
		body, err := json.Marshal(m)
		require.NoError(t, err)
		raw(string(body))
	}
	asked := map[string]bool{"1": true}
	send(1, "initialize", map[string]any{"workspaceFolders": []any{map[string]any{"uri": uriOf(s.dir), "name": "x"}}, "capabilities": abilities()})
	for id := 2; len(s.bytes) > 0 && id < 40; id++ {
		n := s.next() % len(fuzzed)
		switch method := fuzzed[n]; {
		case method == "raw":
			raw(s.text())
		case n < 11:
			send(0, method, s.params(method))
		default:
			asked[fmt.Sprint(id)] = true
			send(id, method, s.params(method))
		}
	}
	asked["1000"] = true
	send(1000, "shutdown", nil)
	late := time.After(patience)
	for len(asked) > 0 {
		select {
		case r, ok := <-answers:
			require.True(t, ok, "the server is gone; not answered: %v", asked)
			if string(r.ID) != "null" {
				require.True(t, asked[string(r.ID)], "answered twice, or not asked: %s", r.ID)
				delete(asked, string(r.ID))
			}
		case <-late:
			require.Fail(t, "not answered", "%v", asked)
		}
	}
	send(0, "exit", nil)
	require.Equal(t, 0, <-code)
	toServer.Close()
}
