package rules

import (
	"bytes"
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/text"
)

// Insert is the edit that gives a block one attribute more, on a line of its
// own below a neighbour and set out like it. ok is false where the neighbour
// has no line to itself, so that a line more would not be read.
func Insert(neighbour spec.At, key, value string) (edit Edit, ok bool) {
	if !neighbour.Set() {
		return Edit{}, false
	}
	content := neighbour.File.Bytes
	from := int32(bytes.LastIndexByte(content[:neighbour.Key.Start], '\n') + 1)
	to := int32(len(content))
	if n := bytes.IndexByte(content[neighbour.Val.End:], '\n'); n >= 0 {
		to = neighbour.Val.End + int32(n)
	}
	indent := string(content[from:neighbour.Key.Start])
	if strings.TrimSpace(indent) != "" {
		if strings.HasSuffix(neighbour.File.Name, ".toml") { // an inline table
			at := text.Span{Start: neighbour.Val.End, End: neighbour.Val.End}
			return Edit{Place: text.Place{File: neighbour.File, Span: at}, Text: ", " + key + " = " + value}, true
		}
		return Edit{}, false
	}
	ending := "\n"
	if to > 0 && content[to-1] == '\r' {
		to--
		ending = "\r\n"
	}
	// Equal signs stand in a column where the neighbour's does.
	equal := int32(bytes.IndexByte(content[neighbour.Key.End:neighbour.Val.Start], '='))
	width := int(neighbour.Key.End + equal - neighbour.Key.Start - 1)
	line := indent + key + strings.Repeat(" ", max(0, width-len(key))) + " = " + value
	return Edit{Place: text.Place{File: neighbour.File, Span: text.Span{Start: to, End: to}}, Text: ending + line}, true
}

// Assign is the edit that gives an attribute a value: another one where it has
// one, a line below the neighbour where it has none.
func Assign(at, neighbour spec.At, key, value string) (edit Edit, ok bool) {
	if at.Set() {
		return Replace(at, value)
	}
	return Insert(neighbour, key, value)
}
