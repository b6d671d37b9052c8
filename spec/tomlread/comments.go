package tomlread

import (
	"bytes"

	"github.com/pelletier/go-toml/v2/unstable"

	"wheelwork/spec/text"
)

// Comments gives the place of every comment, from its # to the end of its
// line, in the order of the text. After a syntax error there are none.
func Comments(f *text.File) []text.Span {
	if bytes.IndexByte(f.Bytes, '#') < 0 || len(f.Bytes) > MaxBytes {
		return nil
	}
	start := 0
	if bytes.HasPrefix(f.Bytes, []byte(byteOrderMark)) {
		start = len(byteOrderMark)
	}
	var list []text.Span
	var walk func(n *unstable.Node)
	walk = func(n *unstable.Node) {
		for ; n != nil; n = n.Next() {
			if n.Kind == unstable.Comment {
				at := int32(start) + int32(n.Raw.Offset)
				list = append(list, text.Span{Start: at, End: at + int32(n.Raw.Length)})
			}
			walk(n.Child())
		}
	}
	parser := unstable.Parser{KeepComments: true}
	parser.Reset(f.Bytes[start:])
	for parser.NextExpression() {
		walk(parser.Expression())
	}
	return list
}
