package lsp

import "encoding/json"

// TextDocument names a document.
type TextDocument struct {
	URI URI `json:"uri"`
}

// VersionedDocument names a document in one of its versions; the version of
// one that is not open is null.
type VersionedDocument struct {
	URI     URI    `json:"uri"`
	Version *int32 `json:"version"`
}

// DidOpenParams brings a document that is opened.
type DidOpenParams struct {
	TextDocument struct {
		URI        URI    `json:"uri"`
		LanguageID string `json:"languageId"`
		Version    int32  `json:"version"`
		Text       string `json:"text"`
	} `json:"textDocument"`
}

// DidChangeParams brings changes, each to the text that the one before left.
type DidChangeParams struct {
	TextDocument struct {
		URI     URI   `json:"uri"`
		Version int32 `json:"version"`
	} `json:"textDocument"`
	Changes []Change `json:"contentChanges"`
}

// Change is new text for a range, or without one for all.
type Change struct {
	Range *Range `json:"range"`
	Text  string `json:"text"`
}

// DocumentParams is of notifications about one document.
type DocumentParams struct {
	TextDocument TextDocument `json:"textDocument"`
}

// DidChangeWatchedFilesParams tells files that changed on disk.
type DidChangeWatchedFilesParams struct {
	Changes []struct {
		URI  URI `json:"uri"`
		Type int `json:"type"`
	} `json:"changes"`
}

// DidChangeFoldersParams tells folders that were opened and closed.
type DidChangeFoldersParams struct {
	Event struct {
		Added   []WorkspaceFolder `json:"added"`
		Removed []WorkspaceFolder `json:"removed"`
	} `json:"event"`
}

// DidChangeConfigurationParams brings settings.
type DidChangeConfigurationParams struct {
	Settings json.RawMessage `json:"settings"`
}

// The severities of diagnostics.
const (
	SeverityError       = 1
	SeverityWarning     = 2
	SeverityInformation = 3
)

// Diagnostic is a finding or a problem in a document.
type Diagnostic struct {
	Range           Range            `json:"range"`
	Severity        int              `json:"severity"`
	Code            string           `json:"code,omitempty"`
	CodeDescription *CodeDescription `json:"codeDescription,omitempty"`
	Source          string           `json:"source"`
	Message         string           `json:"message"`
	Related         []Related        `json:"relatedInformation,omitempty"`
}

// CodeDescription links a page about the code.
type CodeDescription struct {
	Href URI `json:"href"`
}

// Related is a further place of a diagnostic.
type Related struct {
	Location Location `json:"location"`
	Message  string   `json:"message"`
}

// PublishDiagnosticsParams are all diagnostics of a document.
type PublishDiagnosticsParams struct {
	URI         URI          `json:"uri"`
	Version     *int32       `json:"version,omitempty"`
	Diagnostics []Diagnostic `json:"diagnostics"`
}
