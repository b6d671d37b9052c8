package hclread

import (
	"fmt"
	"strings"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// body reads the items of a block up to its }, or of the file up to its end.
// It reports whether the end was found.
func (r *reader) body(b *block) bool {
	within := r.depth > 0
	mark := len(r.attrs.pile)
	defer func() {
		b.Attrs = r.attrs.take(mark)
		for _, w := range b.within {
			b.Blocks = append(b.Blocks, &w.Block)
			b.deep = b.deep || w.deep
		}
		b.deep = b.deep || len(b.open) > 0
	}()
	seen := names{}
	for {
		r.gap()
		c := r.peek(0)
		switch {
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
			r.item(b, &seen)
		default:
			r.noItem(b)
		}
	}
}

// item reads an attribute or a block.
func (r *reader) item(b *block, seen *names) {
	start := r.pos
	name := r.word()
	key := r.span(start, r.pos)
	r.blanks()
	c := r.peek(0)
	switch {
	case r.has("=="), c == ':':
		r.problem(r.span(r.pos, r.pos+1), "an attribute is written name = value", "")
		r.pos++
		if c == '=' {
			r.pos++
		}
	case c == '=' && r.depth == 0 && r.braceAfter("="):
		r.problem(r.span(r.pos, r.pos+1), "a block is written without =", "")
		r.pos++
		r.blanks()
		r.header(b, name, key)
		return
	case c == '=':
		r.pos++
	case c == '{' || c == '"' || startsWord(r.src, r.pos):
		r.header(b, name, key)
		return
	case digit(c) && r.braceAfter(r.src[r.pos:runEnd(r.src, r.pos)]):
		r.header(b, name, key)
		return
	case c == '[' || c == '-' || digit(c):
		r.problem(key, "= is missing between "+short(name)+" and its value", "")
	case r.lineEnd() && r.braceOnNextLine():
		r.header(b, name, key)
		return
	case r.itemEnd():
		r.problem(key, short(name)+" has no value", "write "+short(name)+" = ... for an attribute, "+short(name)+" { ... } for a block")
		return
	default:
		r.noItem(b)
		return
	}
	if r.depth == 0 && !r.astray {
		r.problem(key, short(name)+" stands outside a block",
			"an attribute belongs to a block, a named value to given { ... }")
	}
	v, e := r.attribute()
	if r.depth == 0 {
		return
	}
	r.astray = r.astray && v.Kind == syntax.Invalid && e == nil
	if first, doubled := seen.add(name, key, r.attrs.pile); doubled {
		r.tell(text.Problem{
			Place:   text.Place{File: r.file, Span: key},
			Message: short(name) + " is given twice",
			Related: []text.Related{{Place: text.Place{File: r.file, Span: first}, Message: "first here"}},
		})
		return
	}
	if e != nil {
		b.open = append(b.open, open{index: seen.count - 1, expr: e})
	}
	r.attrs.pile = append(r.attrs.pile, syntax.Attr{Name: name, Key: key, Value: v})
}

// itemEnd reports whether an item may end here.
func (r *reader) itemEnd() bool {
	c := r.peek(0)
	return r.lineEnd() || c == '}' || c == ',' || c == ';' || c == '#' || c == '/' && r.peek(1) == '/'
}

// braceAfter reports whether a { follows the text that stands here.
func (r *reader) braceAfter(s string) bool {
	rest := r.src[r.pos+len(s) : min(len(r.src), r.pos+len(s)+256)]
	return strings.HasPrefix(strings.TrimLeft(rest, " \t"), "{")
}

// runEnd is where the run of letters and digits at the offset ends.
func runEnd(s string, at int) int {
	for at < len(s) && wordByte[s[at]] {
		at++
	}
	return at
}

// noItem tells what stands where an item should and skips it. The remains of
// a value that went wrong are skipped in silence.
func (r *reader) noItem(b *block) {
	at, what := r.sign()
	switch {
	case what == "}":
		if !r.astray {
			r.problem(at, "} closes nothing", "")
		}
		r.astray = false
		r.pos++
		return
	case r.astray && strings.Contains("\"[](){},;=.0123456789", what[:1]):
	case what == "," || what == ";":
		r.problem(at, map[string]string{",": "a comma", ";": "a semicolon"}[what]+" between attributes",
			"only blanks or line ends stand between them")
		r.pos++
		return
	case what == `"`:
		start := r.pos
		r.skipString()
		r.problem(r.span(start, r.pos), "the name of an attribute stands without quotes", "")
	case what == "[" && r.depth == 0 && len(b.within) == 0 && startsWord(strings.TrimLeft(r.src[r.pos:min(len(r.src), r.pos+8)], "["), 0):
		r.problem(at, "this is TOML, not HCL", "it belongs in a file whose name ends in .toml")
		r.pos = len(r.src)
		return
	default:
		r.problem(at, fmt.Sprintf("an attribute (name = value) or a block (name { ... }) is needed here, not %s", what), "")
	}
	r.skip()
}

// names finds doubled attributes: by looking through the few there are, or
// once there are many, in a map.
type names struct {
	count int
	many  map[string]text.Span
}

// add notes a name that comes after those of the last count attributes of the
// pile; if it is among them it says where.
func (n *names) add(name string, key text.Span, pile []syntax.Attr) (first text.Span, doubled bool) {
	if n.many == nil {
		for _, a := range pile[len(pile)-n.count:] {
			if a.Name == name {
				return a.Key, true
			}
		}
		if n.count < 16 {
			n.count++
			return first, false
		}
		n.many = make(map[string]text.Span, 64)
		for _, a := range pile[len(pile)-n.count:] {
			n.many[a.Name] = a.Key
		}
	}
	if first, doubled = n.many[name]; !doubled {
		n.many[name] = key
		n.count++
	}
	return first, doubled
}
