package tomlread

import (
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"wheelwork/spec/exact"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// keyValue takes in `key = value` in a table.
func (r *reader) keyValue(t *table, n *unstable.Node) {
	whole := r.span(n.Raw)
	value := n.Value()
	key := value.Next()
	for ; key.Next() != nil; key = key.Next() {
		name, at := r.name(key)
		if t = r.descend(t, name, at, whole); t == nil {
			return
		}
	}
	name, at := r.name(key)
	if e, _, ok := r.find(t, name); ok {
		r.twice(e, at, short(name)+" is given twice")
		return
	}
	r.assign(t, name, at, value, whole)
	r.extend(t, whole.End)
}

// assign gives the value to a name that is new in its table.
func (r *reader) assign(t *table, name string, at text.Span, value *unstable.Node, whole text.Span) {
	switch {
	case value.Kind == unstable.InlineTable:
		r.inlineTable(t, name, at, value, inline)
	case value.Kind == unstable.Array && value.Child() != nil && value.Child().Kind == unstable.InlineTable:
		r.inlineTables(t, name, at, value)
	case value.Kind == unstable.Array && value.Child() == nil && t.role == rootRole && r.form(name) == Repeated:
		r.add(t, entry{name: name, at: at}) // none of them
	default:
		if !r.owner(t, name, at, whole.Start) {
			r.add(t, entry{name: name, at: at})
			return
		}
		v, _ := r.value(value, r.valueStart(at.End), t.depth)
		r.addAttr(t, syntax.Attr{Name: name, Key: at, Value: v})
	}
}

// valueStart is where the value starts whose key ends at an offset.
func (r *reader) valueStart(at int32) int32 {
	for r.src[at] != '=' {
		at++
	}
	return r.skip(at+1, false)
}

// inlineTable takes in `name = {...}`, or one of several in a list.
func (r *reader) inlineTable(t *table, name string, at text.Span, n *unstable.Node, how how) {
	span := r.span(n.Raw)
	c := r.newTable(t, name, at, span, how)
	if c == nil {
		return
	}
	for kv := n.Child(); kv != nil; kv = kv.Next() {
		r.keyValue(c, kv)
	}
	r.extend(c, r.end(n, span.Start))
	_, i, _ := r.find(t, name)
	r.store.entries[i-1].table = nil // nothing that follows may add to it
}

// inlineTables takes in `name = [{...}, {...}]`, which is written out as
// `[[name]]` more often.
func (r *reader) inlineTables(t *table, name string, at text.Span, n *unstable.Node) {
	end := r.valueStart(at.End) + 1
	for e := n.Child(); e != nil; e = e.Next() {
		start := r.skip(end, true)
		end = r.end(e, start)
		if e.Kind == unstable.InlineTable {
			r.inlineTable(t, name, at, e, element)
		} else {
			r.problem(text.Span{Start: start, End: end}, "a value among tables", "")
		}
	}
}

// end is where a value ends that starts at an offset. The parser tells it of
// all but lists and inline tables.
func (r *reader) end(n *unstable.Node, start int32) int32 {
	switch n.Kind {
	case unstable.Array:
		at := start + 1
		for e := n.Child(); e != nil; e = e.Next() {
			at = r.end(e, r.skip(at, true))
		}
		return r.skip(at, true) + 1
	case unstable.InlineTable:
		at := start + 1
		for kv := n.Child(); kv != nil; kv = kv.Next() {
			at = r.span(kv.Raw).End
		}
		return r.skip(at, true) + 1
	}
	return r.span(n.Raw).End
}

// value reads a value that starts at an offset and says where it ends.
func (r *reader) value(n *unstable.Node, start, depth int32) (syntax.Value, int32) {
	v := syntax.Value{At: r.span(n.Raw)}
	switch n.Kind {
	case unstable.Array:
		return r.list(n, start, depth+1)
	case unstable.InlineTable:
		v.At = text.Span{Start: start, End: r.end(n, start)}
		r.problem(v.At, "a table within a list of values", "")
	case unstable.String:
		v.Kind, v.Text = syntax.String, r.str(n, v.At)
	case unstable.Bool:
		v.Kind, v.Bool = syntax.Bool, n.Data[0] == 't'
	case unstable.Integer, unstable.Float:
		r.number(&v, n.Kind == unstable.Integer)
	case unstable.LocalDate, unstable.LocalTime, unstable.LocalDateTime, unstable.DateTime:
		v.At.End = v.At.Start + int32(len(strings.TrimRight(r.src[v.At.Start:v.At.End], " ")))
		v.Kind, v.Text = syntax.String, r.src[v.At.Start:v.At.End]
	}
	return v, v.At.End
}

func (r *reader) list(n *unstable.Node, start, depth int32) (syntax.Value, int32) {
	v := syntax.Value{Kind: syntax.List, At: text.Span{Start: start, End: start + 1}}
	if depth > MaxDepth {
		r.problem(v.At, tooDeep, "")
		v.At.End = r.end(n, start)
		return v, v.At.End
	}
	count := 0
	for e := n.Child(); e != nil; e = e.Next() {
		count++
	}
	v.List = r.store.list(count)
	at := start + 1
	for i, e := 0, n.Child(); e != nil; i, e = i+1, e.Next() {
		v.List[i], at = r.value(e, r.skip(at, true), depth)
	}
	v.At.End = r.skip(at, true) + 1
	return v, v.At.End
}

// str is the text of a string literal.
func (r *reader) str(n *unstable.Node, at text.Span) string {
	start, end := at.Start+1, at.End-1
	if raw := r.src[at.Start:at.End]; len(raw) >= 6 && (raw[:3] == `"""` || raw[:3] == "'''") {
		start, end = at.Start+3, at.End-3
		switch {
		case r.src[start] == '\n':
			start++
		case r.src[start] == '\r':
			start += 2
		}
	}
	return r.text(n.Data, start, end)
}

// number reads the number at v.At exactly.
func (r *reader) number(v *syntax.Value, whole bool) {
	s := r.src[v.At.Start:v.At.End]
	based := len(s) > 2 && s[0] == '0' && (s[1] == 'x' || s[1] == 'o' || s[1] == 'b')
	if c := s[len(s)-1]; !based && (c == 'f' || c == 'n') {
		r.problem(v.At, s+" is not a number a design can hold", "")
		return
	}
	if len(s) < 4*exact.MaxDigits && strings.Contains(s, "_") {
		s = strings.ReplaceAll(s, "_", "")
	}
	if based || whole && len(s) > 18 && len(s) <= exact.MaxDigits {
		base := 10
		if based {
			base = 0
		}
		n, err := strconv.ParseInt(s, base, 64)
		if err != nil {
			r.problem(v.At, short(s)+" is out of range: a whole number has at most 64 bits", "")
			return
		}
		if based {
			v.Kind, v.Number = syntax.Number, exact.Int(n)
			return
		}
	}
	n, err := exact.Parse(s)
	if err != nil {
		r.problem(v.At, err.Error(), "")
		return
	}
	v.Kind, v.Number = syntax.Number, n
}
