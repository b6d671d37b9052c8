// Package scan finds its way about in the text of a spec that need not be
// sound: what block a place lies in, what attribute, what is being written
// there. It never fails; where text is broken it goes on with what comes next
// that looks like the beginning of something.
package scan

import (
	"bytes"
	"unicode/utf8"
)

// Kind is what a token is.
type Kind uint8

// The kinds of token.
const (
	Word    Kind = iota // a name, a number, or what else holds together
	String              // in quotes, which it may lack at its end
	Sign                // one sign
	Comment             // up to the end of the line, or of the comment
	Newline
)

// Token is a piece of text.
type Token struct {
	Kind       Kind
	Start, End int32
	// Closed is whether a string or a comment of several lines has its end.
	Closed bool
	// Quote is how many bytes the quotes of a string have on either side.
	Quote int32
}

// Inner is the text between the quotes of a string.
func (t Token) Inner() (start, end int32) {
	end = t.End
	if t.Closed {
		end -= t.Quote
	}
	return t.Start + t.Quote, end
}

// is reports whether the token is that sign.
func (s *scanner) is(t Token, sign byte) bool { return t.Kind == Sign && s.src[t.Start] == sign }

type scanner struct {
	src  []byte
	toml bool
	at   int
	list []Token
}

// tokens takes a text apart.
func tokens(src []byte, toml bool) *scanner {
	s := &scanner{src: src, toml: toml, list: make([]Token, 0, len(src)/5+8)}
	for s.at < len(src) {
		start := s.at
		switch c := src[s.at]; {
		case c == '\n':
			s.at++
			s.add(Newline, start, true)
		case c == ' ' || c == '\t' || c == '\r':
			s.at++
		case c == '#' || !toml && c == '/' && s.peek(1) == '/':
			s.at = s.lineEnd(s.at)
			s.add(Comment, start, false)
		case !toml && c == '/' && s.peek(1) == '*':
			n := bytes.Index(src[s.at+2:], []byte("*/"))
			if s.at = len(src); n >= 0 {
				s.at = start + 2 + n + 2
			}
			s.add(Comment, start, n >= 0)
		case c == '"' || toml && c == '\'':
			s.quoted(c)
		case wordByte(c):
			s.word()
		default:
			s.at++
			s.add(Sign, start, true)
		}
	}
	return s
}

func (s *scanner) add(k Kind, start int, closed bool) {
	s.list = append(s.list, Token{Kind: k, Start: int32(start), End: int32(s.at), Closed: closed})
}

func (s *scanner) peek(n int) byte {
	if s.at+n < len(s.src) {
		return s.src[s.at+n]
	}
	return 0
}

func (s *scanner) lineEnd(at int) int {
	n := bytes.IndexByte(s.src[at:], '\n')
	if n < 0 {
		return len(s.src)
	}
	if n > 0 && s.src[at+n-1] == '\r' {
		n--
	}
	return at + n
}

// quoted takes a string. One of a single line ends with it at the latest.
func (s *scanner) quoted(quote byte) {
	start, width := s.at, 1
	if s.toml && s.peek(1) == quote && s.peek(2) == quote {
		width = 3
	}
	s.at += width
	closed := false
	for s.at < len(s.src) && !closed {
		switch c := s.src[s.at]; {
		case c == '\n' && width == 1:
			goto end
		case c == '\\' && quote == '"' && s.peek(1) != '\n':
			s.at++
		case c == quote && width == 1:
			closed = true
		case c == quote && s.peek(1) == quote && s.peek(2) == quote:
			s.at += 2
			for s.peek(1) == quote { // quotes before the last three are text
				s.at++
			}
			closed = true
		}
		s.at++
	}
end:
	s.at = min(s.at, len(s.src))
	if !closed && width == 1 && s.src[s.at-1] == '\r' {
		s.at--
	}
	s.add(String, start, closed)
	s.list[len(s.list)-1].Quote = int32(width)
}

// word takes a name or a number. A point belongs to numbers alone, as names of
// TOML have parts.
func (s *scanner) word() {
	start := s.at
	number := '0' <= s.src[start] && s.src[start] <= '9'
	for s.at < len(s.src) {
		c := s.src[s.at]
		exponent := (c == '+' || c == '-') && number && s.at > start && s.src[s.at-1]|0x20 == 'e'
		if !wordByte(c) && !exponent && !(number && c == '.' && !s.toml) {
			break
		}
		s.at++
	}
	s.add(Word, start, true)
}

func wordByte(c byte) bool {
	return c == '_' || c == '-' || '0' <= c && c <= '9' || 'a' <= c|0x20 && c|0x20 <= 'z' || c >= utf8.RuneSelf
}

// text is what a token says, without quotes and with the escapes that names
// are written with read.
func (s *scanner) text(t Token) string {
	if t.Kind != String {
		return string(s.src[t.Start:t.End])
	}
	start, end := t.Inner()
	return Unquoted(s.src[start:end], s.src[t.Start] == '"')
}

// Unquoted is what stands between quotes; escapes are \" and \\ alone, which
// is what names need.
func Unquoted(b []byte, escapes bool) string {
	if !escapes || bytes.IndexByte(b, '\\') < 0 {
		return string(b)
	}
	out := make([]byte, 0, len(b))
	for i := 0; i < len(b); i++ {
		if b[i] == '\\' && i+1 < len(b) && (b[i+1] == '"' || b[i+1] == '\\') {
			i++
		}
		out = append(out, b[i])
	}
	return string(out)
}
