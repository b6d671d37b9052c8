package hclread

import (
	"fmt"
	"strings"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// header reads a block from the end of its kind.
func (r *reader) header(into *block, kind string, kindAt text.Span) {
	b := &block{Block: syntax.Block{Kind: kind, KindAt: kindAt}}
	end := int(kindAt.End)
	labels := 0
	for ; r.peek(0) == '"' || startsWord(r.src, r.pos) || digit(r.peek(0)); labels++ {
		start := r.pos
		var label string
		switch {
		case r.peek(0) == '"':
			label = r.label()
		case digit(r.peek(0)):
			r.pos = runEnd(r.src, start)
			label = r.src[start:r.pos]
			r.problem(r.span(start, r.pos), "a name that begins with a digit stands in quotes", fmt.Sprintf("write %q", short(label)))
		default:
			label = r.word()
		}
		end = r.pos
		at := r.span(start, end)
		if labels == 0 {
			b.Label, b.LabelAt = label, at
		} else if labels == 1 {
			r.problem(at, "a second name: "+short(kind)+" has one at most", "")
		}
		r.blanks()
	}
	head := r.span(int(kindAt.Start), end)
	switch {
	case r.peek(0) == '{':
		r.astray = r.astray && head.Start < r.quiet
		r.pos++
	case r.lineEnd() && r.braceOnNextLine():
		r.gap()
		r.problem(r.span(r.pos, r.pos+1), "the { of a block stands on the line of its name", "")
		r.pos++
	case r.lineEnd() && r.depth == 0 && r.indentedNext():
		r.problem(head, "{ is missing after "+short(r.src[head.Start:head.End]), "")
	case r.peek(0) == '=' && r.braceAfter("="):
		r.problem(r.span(r.pos, r.pos+1), "a block is written without =", "")
		r.pos++
		r.blanks()
		r.pos++
	case r.depth > 0 && labels == 1 && r.src[b.LabelAt.Start] == '"' && r.itemEnd():
		r.problem(kindAt, "= is missing between "+short(kind)+" and its value", "")
		return
	default:
		at, sign := r.sign()
		if r.itemEnd() {
			at = head
		}
		r.problem(at, fmt.Sprintf("%s is followed by %s, not by = or {", short(r.src[head.Start:head.End]), sign), "")
		r.skip()
		return
	}
	switch {
	case r.depth == 0 && kind == "given" && labels > 0:
		r.problem(b.LabelAt, "given takes no name", "")
	case r.depth == 1 && into.Kind == "given":
		r.problem(kindAt, "given holds named values, no blocks", "")
	}
	r.block(b, head)
	r.keep(into, b)
}

// label reads a label in quotes. One that is not closed ends before the { of
// its line.
func (r *reader) label() string {
	start := r.pos
	s, ok := r.quoted("a name")
	if ok || !r.lineEnd() {
		return s
	}
	line := strings.TrimRight(r.src[start:r.pos], " \t")
	if strings.HasSuffix(line, "{") {
		r.pos = start + len(line) - 1
	}
	return ""
}

// indentedNext reports whether the next item stands indented on a line of its own.
func (r *reader) indentedNext() bool {
	rest := strings.TrimLeft(r.src[r.pos:min(len(r.src), r.pos+256)], "\r\n")
	item := strings.TrimLeft(rest, " \t")
	return len(item) < len(rest) && startsWord(item, 0)
}

// block reads the body of b after its {.
func (r *reader) block(b *block, head text.Span) {
	start := int(head.Start)
	if r.depth >= MaxDepth {
		r.tooDeep(r.span(r.pos-1, r.pos))
		r.skipBlock()
		b.At = r.span(start, r.pos)
		return
	}
	inside, problems, comments := r.pos, len(r.problems), len(r.comments)
	r.depth++
	closed := r.body(b)
	if !closed && r.depth == 1 && !r.strict {
		// Brackets do not balance: read it again, up to where a block begins at the margin.
		r.strict = true
		r.problems, r.comments = r.problems[:problems], r.comments[:comments]
		r.pos, r.quiet = inside, int32(inside)
		*b = block{Block: syntax.Block{Kind: b.Kind, KindAt: b.KindAt, Label: b.Label, LabelAt: b.LabelAt}}
		closed = r.body(b)
	}
	r.depth--
	end := r.pos
	if !closed {
		end = start + len(strings.TrimRight(r.src[start:r.pos], " \t\r\n"))
		if r.depth == 0 {
			r.tellAt(head, short(r.src[head.Start:head.End])+" is not closed", "a } is missing")
		}
	}
	b.At = r.span(start, end)
}

// keep puts a block where it belongs: named values are no part of the tree.
func (r *reader) keep(into, b *block) {
	if r.depth == 0 && b.Kind == "design" {
		r.noteUses(b)
	}
	if r.depth > 0 || b.Kind != "given" {
		into.within = append(into.within, b)
		return
	}
	r.source.given = append(r.source.given, b)
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

func (r *reader) braceOnNextLine() bool {
	rest := strings.TrimLeft(r.src[r.pos:min(len(r.src), r.pos+256)], " \t\r\n")
	return strings.HasPrefix(rest, "{")
}
