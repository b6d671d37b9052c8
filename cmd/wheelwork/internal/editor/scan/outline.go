package scan

import (
	"bytes"

	"wheelwork/spec/tomlread"
)

// Part is a piece of a name, with its place.
type Part struct {
	Text       string
	Start, End int32 // quotes included
}

// Block is a block of the text.
type Block struct {
	Kind, Label Part // a label without text has no place either
	Within      *Block
	Start, End  int32
	Entries     []Entry
}

// Entry is an attribute of a block.
type Entry struct {
	Key        Part
	Start, End int32 // of its value; the same where it has none
}

// Where is what is being written at a place.
type Where uint8

// The places.
const (
	AtTop     Where = iota // between blocks: the beginning of one
	AtKind                 // in the header of a table, before its label
	AtLabel                // the label of a block
	AtKey                  // in a block: the name of an attribute, or of a block within
	AtValue                // the value of an attribute
	AtComment              // a comment
	AtNothing              // where nothing can be offered
)

// Context is what there is at a place.
type Context struct {
	Where Where
	// Block is the block around the place; at a header its own.
	Block *Block
	// Key is the attribute whose value it is.
	Key Part
	// Start and End are what is being written: a word, or what stands between
	// the quotes of a string; both are the place itself where nothing is yet.
	Start, End int32
	// InString is whether that is within quotes.
	InString bool
	Quote    byte // the first of them
	// InList is whether the place is within the brackets of a list.
	InList bool
	// Array is whether a header is written with two brackets.
	Array bool
	// LineStart is whether nothing but blanks comes before that on its line.
	LineStart bool
}

// Outline is the blocks of a text.
type Outline struct {
	Blocks []*Block // in the order of the text; a block within comes after its own
	// Labels are further places that name a block: keys of TOML with its label
	// in them, by kind and label.
	Labels []Label
	// Given are the places at which named values are read.
	Given []Part
}

// Label is a place that names a block beside its header.
type Label struct {
	Kind string
	Part
}

// Read makes the outline of a text. form tells how the blocks of a kind are
// written.
func Read(src []byte, toml bool, form func(kind string) tomlread.Form) *Outline {
	o, _ := At(src, toml, form, -1)
	return o
}

// At is the context of a place, with the outline of the whole.
func At(src []byte, toml bool, form func(kind string) tomlread.Form, offset int32) (*Outline, Context) {
	w := &walker{
		scanner: tokens(src, toml), form: form, offset: offset, out: &Outline{},
		context: Context{Start: offset, End: offset}, seen: offset < 0,
		blocks: map[blockKey]*Block{}, labels: map[int32]bool{},
	}
	if toml {
		w.toml()
	} else {
		w.hcl()
	}
	if offset >= 0 {
		before := src[:w.context.Start]
		before = before[bytes.LastIndexByte(before, '\n')+1:]
		w.context.LineStart = len(trimmed(before)) == 0
	}
	return w.out, w.context
}

// walker goes over the tokens.
type walker struct {
	*scanner
	form    func(string) tomlread.Form
	out     *Outline
	i       int // the token at hand
	offset  int32
	seen    bool // the offset is passed and its context known
	context Context

	state
	block *Block

	table  []Part  // of TOML: the path of the last header
	frames []frame // that are open
	blocks map[blockKey]*Block
	labels map[int32]bool
}

// state is what a value that is being written belongs to.
type state struct {
	value bool
	key   Part
	full  []Part // of TOML: the path of the key from the root
	entry slot
	depth int  // of brackets
	ended bool // what is written may be all of it
}

// slot is the place of an entry in its block.
type slot struct {
	block *Block
	index int
}

func (w *walker) part(t Token) Part { return Part{w.scanner.text(t), t.Start, t.End} }

// next is the kind of the token after the one at hand, comments left out, and
// the token.
func (w *walker) next(n int) Token {
	for i := w.i + 1; i < len(w.list); i++ {
		if w.list[i].Kind == Comment {
			continue
		}
		if n--; n == 0 {
			return w.list[i]
		}
	}
	return Token{Kind: Newline, Start: int32(len(w.src)), End: int32(len(w.src))}
}

// reach notes the context if the offset lies before or in the token: then what
// is being written is the token itself.
func (w *walker) reach(t Token, where Where) {
	if w.seen {
		return
	}
	inside := false
	switch t.Kind {
	case Word:
		inside = t.Start <= w.offset && w.offset <= t.End
	case String:
		inside = t.Start < w.offset && (w.offset < t.End || !t.Closed && w.offset == t.End)
	case Comment:
		inside = t.Start < w.offset && (w.offset < t.End || !t.Closed && w.offset == t.End)
	}
	if !inside && w.offset > t.Start {
		return
	}
	w.note(where)
	switch c := &w.context; {
	case !inside:
	case t.Kind == Comment:
		c.Where = AtComment
		c.Start, c.End = t.Start, t.End
	case t.Kind == String:
		c.Start, c.End = t.Inner()
		c.InString, c.Quote = true, w.src[t.Start]
		if w.offset < c.Start || w.offset > c.End { // within three quotes
			c.Where, c.Start, c.End = AtNothing, w.offset, w.offset
		}
	default:
		c.Start, c.End = t.Start, t.End
	}
}

// note takes the state down as the context.
func (w *walker) note(where Where) {
	w.seen = true
	c := &w.context
	if where == AtKey && w.offset > 0 && len(trimmed(w.src[w.offset-1:w.offset])) > 0 && w.value {
		where = AtNothing // right behind a value
	}
	c.Where, c.Block = where, w.block
	if where == AtValue {
		c.Key, c.InList = w.key, w.depth > 0
	}
}

func trimmed(b []byte) []byte {
	for len(b) > 0 && (b[0] == ' ' || b[0] == '\t') {
		b = b[1:]
	}
	return b
}

// assign begins the value of an attribute.
func (w *walker) assign(key Part) {
	w.state = state{key: key, value: true}
	if w.block != nil {
		w.block.Entries = append(w.block.Entries, Entry{Key: key, Start: key.End, End: key.End})
		w.entry = slot{w.block, len(w.block.Entries) - 1}
	}
}

// extend takes a token into the value.
func (w *walker) extend(t Token) {
	w.ended = t.Kind == Word || t.Kind == String || w.is(t, ']') || w.is(t, ')')
	if w.entry.block == nil {
		return
	}
	e := &w.entry.block.Entries[w.entry.index]
	if e.Start == e.Key.End {
		e.Start = t.Start
	}
	e.End = t.End
	w.entry.block.End = max(w.entry.block.End, t.End)
}

// done ends the value.
func (w *walker) done() { w.state = state{} }
