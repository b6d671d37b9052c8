package hclread

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

// maxBadBytes bounds the bad bytes told of one file.
const maxBadBytes = 8

// encoding makes the bytes into text, and reports whether that is worth
// reading. A byte order mark is skipped. NUL bytes, lone carriage returns and
// bytes that are no UTF-8 are told, blanked out, and silence what else would
// be told of their lines.
func (r *reader) encoding() bool {
	b := r.file.Bytes
	if bytes.HasPrefix(b, []byte("\xff\xfe")) || bytes.HasPrefix(b, []byte("\xfe\xff")) {
		r.tell(span(0, 2), "the file is UTF-16, not UTF-8", "save it as UTF-8")
		return false
	}
	if bytes.HasPrefix(b, []byte("\ufeff")) {
		r.pos = 3
	}
	r.code = b
	if !utf8.Valid(b) || bytes.IndexByte(b, 0) >= 0 || loneReturn(b) {
		r.code = r.clean(b)
	}
	r.src = string(r.code)
	r.lookahead = 4 * len(b)
	r.items = make([]item, 0, min(bytes.Count(b, []byte("\n")), len(b)/8)+8)
	return true
}

// clean is the bytes with blanks for those that are no text, which it tells.
func (r *reader) clean(b []byte) []byte {
	clean := bytes.Clone(b)
	told := 0
	for i := r.pos; i < len(b); {
		if size := character(b, i); size > 0 {
			i += size
			continue
		}
		if told < maxBadBytes {
			told++
			r.tell(span(i, i+1), faultName(b[i]), "")
		}
		end := len(b)
		if n := bytes.IndexByte(b[i:], '\n'); n >= 0 {
			end = i + n
		}
		from := bytes.LastIndexByte(b[:i], '\n') + 1
		for ; i < end; i++ {
			if size := character(b, i); size == 0 {
				clean[i] = ' '
			} else {
				i += size - 1
			}
		}
		r.unread = append(r.unread, span(from, end+1))
	}
	return clean
}

// character is the length of the character at i, and 0 if it is no text.
func character(b []byte, i int) int {
	u, size := utf8.DecodeRune(b[i:])
	if u == 0 || u == utf8.RuneError && size == 1 || u == '\r' && (i+1 == len(b) || b[i+1] != '\n') {
		return 0
	}
	return size
}

// faultName says what is wrong with the byte.
func faultName(c byte) string {
	switch c {
	case 0:
		return "a NUL byte"
	case '\r':
		return "a carriage return that ends no line"
	}
	return fmt.Sprintf("the byte 0x%02X is no UTF-8", c)
}

func loneReturn(b []byte) bool {
	for {
		i := bytes.IndexByte(b, '\r')
		if i < 0 {
			return false
		}
		if i+1 == len(b) || b[i+1] != '\n' {
			return true
		}
		b = b[i+2:]
	}
}
