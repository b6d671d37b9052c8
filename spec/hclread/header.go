package hclread

import (
	"fmt"
	"strings"

	"wheelwork/spec/text"
)

// header goes over a block from the end of its kind.
func (r *reader) header(i, parent int) {
	kindAt := r.items[i].key
	kind := r.of(kindAt)
	end := int(kindAt.End)
	labels := 0
	for ; r.peek(0) == '"' || startsWord(r.src, r.pos) || digit(r.peek(0)); labels++ {
		start := r.pos
		switch {
		case r.peek(0) == '"':
			r.label(i)
		case digit(r.peek(0)):
			r.pos = runEnd(r.src, start)
			at := span(start, r.pos)
			r.fault(i, at, "a name that begins with a digit stands in quotes", fmt.Sprintf("write %q", short(r.of(at))))
		default:
			r.word()
		}
		end = r.pos
		if at := span(start, end); labels == 0 {
			r.items[i].label = at
		} else if labels == 1 {
			r.fault(i, at, "a second name: "+short(kind)+" has one at most", "")
		}
		r.blanks()
	}
	head := span(int(kindAt.Start), end)
	r.items[i].at = head
	switch {
	case r.peek(0) == '{':
		r.astray = r.astray && int(head.Start) < r.quiet
		r.pos++
	case r.lineEnd(r.pos) && r.braceOnNextLine():
		r.gap()
		r.fault(i, span(r.pos, r.pos+1), "the { of a block stands on the line of its name", "")
		r.pos++
	case r.lineEnd(r.pos) && r.depth == 0 && r.indentedNext():
		r.fault(i, head, "{ is missing after "+short(r.of(head)), "")
	case r.peek(0) == '=' && r.braceAfter(r.pos+1):
		r.fault(i, span(r.pos, r.pos+1), "a block is written without =", "")
		r.pos++
		r.blanks()
		r.pos++
	default:
		r.noBlock(i, labels, head)
		return
	}
	r.items[i].form = blockItem
	switch {
	case r.depth == 0 && kind == "given" && labels > 0:
		r.fault(i, r.items[i].label, "given takes no name", "")
	case r.depth == 1 && r.of(r.items[parent].key) == "given":
		r.fault(i, kindAt, "given holds named values, no blocks", "")
	}
	r.block(i, head)
}

// noBlock tells why a kind with its labels heads no block.
func (r *reader) noBlock(i, labels int, head text.Span) {
	key := r.items[i].key
	if r.depth > 0 && labels == 1 && r.src[r.items[i].label.Start] == '"' && r.itemEnd(r.pos) {
		r.fault(i, key, "= is missing between "+short(r.of(key))+" and its value", "")
		r.items[i].inner = r.items[i].label.Start
		return
	}
	at, sign := r.sign(r.pos)
	if r.itemEnd(r.pos) {
		at = head
	}
	r.fault(i, at, fmt.Sprintf("%s is followed by %s, not by = or {", short(r.of(head)), sign), "")
	r.items[i].form = neither
	r.items[i].inner = int32(r.pos)
	r.value(i)
}

// label goes past a label in quotes. One that is not closed ends before the {
// of its line.
func (r *reader) label(i int) {
	start := r.pos
	if r.quoted(i, "a name") || !r.lineEnd(r.pos) {
		return
	}
	line := strings.TrimRight(r.src[start:r.pos], " \t")
	if strings.HasSuffix(line, "{") {
		r.pos = start + len(line) - 1
	}
}

// indentedNext reports whether the next item stands indented on a line of its own.
func (r *reader) indentedNext() bool {
	rest := strings.TrimLeft(r.src[r.pos:min(len(r.src), r.pos+256)], "\r\n")
	item := strings.TrimLeft(rest, " \t")
	return len(item) < len(rest) && startsWord(item, 0)
}

// block goes over the body of a block from behind its {.
func (r *reader) block(i int, head text.Span) {
	start := int(head.Start)
	r.items[i].inner = int32(r.pos)
	if r.depth >= MaxDepth {
		r.fault(i, span(r.pos-1, r.pos), tooDeep, "")
		r.skipBlock()
		r.items[i].at = span(start, r.pos)
		return
	}
	before := r.load
	r.load.signs++
	inside, problems, comments, items, splits := r.pos, len(r.problems), len(r.comments), len(r.items), len(r.splits)
	r.depth++
	closed := r.body(i)
	if !closed && r.depth == 1 && !r.strict {
		// Brackets do not balance: go over it again, up to where a block begins at the margin.
		r.strict = true
		r.problems, r.comments, r.items, r.splits = r.problems[:problems], r.comments[:comments], r.items[:items], r.splits[:splits]
		r.pos, r.quiet = inside, inside
		closed = r.body(i)
	}
	r.depth--
	if r.load.beyond(before) {
		r.items[r.top].apart = true
	}
	end := r.pos
	if !closed {
		end = start + len(strings.TrimRight(r.src[start:r.pos], " \t\r\n"))
		end = max(end, int(r.items[len(r.items)-1].at.End)) // a string that is not closed ends with its line
		if r.depth == 0 {
			r.tell(head, short(r.of(head))+" is not closed", "a } is missing")
		}
		r.items[i].bad = true
		r.items[r.top].apart = true
	}
	r.items[i].at = span(start, end)
	r.items[i].next = int32(len(r.items))
}

// skipBlock goes past a block from behind its {.
func (r *reader) skipBlock() {
	for curly := 1; !r.ended(); {
		switch c := r.peek(0); {
		case c == '\n':
			r.pos++
			if r.strict && r.atHeader() {
				return
			}
			continue
		case c == '"':
			r.skipString()
			continue
		case r.commentHere():
			r.comment()
			continue
		case c == '{':
			curly++
		case c == '}':
			if curly--; curly == 0 {
				r.pos++
				return
			}
		}
		r.pos++
	}
}

// atHeader reports whether a block's header begins here, at the margin.
func (r *reader) atHeader() bool {
	return (r.pos == 0 || r.src[r.pos-1] == '\n') && headerAt(r.src, r.pos)
}

// headerAt reports whether the line from the offset on reads as a block's header.
func headerAt(s string, at int) bool {
	i := wordEnd(s, at)
	if i == at {
		return false
	}
	rest := s[i:min(len(s), i+256)]
	rest, _, _ = strings.Cut(rest, "\n")
	rest = strings.TrimLeft(rest, " \t")
	if strings.HasPrefix(rest, `"`) {
		_, after, closed := strings.Cut(rest[1:], `"`)
		return closed && strings.HasPrefix(strings.TrimLeft(after, " \t"), "{")
	}
	return strings.HasPrefix(strings.TrimLeft(rest[wordEnd(rest, 0):], " \t"), "{")
}
