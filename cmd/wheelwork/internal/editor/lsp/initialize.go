package lsp

import "encoding/json"

// InitializeParams is what a client says of itself.
type InitializeParams struct {
	RootPath     string             `json:"rootPath"`
	RootURI      URI                `json:"rootUri"`
	Folders      []WorkspaceFolder  `json:"workspaceFolders"`
	Capabilities ClientCapabilities `json:"capabilities"`
	Options      json.RawMessage    `json:"initializationOptions"`
}

// WorkspaceFolder is a folder that is open in the editor.
type WorkspaceFolder struct {
	URI  URI    `json:"uri"`
	Name string `json:"name"`
}

// ClientCapabilities is what of the client's abilities makes a difference.
type ClientCapabilities struct {
	General struct {
		PositionEncodings []string `json:"positionEncodings"`
	} `json:"general"`
	Workspace struct {
		WorkspaceEdit struct {
			DocumentChanges bool `json:"documentChanges"`
		} `json:"workspaceEdit"`
		DidChangeWatchedFiles struct {
			DynamicRegistration bool `json:"dynamicRegistration"`
		} `json:"didChangeWatchedFiles"`
		InlayHint struct {
			RefreshSupport bool `json:"refreshSupport"`
		} `json:"inlayHint"`
	} `json:"workspace"`
	TextDocument struct {
		PublishDiagnostics struct {
			RelatedInformation     bool `json:"relatedInformation"`
			VersionSupport         bool `json:"versionSupport"`
			CodeDescriptionSupport bool `json:"codeDescriptionSupport"`
		} `json:"publishDiagnostics"`
		DocumentSymbol struct {
			Hierarchical bool `json:"hierarchicalDocumentSymbolSupport"`
		} `json:"documentSymbol"`
		Completion struct {
			CompletionItem struct {
				SnippetSupport bool `json:"snippetSupport"`
			} `json:"completionItem"`
		} `json:"completion"`
		Hover struct {
			ContentFormat []string `json:"contentFormat"`
		} `json:"hover"`
		Rename struct {
			PrepareSupport bool `json:"prepareSupport"`
		} `json:"rename"`
	} `json:"textDocument"`
}

// InitializeResult is what the server says of itself.
type InitializeResult struct {
	Capabilities ServerCapabilities `json:"capabilities"`
	ServerInfo   ServerInfo         `json:"serverInfo"`
}

// ServerInfo names the server.
type ServerInfo struct {
	Name    string `json:"name"`
	Version string `json:"version,omitempty"`
}

// ServerCapabilities is what the server can do.
type ServerCapabilities struct {
	PositionEncoding string `json:"positionEncoding"`
	TextDocumentSync struct {
		OpenClose bool `json:"openClose"`
		Change    int  `json:"change"`
		Save      bool `json:"save"`
	} `json:"textDocumentSync"`
	Completion     *CompletionOptions `json:"completionProvider,omitempty"`
	Hover          bool               `json:"hoverProvider,omitempty"`
	Definition     bool               `json:"definitionProvider,omitempty"`
	References     bool               `json:"referencesProvider,omitempty"`
	Highlight      bool               `json:"documentHighlightProvider,omitempty"`
	DocumentSymbol bool               `json:"documentSymbolProvider,omitempty"`
	CodeAction     *CodeActionOptions `json:"codeActionProvider,omitempty"`
	Formatting     bool               `json:"documentFormattingProvider,omitempty"`
	Rename         any                `json:"renameProvider,omitempty"` // true or RenameOptions
	InlayHint      bool               `json:"inlayHintProvider,omitempty"`
	Workspace      *WorkspaceOptions  `json:"workspace,omitempty"`
}

// IncrementalSync is the kind of synchronisation that sends changed parts.
const IncrementalSync = 2

// CompletionOptions says when completion is asked for.
type CompletionOptions struct {
	TriggerCharacters []string `json:"triggerCharacters"`
}

// CodeActionOptions names the kinds of code action.
type CodeActionOptions struct {
	Kinds []string `json:"codeActionKinds"`
}

// RenameOptions says that a rename can be prepared.
type RenameOptions struct {
	Prepare bool `json:"prepareProvider"`
}

// WorkspaceOptions says that several folders may be open.
type WorkspaceOptions struct {
	Folders struct {
		Supported     bool `json:"supported"`
		Notifications bool `json:"changeNotifications"`
	} `json:"workspaceFolders"`
}

// Registration asks the client for notifications of a kind.
type Registration struct {
	ID      string `json:"id"`
	Method  string `json:"method"`
	Options any    `json:"registerOptions,omitempty"`
}

// RegistrationParams are several of them.
type RegistrationParams struct {
	Registrations []Registration `json:"registrations"`
}

// WatchOptions names the files to watch.
type WatchOptions struct {
	Watchers []Watcher `json:"watchers"`
}

// Watcher is a pattern of file names.
type Watcher struct {
	GlobPattern string `json:"globPattern"`
}
