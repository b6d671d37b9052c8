package editor

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"testing"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// wire is a client that writes bytes.
type wire struct {
	t    *testing.T
	to   io.WriteCloser
	from *bufio.Reader
	code chan int
}

func newWire(t *testing.T) *wire {
	fromClient, toServer := io.Pipe()
	fromServer, toClient := io.Pipe()
	w := &wire{t: t, to: toServer, from: bufio.NewReader(fromServer), code: make(chan int, 1)}
	go func() { w.code <- Serve(context.Background(), fromClient, toClient, Options{strict: true}) }()
	t.Cleanup(func() { toServer.Close() })
	return w
}

func (w *wire) raw(s string) { fmt.Fprint(w.to, s) }

func (w *wire) send(body string) { w.raw(fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(body), body)) }

type reply struct {
	ID     json.RawMessage `json:"id"`
	Result json.RawMessage `json:"result"`
	Error  *struct {
		Code    int64  `json:"code"`
		Message string `json:"message"`
	} `json:"error"`
}

// answer is the next message from the server.
func (w *wire) answer() reply {
	w.t.Helper()
	length := 0
	for {
		line, err := w.from.ReadString('\n')
		require.NoError(w.t, err)
		if line = strings.TrimSpace(line); line == "" {
			break
		}
		_, err = fmt.Sscanf(line, "Content-Length: %d", &length)
		require.NoError(w.t, err)
	}
	body := make([]byte, length)
	_, err := io.ReadFull(w.from, body)
	require.NoError(w.t, err)
	var r reply
	require.NoError(w.t, json.Unmarshal(body, &r))
	return r
}

// The codes are those of JSON-RPC 2.0 and of the Language Server Protocol 3.17.
func TestMalformed(t *testing.T) {
	w := newWire(t)
	deep := strings.Repeat("[", 20000)
	for _, c := range []struct {
		body string
		id   string
		code int64
	}{
		{`{"jsonrpc":"2.0","id":1,"method":"textDocument/hover","params":{}}`, "1", -32002},
		{`{"jsonrpc":"2.0","id":"a","method":"shutdown"}`, `"a"`, -32002},
		{`nonsense`, "null", -32700},
		{`{"jsonrpc":"2.0","id":1,"method":`, "null", -32700},
		{deep, "null", -32700},
		{`7`, "null", -32600},
		{`[]`, "null", -32600},
		{`[{"jsonrpc":"2.0","id":1,"method":"initialize"}]`, "null", -32600},
		{`{"jsonrpc":"2.0","id":2}`, "2", -32600},
		{`{"jsonrpc":"2.0","id":2,"method":5}`, "2", -32600},
		{`{"jsonrpc":"2.0","id":{},"method":"initialize"}`, "null", -32600},
		{`{"jsonrpc":"2.0","id":1.5,"method":"initialize"}`, "null", -32600},
		{`{"jsonrpc":"2.0","id":3,"method":"initialize","result":1}`, "3", -32600},
		{`{"jsonrpc":"2.0","id":4,"method":"initialize"}`, "4", -32602},
		{`{"jsonrpc":"2.0","id":5,"method":"initialize","params":[1]}`, "5", -32602},
		{`{"jsonrpc":"2.0","id":6,"method":"initialize","params":{"capabilities":3}}`, "6", -32602},
		{`{"jsonrpc":"2.0","id":7,"method":"no/such"}`, "7", -32601},
	} {
		w.send(c.body)
		r := w.answer()
		require.NotNil(t, r.Error, c.body)
		assert.Equal(t, c.code, r.Error.Code, c.body)
		assert.Equal(t, c.id, string(r.ID), c.body)
	}
	// What is neither asked nor known is passed over.
	w.send(`{"jsonrpc":"2.0","method":"no/such"}`)
	w.send(`{"jsonrpc":"2.0","id":99,"result":null}`)
	w.send(`{"jsonrpc":"2.0","id":null,"error":{"code":1,"message":"?"}}`)
	w.raw("content-length: 58\nContent-Type: application/vscode-jsonrpc; charset=utf-8\n\n")
	w.raw(`{"jsonrpc":"2.0","id":8,"method":"initialize","params":{}}`)
	r := w.answer()
	require.Nil(t, r.Error)
	assert.Contains(t, string(r.Result), `"positionEncoding":"utf-16"`)
	w.send(`{"jsonrpc":"2.0","id":9,"method":"initialize","params":{}}`)
	assert.EqualValues(t, -32600, w.answer().Error.Code)
	w.send(`{"jsonrpc":"2.0","id":10,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///x.hcl"},"position":{"line":0,"character":0}}}`)
	assert.EqualValues(t, -32602, w.answer().Error.Code, "not open")
	w.send(`{"jsonrpc":"2.0","id":11,"method":"shutdown"}`)
	r = w.answer()
	assert.Equal(t, "null", string(r.Result))
	w.send(`{"jsonrpc":"2.0","id":12,"method":"textDocument/hover","params":{}}`)
	assert.EqualValues(t, -32600, w.answer().Error.Code)
	w.send(`{"jsonrpc":"2.0","method":"exit"}`)
	assert.Equal(t, 0, <-w.code)
}

