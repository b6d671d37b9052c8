package hclread

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"wheelwork/spec/text"
)

// reader goes over the text from its start to its end and finds its items,
// which hclsyntax then reads.
type reader struct {
	file *text.File
	src  string // the bytes; where they are no text, blanks
	code []byte // the same, for hclsyntax

	items  []item
	splits []int32     // blanks that become line ends for hclsyntax
	cuts   map[int]cut // by the index of the item
	top    int         // the last item outside all blocks, -1 before the first

	pos   int
	depth int      // blocks that are open
	open  brackets // in the value that it goes over
	load  load
	// strict is set once a block was found to have no end: from then on a
	// block that begins at the margin ends all that are open.
	strict bool
	// astray is set once something was told, until an item is sound again or a
	// block ends at the margin: what looks like the remains of the fault is
	// not told.
	astray bool
	// quiet is the end of the line on which a fault was told last.
	quiet int
	// lookahead is what searches for a heredoc's end may still cost.
	lookahead int

	problems []notice
	unread   []text.Span // lines with bytes that are no text: told already
	comments []text.Span
	sound    map[string]*block // the blocks without a problem by their text
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

// blanks skips what separates words within a line.
func (r *reader) blanks() {
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

// gap skips all that may stand between items: blanks, line ends, comments. It
// reports whether there was a line end, as HCL counts them: outside comments.
func (r *reader) gap() (line bool) {
	for {
		switch c := r.peek(0); {
		case c == '\n':
			line = true
			r.pos++
		case c == ' ' || c == '\t' || c == '\r':
			r.pos++
		case r.commentHere():
			r.comment()
		default:
			return line
		}
	}
}

func (r *reader) commentHere() bool {
	c := r.peek(0)
	return c == '#' || c == '/' && (r.peek(1) == '/' || r.peek(1) == '*')
}

// comment reads the comment that begins here, without the end of its line.
func (r *reader) comment() {
	start := r.pos
	if r.peek(0) == '/' && r.peek(1) == '*' {
		if n := strings.Index(r.src[r.pos+2:], "*/"); n >= 0 {
			r.pos += n + 4
		} else {
			r.problem(span(start, start+2), "the comment is not closed", "it ends with */")
			r.pos = len(r.src)
		}
	} else {
		r.pos = r.lineEndFrom(r.pos)
	}
	r.comments = append(r.comments, span(start, r.pos))
}

// gapEnd is where the blanks, line ends and comments at the offset end, of
// which the comments are known to be closed.
func gapEnd(s string, at int) int {
	for at < len(s) {
		rest := s[at:]
		switch {
		case strings.IndexByte(" \t\r\n", s[at]) >= 0:
			at++
		case s[at] == '#', strings.HasPrefix(rest, "//"):
			at += max(strings.IndexByte(rest, '\n'), 1)
		case strings.HasPrefix(rest, "/*"):
			at += 4 + max(strings.Index(rest[2:], "*/"), 0)
		default:
			return at
		}
	}
	return len(s)
}

// word reads the identifier that begins here, "" if none does.
func (r *reader) word() string {
	start := r.pos
	r.pos = wordEnd(r.src, start)
	return r.src[start:r.pos]
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

// runEnd is where the run of letters and digits at the offset ends.
func runEnd(s string, at int) int {
	for at < len(s) && wordByte[s[at]] {
		at++
	}
	return at
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
