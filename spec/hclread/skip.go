package hclread

import "strings"

// skip goes past what is left of a value or an item that could not be read: to
// the end of its line, or of the line on which its brackets are closed. It
// stops short of a } that closes the block around it, of a line that begins
// the next item, and of a block that begins at the margin.
func (r *reader) skip() {
	round, curly := r.brackets, 0
	for !r.ended() {
		switch c := r.peek(0); c {
		case '\n':
			if round == 0 && curly == 0 {
				return
			}
			r.pos++
			if r.atHeader() || curly == 0 && r.itemBelow() {
				return
			}
			continue
		case '"':
			r.skipString()
			continue
		case '(', '[':
			round++
		case ')', ']':
			round = max(0, round-1)
		case '{':
			curly++
		case '}':
			if curly == 0 {
				return
			}
			curly--
		default:
			if r.skipUnread() {
				continue
			}
		}
		r.pos++
	}
}

// itemBelow reports whether the line that begins here begins with an item.
func (r *reader) itemBelow() bool {
	at := r.pos
	for r.peek(0) == ' ' || r.peek(0) == '\t' {
		r.pos++
	}
	if r.peek(0) != '}' && !r.ended() && r.itemHere() {
		return true
	}
	r.pos = at
	return false
}

// skipBlock goes past a block from its {, which was read.
func (r *reader) skipBlock() {
	for curly := 1; !r.ended(); {
		switch c := r.peek(0); c {
		case '\n':
			r.pos++
			if r.strict && r.atHeader() {
				return
			}
			continue
		case '"':
			r.skipString()
			continue
		case '{':
			curly++
		case '}':
			if curly--; curly == 0 {
				r.pos++
				return
			}
		default:
			if r.skipUnread() {
				continue
			}
		}
		r.pos++
	}
}

// skipUnread goes past a comment or a heredoc in what is skipped.
func (r *reader) skipUnread() bool {
	switch {
	case r.peek(0) == '#' || r.has("//") || r.has("/*"):
		r.comment()
		return true
	case r.has("<<"):
		return r.skipHeredoc()
	}
	return false
}

// skipHeredoc goes past a heredoc, if one begins here and has an end.
func (r *reader) skipHeredoc() bool {
	i := r.pos + 2
	if i < len(r.src) && r.src[i] == '-' {
		i++
	}
	end := wordEnd(r.src, i)
	marker := r.src[i:end]
	if marker == "" || !strings.HasPrefix(strings.TrimPrefix(r.src[end:], "\r"), "\n") {
		return false
	}
	line := r.lineEndFrom(end)
	for at := line; at < len(r.src); {
		at += strings.IndexByte(r.src[at:], '\n') + 1
		next := r.lineEndFrom(at)
		if r.lookahead -= next - at + 1; r.lookahead < 0 {
			break
		}
		if strings.TrimSpace(r.src[at:next]) == marker {
			r.pos = next
			return true
		}
		at = next
	}
	r.pos = line
	return true
}

// skipString goes past a string that may hold templates with strings in them.
// It ends with its line at the latest.
func (r *reader) skipString() {
	var modes [2 * MaxDepth]byte // what is open: " a string, $ a template, { a brace
	n := 0
	for !r.lineEnd() {
		c := r.peek(0)
		inString := n > 0 && modes[n-1] == '"'
		var push byte
		switch {
		case inString && c == '"', !inString && c == '}':
			n--
		case inString && c == '\\' && r.peek(1) != '\n' && r.peek(1) != '\r' && r.peek(1) != 0:
			r.pos++
		case inString && (r.has("$${") || r.has("%%{")):
			r.pos += 2
		case inString && (r.has("${") || r.has("%{")):
			r.pos++
			push = '$'
		case !inString && (c == '"' || c == '{'):
			push = c
		}
		r.pos++
		if push != 0 {
			if n == len(modes) {
				r.pos = r.lineEndFrom(r.pos)
				return
			}
			modes[n] = push
			n++
		}
		if n == 0 {
			return
		}
	}
}
