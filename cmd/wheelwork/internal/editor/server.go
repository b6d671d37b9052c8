// Package editor is the language server: it speaks the Language Server Protocol
// 3.17 and keeps an editor's view of the designs that are open. It reads files
// and never writes one.
//
// Messages are taken in their order by one goroutine, which holds the server's
// mutex and does nothing that takes time: it brings the state up to date and
// takes a view of it. Reading, checking and answering go on beside it, on views
// that do not change.
package editor

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"log"
	"runtime"
	"runtime/debug"
	"sync"
	"time"

	"github.com/sourcegraph/jsonrpc2"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// Options are what a server is started with.
type Options struct {
	// Pause is how long the text must rest before findings are added.
	Pause time.Duration
	// Pages is the folder or URI under which the pages of the rules lie, as
	// NAME.md; "" if there is none.
	Pages string
	// Version is the program's.
	Version string
	// Log takes what went wrong inside; nil throws it away.
	Log io.Writer

	strict bool // panics are not caught: for tests
}

// Server is one session with an editor.
type Server struct {
	options Options
	conn    *jsonrpc2.Conn
	out     *outbox
	cache   *cache
	log     *log.Logger
	slots   chan struct{} // one for each check that may run at once

	mu       sync.Mutex
	phase    phase
	code     int
	client   lsp.ClientCapabilities
	encoding lines.Encoding
	pause    time.Duration
	pages    string
	docs     map[string]*document // by canonical path; replaced, never changed
	foreign  map[lsp.URI]bool     // open documents that are no files
	designs  []*design            // sorted by path
	searched map[string]bool      // folders in which designs were sought
	seeking  int                  // searches that go on
	sought   chan struct{}        // closed when the last of them ends
	sent     map[string]sent      // by canonical path
	running  map[jsonrpc2.ID]context.CancelFunc
}

type phase uint8

const (
	begun phase = iota
	initialized
	shut
)

// Serve talks to an editor until it says exit or is gone, and returns the exit
// code that the protocol asks for.
func Serve(ctx context.Context, in io.Reader, out io.Writer, o Options) int {
	s := newServer(o)
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	ready := make(chan struct{})
	s.conn = jsonrpc2.NewConn(ctx, newStream(in, out), gate{s, ready}, jsonrpc2.SetLogger(s.log))
	close(ready)
	done := s.conn.DisconnectNotify()
	go s.out.send(done, func(p *lsp.PublishDiagnosticsParams) {
		_ = s.conn.Notify(ctx, "textDocument/publishDiagnostics", p) // a client that is gone is told by done
	})
	<-done
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, d := range s.designs {
		d.rest()
	}
	return s.code
}

// gate holds messages back until the server knows its connection.
type gate struct {
	*Server
	ready chan struct{}
}

// Handle takes one message.
func (g gate) Handle(ctx context.Context, conn *jsonrpc2.Conn, r *jsonrpc2.Request) {
	<-g.ready
	g.Server.Handle(ctx, conn, r)
}

func newServer(o Options) *Server {
	if o.Log == nil {
		o.Log = io.Discard
	}
	return &Server{
		options: o, pause: o.Pause, pages: o.Pages,
		out: newOutbox(), cache: newCache(), log: log.New(o.Log, "wheelwork editor: ", 0),
		slots: make(chan struct{}, max(1, runtime.GOMAXPROCS(0)-1)),
		code:  1, encoding: lsp.UTF16,
		docs: map[string]*document{}, foreign: map[lsp.URI]bool{},
		searched: map[string]bool{}, sent: map[string]sent{}, running: map[jsonrpc2.ID]context.CancelFunc{},
	}
}

// answer works out the result of a request, on a view and without the mutex.
type answer func(context.Context) (any, error)

// handler takes a message with the mutex held. A notification has no answer.
type handler func(s *Server, params json.RawMessage) (answer, error)

