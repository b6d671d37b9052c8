package tomlread

import (
	"fmt"

	"github.com/pelletier/go-toml/v2/unstable"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// how a table came to be decides who may add to it (TOML 1.0.0, "Table",
// "Inline Table" and "Array of Tables").
type how uint8

const (
	implied how = iota // by a longer header, [a] by [a.b]
	headed             // by its own header
	dotted             // by a key with dots
	inline             // by braces
	element            // one of an array of tables
)

// role is what a table stands for in the tree.
type role uint8

const (
	rootRole  role = iota // the file
	kindRole              // all blocks of a kind, or the only one
	blockRole             // a block
)

type table struct {
	parent *table
	name   string
	at     text.Span // the key that mentioned it last
	how    how
	role   role
	form   Form  // of a kind
	told   bool  // a problem of the kind's form was told
	joined bool  // its span may grow with what is added below it
	opened int32 // the header that went through it last
	depth  int32
	width  int32 // bytes of its name, with those of the tables around it
	// block is nil for the root and for a kind that only holds blocks.
	block *syntax.Block
	names
}

// entry is the name of a table within a table, or of a value in one that has
// no block to hold it.
type entry struct {
	name  string
	at    text.Span // where it was made
	table *table    // nil if nothing may be added to it
	array bool      // of tables, of which table is the last
	next  int32
}

// names are the names within a table: the entries, a list in the store, and
// the attributes of its block; and an index of them once they are many.
type names struct {
	first, count int32
	index        map[string]int32 // of entries from 1, of attributes from -1
}

const shortList = 12

// find gives the entry of a name, made up if it is an attribute's, and its
// number if it is not. ok is false if there is none.
func (r *reader) find(t *table, name string) (e entry, number int32, ok bool) {
	if t.index != nil {
		i, ok := t.index[name]
		switch {
		case !ok:
			return entry{}, 0, false
		case i < 0:
			return entry{name: name, at: t.block.Attrs[-1-i].Key}, 0, true
		}
		return r.store.entries[i-1], i, true
	}
	for i := t.first; i != 0; i = r.store.entries[i-1].next {
		if r.store.entries[i-1].name == name {
			return r.store.entries[i-1], i, true
		}
	}
	if t.block != nil {
		for i := range t.block.Attrs {
			if t.block.Attrs[i].Name == name {
				return entry{name: name, at: t.block.Attrs[i].Key}, 0, true
			}
		}
	}
	return entry{}, 0, false
}

// add makes an entry.
func (r *reader) add(t *table, e entry) {
	e.next = t.first
	r.store.entries = append(r.store.entries, e)
	t.first = int32(len(r.store.entries))
	r.note(t, e.name, t.first)
}

// addAttr makes an attribute.
func (r *reader) addAttr(t *table, a syntax.Attr) {
	r.store.attr(t.block, a)
	r.note(t, a.Name, -int32(len(t.block.Attrs)))
}

func (r *reader) note(t *table, name string, number int32) {
	t.count++
	switch {
	case t.index != nil:
		t.index[name] = number
	case t.count > shortList:
		t.index = make(map[string]int32, 4*shortList)
		for i := t.first; i != 0; i = r.store.entries[i-1].next {
			t.index[r.store.entries[i-1].name] = i
		}
		if t.block != nil {
			for i := range t.block.Attrs {
				t.index[t.block.Attrs[i].Name] = -1 - int32(i)
			}
		}
	}
}

// name is one part of a key with its place.
func (r *reader) name(n *unstable.Node) (string, text.Span) {
	at := r.span(n.Raw)
	if len(n.Data) == at.Len() {
		return r.src[at.Start:at.End], at
	}
	return r.text(n.Data, at.Start+1, at.End-1), at
}

// text is data as a string: the part of the text it was read from if that is
// the same, as it is where escapes, which are always longer, are not used.
func (r *reader) text(data []byte, start, end int32) string {
	if len(data) == int(end-start) {
		return r.src[start:end]
	}
	return string(data)
}

// header opens the table that a header names.
func (r *reader) header(n *unstable.Node, whole text.Span) {
	r.section++
	t := &r.root
	for key := n.Child(); key != nil && t != nil; key = key.Next() {
		name, at := r.name(key)
		switch {
		case key.Next() != nil:
			t = r.through(t, name, at, whole)
		case n.Kind == unstable.ArrayTable:
			t = r.openElement(t, name, at, whole)
		default:
			t = r.open(t, name, at, whole)
		}
	}
	if t == nil {
		t = r.lost()
	}
	r.here = t
	r.extend(t, whole.End)
}

// through goes on to a table on the way of a header.
func (r *reader) through(t *table, name string, at, whole text.Span) *table {
	e, _, ok := r.find(t, name)
	if !ok {
		return r.newTable(t, name, at, whole, implied)
	}
	c := e.table
	if c == nil {
		r.twice(e, at, t.title(name)+" cannot be added to here")
		return nil
	}
	c.at = at
	r.enter(c)
	return c
}

// open makes the table that [t.name] opens.
func (r *reader) open(t *table, name string, at, whole text.Span) *table {
	e, _, ok := r.find(t, name)
	if !ok {
		return r.newTable(t, name, at, whole, headed)
	}
	c := e.table
	if c == nil || c.how != implied {
		r.twice(e, at, t.title(name)+" is given twice")
		return nil
	}
	c.at, c.how, c.joined, c.opened = at, headed, true, r.section
	if c.role == kindRole {
		r.settle(c, whole)
	}
	return c
}

// openElement makes the table that [[t.name]] opens.
func (r *reader) openElement(t *table, name string, at, whole text.Span) *table {
	switch e, _, ok := r.find(t, name); {
	case ok && !e.array:
		r.twice(e, at, t.title(name)+" is given twice, and not each time as an array of tables")
		return nil
	case ok && e.table == nil:
		r.twice(e, at, t.title(name)+" cannot be added to here")
		return nil
	}
	return r.newTable(t, name, at, whole, element)
}

// enter notes that a header goes through a table. Its span goes on growing
// only if the last header went through it too: what stands between does not
// belong to it.
func (r *reader) enter(t *table) {
	t.joined = t.opened == r.section-1
	t.opened = r.section
}

// descend goes on to a table on the way of a key with dots. It may be one that
// keys with dots made, which can only have been those of the same header: no
// other header leads there.
func (r *reader) descend(t *table, name string, at, whole text.Span) *table {
	e, _, ok := r.find(t, name)
	if !ok {
		span := at
		if t.role == kindRole && t.block == nil && whole.Covers(t.at) {
			span.Start = t.at.Start // a block starts with its kind
		}
		return r.newTable(t, name, at, span, dotted)
	}
	c := e.table
	if c == nil || c.how != implied && c.how != dotted {
		r.twice(e, at, t.title(name)+" cannot be added to by a key with dots here")
		return nil
	}
	c.at, c.how, c.joined = at, dotted, true
	return c
}

// extend makes the spans of a table's block and those around it reach to end.
func (r *reader) extend(t *table, end int32) {
	for a := t; a != nil && (a == t || a.joined); a = a.parent {
		if a.block != nil {
			a.block.At.End = max(a.block.At.End, end)
		}
	}
}

// twice reports a name that is defined a second time.
func (r *reader) twice(e entry, at text.Span, message string) {
	r.problem(at, message, "", text.Related{Place: r.place(e.at), Message: "first here"})
}

// title names what a name in a table stands for.
func (t *table) title(name string) string {
	if t.role == kindRole && t.form == Labelled {
		return t.name + " " + short(name)
	}
	return short(name)
}

// lost is a table that takes what belongs nowhere.
func (r *reader) lost() *table {
	return &table{role: blockRole, block: new(syntax.Block)}
}

// newTable makes a table below t and the block it stands for, whose span is
// to start as given. It returns nil if that is too deep.
func (r *reader) newTable(t *table, name string, at, span text.Span, how how) *table {
	if t.depth == MaxDepth {
		r.problem(at, tooDeep, "")
		return nil
	}
	width := t.width + int32(len(name))
	if width > MaxName {
		r.problem(at, fmt.Sprintf("a name of %d bytes, where %d are allowed", width, MaxName), "")
		return nil
	}
	c := r.store.table()
	*c = table{parent: t, name: name, at: at, how: how, depth: t.depth + 1, width: width, joined: true, opened: r.section}
	if how == element {
		if _, i, ok := r.find(t, name); ok {
			r.store.entries[i-1].table = c
		} else {
			r.add(t, entry{name: name, at: at, table: c, array: true})
		}
	} else {
		r.add(t, entry{name: name, at: at, table: c})
	}
	r.represent(c, span)
	return c
}
