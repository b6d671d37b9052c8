package lsp

// PositionParams is a place in a document.
type PositionParams struct {
	TextDocument TextDocument `json:"textDocument"`
	Position     Position     `json:"position"`
}

// ReferenceParams asks for references.
type ReferenceParams struct {
	PositionParams
	Context struct {
		IncludeDeclaration bool `json:"includeDeclaration"`
	} `json:"context"`
}

// Highlight is a place in the document that names the same.
type Highlight struct {
	Range Range `json:"range"`
}

// RenameParams asks for a new name.
type RenameParams struct {
	PositionParams
	NewName string `json:"newName"`
}

// PrepareRename is what is to be renamed.
type PrepareRename struct {
	Range       Range  `json:"range"`
	Placeholder string `json:"placeholder"`
}

// TextEdit is new text for a range.
type TextEdit struct {
	Range   Range  `json:"range"`
	NewText string `json:"newText"`
}

// DocumentEdits are edits of one document in one version.
type DocumentEdits struct {
	TextDocument VersionedDocument `json:"textDocument"`
	Edits        []TextEdit        `json:"edits"`
}

// WorkspaceEdit is edits of several documents, in one of two forms.
type WorkspaceEdit struct {
	DocumentChanges []DocumentEdits    `json:"documentChanges,omitempty"`
	Changes         map[URI][]TextEdit `json:"changes,omitempty"`
}

// RangeParams is a range in a document.
type RangeParams struct {
	TextDocument TextDocument `json:"textDocument"`
	Range        Range        `json:"range"`
}

// CodeActionParams asks what can be done about a range.
type CodeActionParams struct {
	RangeParams
	Context struct {
		Only []string `json:"only"`
	} `json:"context"`
}

// CodeAction is something that can be done.
type CodeAction struct {
	Title       string         `json:"title"`
	Kind        string         `json:"kind"`
	Diagnostics []Diagnostic   `json:"diagnostics,omitempty"`
	Preferred   bool           `json:"isPreferred,omitempty"`
	Edit        *WorkspaceEdit `json:"edit,omitempty"`
}

// QuickFix is the kind of actions that mend a finding.
const QuickFix = "quickfix"

// Hover is what is shown of a range.
type Hover struct {
	Contents Markup `json:"contents"`
	Range    *Range `json:"range,omitempty"`
}

// InlayHint is a text beside a place.
type InlayHint struct {
	Position    Position `json:"position"`
	Label       string   `json:"label"`
	Tooltip     string   `json:"tooltip,omitempty"`
	PaddingLeft bool     `json:"paddingLeft,omitempty"`
}

// DocumentSymbol is a part of a document with what belongs to it.
type DocumentSymbol struct {
	Name      string           `json:"name"`
	Detail    string           `json:"detail,omitempty"`
	Kind      int              `json:"kind"`
	Range     Range            `json:"range"`
	Selection Range            `json:"selectionRange"`
	Children  []DocumentSymbol `json:"children,omitempty"`
}

// SymbolInformation is a part of a document for clients that show no tree.
type SymbolInformation struct {
	Name      string   `json:"name"`
	Kind      int      `json:"kind"`
	Location  Location `json:"location"`
	Container string   `json:"containerName,omitempty"`
}

// The kinds of symbol.
const (
	SymbolNamespace = 3
	SymbolClass     = 5
	SymbolField     = 8
	SymbolInterface = 11
	SymbolFunction  = 12
	SymbolConstant  = 14
	SymbolObject    = 19
	SymbolEvent     = 24
	SymbolOperator  = 25
)

// CompletionParams asks what may be written at a place.
type CompletionParams struct {
	PositionParams
	Context struct {
		TriggerCharacter string `json:"triggerCharacter"`
	} `json:"context"`
}

// CompletionList is what may be written at a place.
type CompletionList struct {
	Incomplete bool             `json:"isIncomplete"`
	Items      []CompletionItem `json:"items"`
}

// CompletionItem is one thing that may be.
type CompletionItem struct {
	Label         string    `json:"label"`
	Kind          int       `json:"kind,omitempty"`
	Detail        string    `json:"detail,omitempty"`
	Documentation *Markup   `json:"documentation,omitempty"`
	SortText      string    `json:"sortText,omitempty"`
	FilterText    string    `json:"filterText,omitempty"`
	Format        int       `json:"insertTextFormat,omitempty"`
	Edit          *TextEdit `json:"textEdit,omitempty"`
}

// The kinds of completion item, and the format of those with places to fill in.
const (
	CompleteField     = 5
	CompleteVariable  = 6
	CompleteClass     = 7
	CompleteUnit      = 11
	CompleteValue     = 12
	CompleteKeyword   = 14
	CompleteFile      = 17
	CompleteReference = 18
	CompleteConstant  = 21

	Snippet = 2
)

// FormattingParams asks for the document set out anew.
type FormattingParams struct {
	TextDocument TextDocument `json:"textDocument"`
}
