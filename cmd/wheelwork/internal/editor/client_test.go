package editor

import (
	"context"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// client is an editor as a test has it: it talks to a server over a pipe and
// keeps its documents and what was published by itself.
type client struct {
	t        testing.TB
	dir      string
	conn     *jsonrpc2.Conn
	code     chan int
	encoding lines.Encoding
	result   lsp.InitializeResult

	mu        sync.Mutex
	docs      map[lsp.URI]*clientDoc
	published map[lsp.URI]*lsp.PublishDiagnosticsParams
	history   []*lsp.PublishDiagnosticsParams
	requests  []string
	news      chan struct{}
	first     int32 // versions begin behind it
}

type clientDoc struct {
	version int32
	text    string
}

type pipe struct {
	io.Reader
	io.WriteCloser
}

// start runs a server on a folder with the files given.
func start(t testing.TB, files map[string]string, change ...func(*Options, map[string]any)) *client {
	t.Helper()
	dir, err := filepath.EvalSymlinks(t.TempDir())
	require.NoError(t, err)
	require.NoError(t, os.Mkdir(filepath.Join(dir, ".git"), 0o755))
	for name, content := range files {
		to := filepath.Join(dir, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
		require.NoError(t, os.WriteFile(to, []byte(content), 0o644))
	}
	options := Options{strict: true, Log: testLog{t}}
	params := map[string]any{
		"processId":        os.Getpid(),
		"workspaceFolders": []any{map[string]any{"uri": uriOf(dir), "name": "designs"}},
		"capabilities":     abilities(),
	}
	for _, f := range change {
		f(&options, params)
	}
	c := connect(t, options)
	c.dir = dir
	c.call("initialize", params, &c.result)
	c.encoding = lines.Encoding(c.result.Capabilities.PositionEncoding)
	c.notify("initialized", map[string]any{})
	return c
}

// abilities is a client that can do all that the server makes use of.
func abilities() map[string]any {
	return map[string]any{
		"general": map[string]any{"positionEncodings": []string{"utf-16"}},
		"workspace": map[string]any{
			"workspaceEdit": map[string]any{"documentChanges": true},
		},
		"textDocument": map[string]any{
			"publishDiagnostics": map[string]any{"relatedInformation": true, "versionSupport": true, "codeDescriptionSupport": true},
			"documentSymbol":     map[string]any{"hierarchicalDocumentSymbolSupport": true},
			"hover":              map[string]any{"contentFormat": []string{"markdown", "plaintext"}},
			"completion":         map[string]any{"completionItem": map[string]any{"snippetSupport": true}},
		},
	}
}

// connect joins a client to a new server.
func connect(t testing.TB, o Options) *client {
	fromClient, toServer := io.Pipe()
	fromServer, toClient := io.Pipe()
	c := &client{
		t: t, code: make(chan int, 1), encoding: lsp.UTF16,
		docs: map[lsp.URI]*clientDoc{}, published: map[lsp.URI]*lsp.PublishDiagnosticsParams{},
		news: make(chan struct{}, 1),
	}
	go func() { c.code <- Serve(context.Background(), fromClient, toClient, o) }()
	c.conn = jsonrpc2.NewConn(context.Background(), jsonrpc2.NewBufferedStream(pipe{fromServer, toServer}, jsonrpc2.VSCodeObjectCodec{}),
		jsonrpc2.HandlerWithError(c.handle), jsonrpc2.SetLogger(quiet{}))
	t.Cleanup(func() { c.conn.Close() })
	return c
}

type quiet struct{}

func (quiet) Printf(string, ...any) {}

type testLog struct{ testing.TB }

func (l testLog) Write(b []byte) (int, error) {
	os.Stderr.Write(b)
	return len(b), nil
}

func (c *client) handle(_ context.Context, _ *jsonrpc2.Conn, r *jsonrpc2.Request) (any, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if r.Method == "textDocument/publishDiagnostics" {
		p := &lsp.PublishDiagnosticsParams{}
		if err := json.Unmarshal(*r.Params, p); err != nil {
			panic(err)
		}
		c.published[p.URI] = p
		c.history = append(c.history, p)
	} else {
		c.requests = append(c.requests, r.Method)
	}
	select {
	case c.news <- struct{}{}:
	default:
	}
	return nil, nil
}

const patience = 20 * time.Second

func (c *client) call(method string, params, result any) {
	c.t.Helper()
	require.NoError(c.t, c.ask(method, params, result))
}

// ask is call for answers that may be errors.
func (c *client) ask(method string, params, result any) error {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	return c.conn.Call(ctx, method, params, result)
}

func (c *client) notify(method string, params any) {
	c.t.Helper()
	require.NoError(c.t, c.conn.Notify(context.Background(), method, params))
}

func (c *client) uri(name string) lsp.URI {
	return uriOf(filepath.Join(c.dir, filepath.FromSlash(name)))
}

// open opens a file with the text it has on disk, or another.
func (c *client) open(name string, text ...string) {
	c.t.Helper()
	var content string
	if len(text) > 0 {
		content = text[0]
	} else {
		b, err := os.ReadFile(filepath.Join(c.dir, filepath.FromSlash(name)))
		require.NoError(c.t, err)
		content = string(b)
	}
	c.mu.Lock()
	version := c.first + 1
	c.docs[c.uri(name)] = &clientDoc{version: version, text: content}
	c.mu.Unlock()
	c.notify("textDocument/didOpen", map[string]any{"textDocument": map[string]any{"uri": c.uri(name), "languageId": "spec", "version": version, "text": content}})
}

func (c *client) text(name string) string { return c.docs[c.uri(name)].text }

// edit replaces the bytes from start to end of an open file.
func (c *client) edit(name string, start, end int, text string) {
	c.t.Helper()
	uri := c.uri(name)
	c.mu.Lock()
	d := c.docs[uri]
	r := c.encoding.Range(lines.New([]byte(d.text)), int32(start), int32(end))
	d.text = d.text[:start] + text + d.text[end:]
	d.version++
	c.mu.Unlock()
	c.notify("textDocument/didChange", map[string]any{
		"textDocument":   map[string]any{"uri": uri, "version": d.version},
		"contentChanges": []any{map[string]any{"range": r, "text": text}},
	})
}

// settled waits until the diagnostics of the file in its latest version, or of
// one that is not open, are as wanted.
func (c *client) settled(name string, want func([]lsp.Diagnostic) bool) []lsp.Diagnostic {
	c.t.Helper()
	uri := c.uri(name)
	deadline := time.After(patience)
	for {
		c.mu.Lock()
		p, d := c.published[uri], c.docs[uri]
		c.mu.Unlock()
		if p != nil && (d == nil || p.Version != nil && *p.Version == d.version) && want(p.Diagnostics) {
			return p.Diagnostics
		}
		select {
		case <-c.news:
		case <-deadline:
			require.FailNow(c.t, "nothing came that was waited for", "%s: %+v", name, p)
		}
	}
}

func any1(list []lsp.Diagnostic) bool { return len(list) > 0 }
func none(list []lsp.Diagnostic) bool { return len(list) == 0 }

// leave shuts the server down and returns its exit code.
func (c *client) leave() int {
	c.t.Helper()
	c.call("shutdown", nil, nil)
	c.notify("exit", nil)
	return <-c.code
}

func linesOf(text string) *lines.Text { return lines.New([]byte(text)) }
