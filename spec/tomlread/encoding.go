package tomlread

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"wheelwork/spec/text"
)

const byteOrderMark = "\xef\xbb\xbf"

// maxBadBytes bounds the bad bytes told of one file.
const maxBadBytes = 8

// encoding makes the bytes into text, and reports whether that is worth
// reading. Bytes that are no text are told, blanked out, and silence what
// else would be told of their lines.
func (r *reader) encoding() bool {
	b := r.file.Bytes
	switch {
	case len(b) > MaxBytes:
		r.problem(text.Span{}, fmt.Sprintf("the file is larger than %d MB", MaxBytes>>20), "")
		return false
	case len(b) >= 2 && (b[0] == 0xff && b[1] == 0xfe || b[0] == 0xfe && b[1] == 0xff):
		r.problem(text.Span{End: 2}, "the file is UTF-16, not UTF-8", "save it as UTF-8")
		return false
	}
	r.bytes = b
	if !utf8.Valid(b) || bytes.IndexByte(b, 0) >= 0 {
		r.bytes = r.clean(bytes.Clone(b))
	}
	r.src = string(r.bytes)
	return true
}

// clean blanks out what is no text.
func (r *reader) clean(b []byte) []byte {
	for i := 0; i < len(b); {
		u, size := utf8.DecodeRune(b[i:])
		if u != 0 && (u != utf8.RuneError || size > 1) {
			i += size
			continue
		}
		if len(r.encodings) < maxBadBytes {
			message := "a NUL byte"
			if b[i] != 0 {
				message = fmt.Sprintf("the byte 0x%02X is no UTF-8", b[i])
			}
			at := text.Span{Start: int32(i), End: int32(i + 1)}
			r.encodings = append(r.encodings, text.Problem{Place: r.place(at), Message: message})
		}
		b[i] = ' '
		if last := len(r.unread) - 1; last < 0 || int(r.unread[last].End) <= i {
			line := text.Span{Start: int32(bytes.LastIndexByte(b[:i], '\n') + 1), End: int32(len(b))}
			if n := bytes.IndexByte(b[i:], '\n'); n >= 0 {
				line.End = int32(i + n + 1)
			}
			r.unread = append(r.unread, line)
		}
		i++
	}
	return b
}

// empty tells of a file in which nothing stands.
func (r *reader) empty() {
	if strings.Trim(strings.TrimPrefix(r.src, byteOrderMark), " \t\r\n") == "" {
		r.problem(text.Span{}, "the file is empty", `a spec holds blocks, such as [design] with its title = "..."`)
	}
}