// Without a length no further message can be found: that is said, and the
// server ends.
func TestBrokenHeader(t *testing.T) {
	for _, header := range []string{"Content-Length: x\r\n\r\n", "Content-Length: -1\r\n\r\n", "\r\n", strings.Repeat("x", 1<<17)} {
		w := newWire(t)
		go w.raw(header)
		assert.EqualValues(t, -32700, w.answer().Error.Code)
		assert.Equal(t, 1, <-w.code)
	}
}

// The protocol's exit codes: 0 after shutdown, else 1.
func TestExit(t *testing.T) {
	w := newWire(t)
	w.send(`{"jsonrpc":"2.0","method":"exit"}`)
	assert.Equal(t, 1, <-w.code)
	w = newWire(t)
	w.to.Close()
	assert.Equal(t, 1, <-w.code, "the editor is gone")
}

// The encoding is the first that both know, UTF-16 where there is none.
func TestEncodings(t *testing.T) {
	for _, c := range []struct {
		offers []string
		want   string
	}{
		{nil, "utf-16"}, {[]string{"utf-32"}, "utf-16"},
		{[]string{"utf-8", "utf-16"}, "utf-8"}, {[]string{"utf-32", "utf-16", "utf-8"}, "utf-16"},
	} {
		client := start(t, nil, func(_ *Options, params map[string]any) {
			params["capabilities"] = map[string]any{"general": map[string]any{"positionEncodings": c.offers}}
		})
		assert.Equal(t, c.want, client.result.Capabilities.PositionEncoding)
	}
}

// Settings come with the initialization or later; what cannot be is bounded.
func TestSettings(t *testing.T) {
	files := map[string]string{"pages/period-error.md": "# period-error\n"}
	for name, text := range dateRing["hcl"] {
		files[name] = text
	}
	c := start(t, files, func(_ *Options, params map[string]any) {
		params["initializationOptions"] = map[string]any{"pauseMilliseconds": 40, "rulePages": "https://example.org/rules/"}
	})
	c.open("ring.hcl")
	c.settled("ring.hcl", none)
	begin := time.Now()
	c.replace("ring.hcl", "30", "31")
	list := c.settled("ring.hcl", any1)
	assert.GreaterOrEqual(t, time.Since(begin), 40*time.Millisecond)
	require.NotNil(t, list[0].CodeDescription)
	assert.EqualValues(t, "https://example.org/rules/period-error.md", list[0].CodeDescription.Href)
	c.notify("workspace/didChangeConfiguration", map[string]any{"settings": map[string]any{"wheelwork": map[string]any{"rulePages": c.dir + "/pages", "pauseMilliseconds": -5}}})
	c.replace("ring.hcl", "31", "32")
	list = c.settled("ring.hcl", any1)
	assert.Equal(t, c.uri("pages/period-error.md"), list[0].CodeDescription.Href)
}

// A request that is cancelled says so, whenever that comes.
func TestCancel(t *testing.T) {
	both(t, func(t *testing.T, ext string, c *client) {
		ring := "ring." + ext
		c.open(ring)
		for i := range 20 {
			ctx, cancel := context.WithTimeout(context.Background(), patience)
			id := uint64(1000 + i)
			done := make(chan error, 1)
			go func() {
				done <- c.conn.Call(ctx, "textDocument/documentSymbol", map[string]any{"textDocument": map[string]any{"uri": c.uri(ring)}}, nil, jsonrpc2.PickID(jsonrpc2.ID{Num: id}))
			}()
			c.notify("$/cancelRequest", map[string]any{"id": id})
			if err := <-done; err != nil {
				assert.Contains(t, err.Error(), fmt.Sprint(lsp.RequestCancelled))
			}
			cancel()
		}
	})
}