// takes makes a handler of a function with parameters of its own.
func takes[P any](f func(*Server, *P) (answer, error)) handler {
	return func(s *Server, raw json.RawMessage) (answer, error) {
		p := new(P)
		if isNull(raw) {
			return nil, invalid("parameters are missing")
		}
		if err := json.Unmarshal(raw, p); err != nil {
			return nil, invalid("%v", err)
		}
		return f(s, p)
	}
}

// ready is an answer that is known already.
func ready(result any) answer {
	return func(context.Context) (any, error) { return result, nil }
}

func invalid(message string, args ...any) error {
	return &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: fmt.Sprintf(message, args...)}
}

func failed(message string, args ...any) error {
	return &jsonrpc2.Error{Code: lsp.RequestFailed, Message: fmt.Sprintf(message, args...)}
}

// Handle takes one message; the next one waits until it returns.
func (s *Server) Handle(ctx context.Context, conn *jsonrpc2.Conn, r *jsonrpc2.Request) {
	var params json.RawMessage
	if r.Params != nil {
		params = *r.Params
	}
	work, err := s.take(r, params)
	if r.Notif {
		if err != nil {
			s.log.Printf("%s: %v", r.Method, err)
		}
		if r.Method == "exit" {
			conn.Close()
		}
		return
	}
	if err != nil {
		s.reply(ctx, r.ID, nil, err)
		return
	}
	ctx, cancel := context.WithCancel(ctx)
	s.mu.Lock()
	s.running[r.ID] = cancel
	s.mu.Unlock()
	go func() {
		defer cancel()
		result, err := s.work(ctx, r.Method, work)
		s.mu.Lock()
		delete(s.running, r.ID)
		s.mu.Unlock()
		s.reply(ctx, r.ID, result, err)
	}()
}

func (s *Server) take(r *jsonrpc2.Request, params json.RawMessage) (work answer, err error) {
	defer s.caught(r.Method, &err)
	s.mu.Lock()
	defer s.mu.Unlock()
	h := handlers[r.Method]
	switch {
	case h != nil && s.phase == begun && r.Method != "initialize" && r.Method != "exit":
		return nil, &jsonrpc2.Error{Code: lsp.ServerNotInitialized, Message: "the first request is initialize"}
	case s.phase == shut && r.Method != "exit":
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidRequest, Message: "the server is shut down"}
	case h == nil && r.Notif:
		return nil, nil // as the protocol has it for $/ and what is newer
	case h == nil:
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeMethodNotFound, Message: fmt.Sprintf("there is no method %q here", r.Method)}
	}
	work, err = h(s, params)
	if work == nil && err == nil {
		work = ready(nil)
	}
	return work, err
}

func (s *Server) work(ctx context.Context, method string, work answer) (result any, err error) {
	defer s.caught(method, &err)
	if ctx.Err() == nil {
		result, err = work(ctx)
	}
	if ctx.Err() != nil {
		return nil, &jsonrpc2.Error{Code: lsp.RequestCancelled, Message: "cancelled"}
	}
	return result, err
}

func (s *Server) reply(ctx context.Context, id jsonrpc2.ID, result any, err error) {
	if err == nil {
		err = s.conn.Reply(context.WithoutCancel(ctx), id, result)
		if err == nil || err == jsonrpc2.ErrClosed {
			return
		}
		s.log.Print(err)
		return
	}
	e, ok := err.(*jsonrpc2.Error)
	if !ok {
		e = &jsonrpc2.Error{Code: lsp.RequestFailed, Message: err.Error()}
	}
	_ = s.conn.ReplyWithError(context.WithoutCancel(ctx), id, e) // fails only where the client is gone
}

// caught turns a panic into an error, so that an editor does not lose its
// server over one request.
func (s *Server) caught(what string, err *error) {
	if s.options.strict {
		return
	}
	if r := recover(); r != nil {
		s.log.Printf("%s: %v\n%s", what, r, debug.Stack())
		*err = &jsonrpc2.Error{Code: jsonrpc2.CodeInternalError, Message: fmt.Sprintf("%s failed inside the server: %v", what, r)}
	}
}
