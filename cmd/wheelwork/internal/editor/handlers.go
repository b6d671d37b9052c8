package editor

import (
	"context"
	"encoding/json"

	"github.com/sourcegraph/jsonrpc2"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// handlers are the methods the server knows.
var handlers map[string]handler

func init() {
	handlers = map[string]handler{
		"initialize":  takes((*Server).initialize),
		"initialized": (*Server).initialized,
		"shutdown":    (*Server).shutdown,
		"exit":        (*Server).exit,

		"$/cancelRequest": takes((*Server).cancel),
		"$/setTrace":      (*Server).nothing,

		"textDocument/didOpen":   takes((*Server).didOpen),
		"textDocument/didChange": takes((*Server).didChange),
		"textDocument/didClose":  takes((*Server).didClose),
		"textDocument/didSave":   takes((*Server).didSave),

		"workspace/didChangeWatchedFiles":     takes((*Server).didChangeWatchedFiles),
		"workspace/didChangeWorkspaceFolders": takes((*Server).didChangeFolders),
		"workspace/didChangeConfiguration":    takes((*Server).didChangeConfiguration),

		"textDocument/definition":        about(positioned, definition),
		"textDocument/references":        about(func(p *lsp.ReferenceParams) lsp.URI { return p.TextDocument.URI }, references),
		"textDocument/documentHighlight": about(positioned, highlights),
		"textDocument/prepareRename":     about(positioned, prepareRename),
		"textDocument/documentSymbol":    passing(func(p *lsp.DocumentParams) lsp.URI { return p.TextDocument.URI }, symbols),
		"textDocument/inlayHint":         passing(func(p *lsp.RangeParams) lsp.URI { return p.TextDocument.URI }, hints),
		"textDocument/formatting":        about(func(p *lsp.FormattingParams) lsp.URI { return p.TextDocument.URI }, format),
		"textDocument/completion":        about(func(p *lsp.CompletionParams) lsp.URI { return p.TextDocument.URI }, complete),
		"textDocument/hover":             about(positioned, hover),
		"textDocument/codeAction":        about(func(p *lsp.CodeActionParams) lsp.URI { return p.TextDocument.URI }, actions),
		"textDocument/rename":            about(func(p *lsp.RenameParams) lsp.URI { return p.TextDocument.URI }, rename),
	}
}

func (s *Server) nothing(json.RawMessage) (answer, error) { return nil, nil }

// cancel stops a request that is not answered yet.
func (s *Server) cancel(p *lsp.CancelParams) (answer, error) {
	id := jsonrpc2.ID{}
	switch v := p.ID.(type) {
	case string:
		id = jsonrpc2.ID{Str: v, IsString: true}
	case float64:
		if v < 0 || v > 1<<53 || v != float64(uint64(v)) {
			return nil, invalid("an id is a string or a whole number")
		}
		id.Num = uint64(v)
	default:
		return nil, invalid("an id is a string or a whole number")
	}
	if stop := s.running[id]; stop != nil {
		stop()
	}
	return nil, nil
}

// later sends a request of the server's own without waiting for what comes.
func (s *Server) later(method string, params any) {
	go func() {
		if err := s.conn.Call(context.Background(), method, params, nil); err != nil && err != jsonrpc2.ErrClosed {
			s.log.Printf("%s: %v", method, err)
		}
	}()
}
