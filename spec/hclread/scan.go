package hclread

import (
	"fmt"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// reader goes over the text once from its start to its end.
type reader struct {
	file   *text.File
	source *Source
	src    string // the bytes; where they are no text, blanks
	pos    int

	depth     int  // blocks and brackets that are open
	brackets  int  // of these, the ( and [ of the value being read
	operators int  // in the value being read
	resynced  bool // a value failed but its end is found

	// strict is set once a block was found to have no end: from then on a
	// block that begins at the margin ends all that are open.
	strict bool
	// astray is set once something was told, until an item is sound again or a
	// block ends at the margin: what looks like the remains of the fault is
	// not told.
	astray bool
	// quiet is the end of the line on which something was told last.
	quiet int32
	// lookahead is what searches for a heredoc's end may still cost.
	lookahead int

	problems []text.Problem
	unread   []text.Span // lines with bytes that are no text: told already
	comments []text.Span
	attrs    pool[syntax.Attr]
	values   pool[syntax.Value]
}

func (r *reader) span(start, end int) text.Span {
	return text.Span{Start: int32(start), End: int32(end)}
}

// problem tells a fault of syntax: of several on a line, the first.
func (r *reader) problem(at text.Span, message, hint string) {
	r.astray = true
	if at.Start < r.quiet {
		return
	}
	r.quiet = int32(r.lineEndFrom(int(at.Start)) + 1)
	r.tellAt(at, message, hint)
}

// tellAt tells what is wrong for itself, whatever else is.
func (r *reader) tellAt(at text.Span, message, hint string) {
	r.tell(text.Problem{Place: text.Place{File: r.file, Span: at}, Message: message, Hint: hint})
}

func (r *reader) tell(p text.Problem) {
	if len(r.problems) >= MaxProblems {
		return
	}
	i := sort.Search(len(r.unread), func(i int) bool { return r.unread[i].End > p.Start })
	if i < len(r.unread) && r.unread[i].Start <= p.Start {
		return
	}
	r.problems = append(r.problems, p)
}

// peek is the byte at n from here, 0 past the end. No 0 is in the text.
func (r *reader) peek(n int) byte {
	if r.pos+n < len(r.src) {
		return r.src[r.pos+n]
	}
	return 0
}

func (r *reader) has(prefix string) bool { return strings.HasPrefix(r.src[r.pos:], prefix) }

func (r *reader) ended() bool { return r.pos >= len(r.src) }

// lineEnd reports whether a line ends here.
func (r *reader) lineEnd() bool {
	c := r.peek(0)
	return c == '\n' || c == 0 || c == '\r' && r.peek(1) == '\n'
}

// blanks skips what separates words within a line, and within brackets the
// ends of lines too.
func (r *reader) blanks() {
	if r.brackets > 0 {
		r.gap()
		return
	}
	for {
		switch c := r.peek(0); {
		case c == ' ' || c == '\t':
			r.pos++
		case c == '/' && r.peek(1) == '*':
			r.comment()
		default:
			return
		}
	}
}

// gap skips all that may stand between items: blanks, line ends, comments.
func (r *reader) gap() {
	for r.pos < len(r.src) {
		switch c := r.src[r.pos]; {
		case c == ' ' || c == '\t' || c == '\n' || c == '\r' && r.peek(1) == '\n':
			r.pos++
		case c == '#' || c == '/' && (r.peek(1) == '/' || r.peek(1) == '*'):
			r.comment()
		default:
			return
		}
	}
}

// comment reads the comment that begins here, without the end of its line.
func (r *reader) comment() {
	start := r.pos
	if r.peek(1) == '*' && r.peek(0) == '/' {
		if n := strings.Index(r.src[r.pos+2:], "*/"); n >= 0 {
			r.pos += n + 4
		} else {
			r.problem(r.span(start, start+2), "the comment is not closed", "it ends with */")
			r.pos = len(r.src)
		}
	} else {
		r.pos = r.lineEndFrom(r.pos)
	}
	r.comments = append(r.comments, r.span(start, r.pos))
}

// lineEndFrom is where the line of the offset ends, before its \r\n or \n.
func (r *reader) lineEndFrom(at int) int {
	n := strings.IndexByte(r.src[at:], '\n')
	if n < 0 {
		return len(r.src)
	}
	if n > 0 && r.src[at+n-1] == '\r' {
		n--
	}
	return at + n
}

// word reads the identifier that begins here, "" if none does.
func (r *reader) word() string {
	end := wordEnd(r.src, r.pos)
	w := r.src[r.pos:end]
	r.pos = end
	return w
}

// wordEnd is where the identifier at the offset ends, the offset if there is
// none. Identifiers are Unicode's (UAX 31), with - and _.
func wordEnd(s string, at int) int {
	if at >= len(s) || !startsWord(s, at) {
		return at
	}
	i := at
	for i < len(s) {
		c := s[i]
		if wordByte[c] {
			i++
			continue
		}
		if c < utf8.RuneSelf {
			break
		}
		u, size := utf8.DecodeRuneInString(s[i:])
		if !wordRune(u) {
			break
		}
		i += size
	}
	return i
}

// startsWord reports whether an identifier begins at the offset.
func startsWord(s string, at int) bool {
	if at >= len(s) {
		return false
	}
	if c := s[at]; c < utf8.RuneSelf {
		return c == '_' || 'a' <= c|0x20 && c|0x20 <= 'z'
	}
	u, _ := utf8.DecodeRuneInString(s[at:])
	return wordStart(u)
}

// wordByte marks the ASCII bytes of identifiers.
var wordByte = func() (set [256]bool) {
	for c := range byte(128) {
		set[c] = c == '_' || c == '-' || '0' <= c && c <= '9' || 'a' <= c|0x20 && c|0x20 <= 'z'
	}
	return set
}()

func wordStart(u rune) bool {
	return (unicode.IsLetter(u) || unicode.In(u, unicode.Nl, unicode.Other_ID_Start)) &&
		!unicode.In(u, unicode.Pattern_Syntax, unicode.Pattern_White_Space)
}

func wordRune(u rune) bool {
	return wordStart(u) || unicode.In(u, unicode.Mn, unicode.Mc, unicode.Nd, unicode.Pc, unicode.Other_ID_Continue) &&
		!unicode.In(u, unicode.Pattern_Syntax, unicode.Pattern_White_Space)
}

func digit(c byte) bool { return '0' <= c && c <= '9' }

// sign is the character here, for messages.
func (r *reader) sign() (at text.Span, name string) {
	if r.ended() {
		return r.span(r.pos, r.pos), "the end of the file"
	}
	if r.lineEnd() {
		return r.span(r.pos, r.pos), "the end of the line"
	}
	if end := wordEnd(r.src, r.pos); end > r.pos {
		return r.span(r.pos, end), short(r.src[r.pos:end])
	}
	u, size := utf8.DecodeRuneInString(r.src[r.pos:])
	at = r.span(r.pos, r.pos+size)
	if !unicode.IsGraphic(u) || unicode.IsSpace(u) {
		return at, fmt.Sprintf("the character U+%04X", u)
	}
	return at, string(u)
}

// short keeps text that is shown in messages to a length people read.
func short(s string) string {
	n := 0
	for i := range s {
		if n++; n > 40 {
			return s[:i] + "…"
		}
	}
	return s
}

// pool hands out slices of what is piled up, from few large arrays.
type pool[T any] struct {
	pile []T
	free []T
}

// take is the pile from the mark up, which is cleared.
func (p *pool[T]) take(mark int) []T {
	n := len(p.pile) - mark
	if n == 0 {
		return nil
	}
	if len(p.free) < n {
		p.free = make([]T, max(n, 128))
	}
	out := p.free[:n:n]
	p.free = p.free[n:]
	copy(out, p.pile[mark:])
	p.pile = p.pile[:mark]
	return out
}
