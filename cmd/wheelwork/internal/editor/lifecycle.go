package editor

import (
	"encoding/json"
	"time"

	"github.com/sourcegraph/jsonrpc2"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// settings are what a client may set, in its initialization options or in its
// configuration under "wheelwork".
type settings struct {
	PauseMilliseconds *int    `json:"pauseMilliseconds"`
	RulePages         *string `json:"rulePages"`
}

// longestPause bounds what a client may ask for.
const longestPause = 10 * time.Second

func (s *Server) set(raw json.RawMessage) error {
	if isNull(raw) {
		return nil
	}
	var o settings
	if err := json.Unmarshal(raw, &o); err != nil {
		return err
	}
	if o.PauseMilliseconds != nil {
		ms := min(max(*o.PauseMilliseconds, 0), int(longestPause/time.Millisecond))
		s.pause = time.Duration(ms) * time.Millisecond
	}
	if o.RulePages != nil {
		s.pages = *o.RulePages
	}
	return nil
}

func (s *Server) initialize(p *lsp.InitializeParams) (answer, error) {
	if s.phase != begun {
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidRequest, Message: "initialize comes once"}
	}
	if err := s.set(p.Options); err != nil {
		s.log.Printf("initialization options are not read: %v", err)
	}
	s.phase = initialized
	s.client = p.Capabilities
	s.encoding = lsp.UTF16
	for _, e := range p.Capabilities.General.PositionEncodings {
		if e == lsp.UTF8 || e == lsp.UTF16 {
			s.encoding = lines.Encoding(e)
			break
		}
	}
	folders := p.Folders
	switch {
	case len(folders) > 0:
	case p.RootURI != "":
		folders = []lsp.WorkspaceFolder{{URI: p.RootURI}}
	case p.RootPath != "":
		folders = []lsp.WorkspaceFolder{{URI: uriOf(p.RootPath)}}
	}
	s.open(folders)
	return ready(lsp.InitializeResult{
		Capabilities: s.capabilities(),
		ServerInfo:   lsp.ServerInfo{Name: "wheelwork", Version: s.options.Version},
	}), nil
}

func (s *Server) capabilities() lsp.ServerCapabilities {
	c := lsp.ServerCapabilities{PositionEncoding: string(s.encoding)}
	c.TextDocumentSync.OpenClose = true
	c.TextDocumentSync.Change = lsp.IncrementalSync
	c.TextDocumentSync.Save = true
	c.Definition, c.References, c.Highlight = true, true, true
	c.Completion = &lsp.CompletionOptions{TriggerCharacters: []string{`"`, ".", "[", " "}}
	c.Hover, c.DocumentSymbol, c.InlayHint, c.Formatting = true, true, true, true
	c.CodeAction = &lsp.CodeActionOptions{Kinds: []string{lsp.QuickFix}}
	c.Rename = true
	if s.client.TextDocument.Rename.PrepareSupport {
		c.Rename = lsp.RenameOptions{Prepare: true}
	}
	c.Workspace = &lsp.WorkspaceOptions{}
	c.Workspace.Folders.Supported = true
	c.Workspace.Folders.Notifications = true
	return c
}

// initialized asks to be told of files that change outside the editor.
func (s *Server) initialized(json.RawMessage) (answer, error) {
	if s.client.Workspace.DidChangeWatchedFiles.DynamicRegistration {
		s.later("client/registerCapability", lsp.RegistrationParams{Registrations: []lsp.Registration{{
			ID: "spec-files", Method: "workspace/didChangeWatchedFiles",
			Options: lsp.WatchOptions{Watchers: []lsp.Watcher{{GlobPattern: "**/*.{hcl,toml}"}}},
		}}})
	}
	return nil, nil
}

func (s *Server) shutdown(json.RawMessage) (answer, error) {
	s.phase = shut
	for _, d := range s.designs {
		d.rest()
	}
	return nil, nil
}

func (s *Server) exit(json.RawMessage) (answer, error) {
	if s.phase == shut {
		s.code = 0
	}
	return nil, nil
}

func (s *Server) didChangeConfiguration(p *lsp.DidChangeConfigurationParams) (answer, error) {
	var of struct {
		Wheelwork json.RawMessage `json:"wheelwork"`
	}
	if isNull(p.Settings) {
		return nil, nil
	}
	if err := json.Unmarshal(p.Settings, &of); err != nil {
		return nil, invalid("%v", err)
	}
	return nil, s.set(of.Wheelwork)
}
