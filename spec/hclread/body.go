package hclread

import (
	"fmt"
	"strings"

	"wheelwork/spec/text"
)

// item is what stands in a body. Items lie in the order of the text, those of
// a block behind it.
type item struct {
	at    text.Span // all of it
	key   text.Span // the name of an attribute, the kind of a block
	label text.Span // of a block
	inner int32     // where the value or the body begins, behind the = or {
	next  int32     // index of the first item that does not lie within it
	form  form
	bad   bool // its fault is told, or in cuts
	apart bool // of an outermost one: it is read item by item
}

// form is what an item reads as.
type form uint8

const (
	neither form = iota
	attribute
	blockItem
)

// fault tells what is wrong with an item, of several faults the first.
func (r *reader) fault(i int, at text.Span, message, hint string) {
	if !r.items[i].bad {
		r.problem(at, message, hint)
	}
	r.bad(i)
}

// bad keeps an item, as it is, from hclsyntax.
func (r *reader) bad(i int) {
	r.astray = true
	r.items[i].bad = true
	r.items[r.top].apart = true
}

// newItem adds an item that begins here.
func (r *reader) newItem(kind form) int {
	if r.depth == 0 {
		r.top = len(r.items)
	}
	r.items = append(r.items, item{form: kind, at: span(r.pos, r.pos), inner: int32(r.pos)})
	return len(r.items) - 1
}

// body goes over the items of a block up to its }, or of the file, where the
// index of the block is -1, up to its end. It reports whether the end was found.
func (r *reader) body(block int) bool {
	within := r.depth > 0
	for first := true; ; first = false {
		if !r.gap() && !(first && (r.peek(0) == '}' || !within)) {
			r.split()
		}
		switch c := r.peek(0); {
		case c == 0:
			return !within
		case c == '}' && within:
			if r.src[r.pos-1] == '\n' {
				r.astray = false
			}
			r.pos++
			return true
		case within && r.strict && r.atHeader():
			return false
		case startsWord(r.src, r.pos):
			r.item(block)
		default:
			r.noItem(r.newItem(neither))
		}
		r.items[len(r.items)-1].next = int32(len(r.items))
	}
}

// split sets what begins here on a line of its own.
func (r *reader) split() {
	if c := r.src[r.pos-1]; c == ' ' || c == '\t' {
		r.splits = append(r.splits, int32(r.pos-1))
	} else if r.top >= 0 {
		r.items[r.top].apart = true
	}
}

// item goes past an attribute or a block.
func (r *reader) item(block int) {
	i := r.newItem(attribute)
	r.load.words += 4
	name := r.word()
	key := span(int(r.items[i].at.Start), r.pos)
	r.items[i].key, r.items[i].at = key, key
	r.blanks()
	c := r.peek(0)
	switch {
	case r.has("=="), c == ':':
		r.fault(i, span(r.pos, r.pos+1), "an attribute is written name = value", "")
		r.pos++
		if c == '=' {
			r.pos++
		}
	case c == '=' && r.depth == 0 && r.braceAfter(r.pos+1):
		r.fault(i, span(r.pos, r.pos+1), "a block is written without =", "")
		r.pos++
		r.blanks()
		r.header(i, block)
		return
	case c == '=':
		r.pos++
	case c == '{' || c == '"' || startsWord(r.src, r.pos),
		digit(c) && r.braceAfter(runEnd(r.src, r.pos)),
		r.lineEnd(r.pos) && r.braceOnNextLine():
		r.header(i, block)
		return
	case c == '[' || c == '-' || digit(c):
		r.fault(i, key, "= is missing between "+short(name)+" and its value", "")
	case r.itemEnd(r.pos):
		r.items[i].form = neither
		r.fault(i, key, short(name)+" has no value", "write "+short(name)+" = ... for an attribute, "+short(name)+" { ... } for a block")
		return
	default:
		r.items[i].form = neither
		r.noItem(i)
		return
	}
	if r.depth == 0 {
		if !r.astray {
			r.problem(key, short(name)+" stands outside a block",
				"an attribute belongs to a block, a named value to given { ... }")
		}
		r.items[i].bad = true
	}
	r.value(i)
	r.astray = r.astray && r.items[i].bad
}

// itemEnd reports whether an item may end at the offset.
func (r *reader) itemEnd(pos int) bool {
	return r.lineEnd(pos) || strings.IndexByte("},;#", r.src[pos]) >= 0 || strings.HasPrefix(r.src[pos:], "//")
}

// braceAfter reports whether a { follows on the line of the offset.
func (r *reader) braceAfter(pos int) bool {
	return strings.HasPrefix(strings.TrimLeft(r.src[pos:min(len(r.src), pos+256)], " \t"), "{")
}

func (r *reader) braceOnNextLine() bool {
	return strings.HasPrefix(strings.TrimLeft(r.src[r.pos:min(len(r.src), r.pos+256)], " \t\r\n"), "{")
}

// noItem tells what stands where an item should and goes past it. The remains
// of a value that went wrong are passed in silence.
func (r *reader) noItem(i int) {
	at, what := r.sign(r.pos)
	r.items[r.top].apart = true
	switch {
	case what == "}":
		if !r.astray {
			r.problem(at, "} closes nothing", "")
		}
		r.astray = false
		r.pos++
		return
	case r.astray && strings.Contains("\"[](){},;=.0123456789", what[:1]):
		r.items[i].bad = true
	case what == "," || what == ";":
		r.fault(i, at, betweenAttributes(what), onlyBlanks)
		r.pos++
		return
	case what == `"`:
		start := r.pos
		r.skipString()
		r.fault(i, span(start, r.pos), "the name of an attribute stands without quotes", "")
	case what == "[" && r.depth == 0 && i == 0 && startsWord(strings.TrimLeft(r.src[r.pos:min(len(r.src), r.pos+8)], "["), 0):
		r.fault(i, at, "this is TOML, not HCL", "it belongs in a file whose name ends in .toml")
		r.pos = len(r.src)
		return
	default:
		r.fault(i, at, fmt.Sprintf("an attribute (name = value) or a block (name { ... }) is needed here, not %s", what), "")
	}
	r.items[i].inner = int32(r.pos)
	r.value(i)
}

const onlyBlanks = "only blanks or line ends stand between them"

func betweenAttributes(sign string) string {
	if sign == "," {
		return "a comma between attributes"
	}
	return "a semicolon between attributes"
}
