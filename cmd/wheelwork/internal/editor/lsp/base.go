// Package lsp holds the messages of the Language Server Protocol 3.17 that the
// editor server speaks, by their names there. Only what it uses is here.
package lsp

// URI names a document, as the client wrote it.
type URI string

// Position is a place between two characters: lines from 0, characters in the
// units of the encoding that was agreed.
type Position struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

// Range is from Start up to End.
type Range struct {
	Start Position `json:"start"`
	End   Position `json:"end"`
}

// Before reports whether p comes before q.
func (p Position) Before(q Position) bool {
	return p.Line < q.Line || p.Line == q.Line && p.Character < q.Character
}

// Location is a range in a document.
type Location struct {
	URI   URI   `json:"uri"`
	Range Range `json:"range"`
}

// The encodings of positions.
const (
	UTF8  = "utf-8"
	UTF16 = "utf-16"
)

// The error codes beside those of JSON-RPC.
const (
	ServerNotInitialized = -32002
	RequestCancelled     = -32800
	ContentModified      = -32801
	RequestFailed        = -32803
)

// Markup is text with its kind.
type Markup struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

// The kinds of markup.
const (
	Plain    = "plaintext"
	Markdown = "markdown"
)

// CancelParams names a request by its number or string.
type CancelParams struct {
	ID any `json:"id"`
}
