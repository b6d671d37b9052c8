package editor

import (
	"strings"

	"github.com/hashicorp/hcl/v2/hclwrite"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/cmd/wheelwork/internal/editor/scan"
	"wheelwork/spec/hclread"
	"wheelwork/spec/text"
)

// format sets a document in HCL out as usual: indents, and equal signs in a
// column. A document in TOML stays as it is, and so does one that is broken.
func format(q *inquiry, _ *lsp.FormattingParams) (any, error) {
	old := q.doc.text
	if !strings.HasSuffix(q.doc.path, ".hcl") {
		return nil, nil
	}
	if _, problems := hclread.Parse(text.NewFile(q.doc.named, old.Bytes)); len(problems) > 0 {
		return nil, nil
	}
	content := hclwrite.Format(old.Bytes)
	if !scan.Same(old.Bytes, content) {
		return nil, failed("setting %s out would change what it says", q.doc.named)
	}
	edits := []lsp.TextEdit{}
	now := lines.New(content)
	if now.Count() != old.Count() {
		whole := q.view.Range(old, 0, int32(len(old.Bytes)))
		return append(edits, lsp.TextEdit{Range: whole, NewText: string(content)}), nil
	}
	for i := range old.Count() {
		from, to := old.Start(i), old.End(i)
		line := string(content[now.Start(i):now.End(i)])
		if string(old.Bytes[from:to]) != line {
			edits = append(edits, lsp.TextEdit{Range: q.view.Range(old, from, to), NewText: line})
		}
	}
	return edits, nil
}
