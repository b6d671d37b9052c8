package scan

import "wheelwork/spec/tomlread"

// frame is an inline table or a list that is open, with what it is the value of.
type frame struct {
	table bool
	path  []Part // of its keys
	block *Block
	state // around it
}

// toml walks over text in the TOML notation.
func (w *walker) toml() {
	var path []Part // of the key at hand, as far as it is written here
	fresh := true   // at the beginning of a line
	for w.i = 0; w.i < len(w.list); w.i++ {
		t := w.list[w.i]
		if fresh && (w.value || len(w.frames) > 0) && w.anew(t) {
			w.frames, w.state, path = nil, state{}, nil
			w.block = w.at(w.table)
		}
		if fresh && !w.value && w.is(t, '[') {
			w.reach(t, w.keyPlace())
			w.header()
			path, fresh = nil, true
			continue
		}
		w.reach(t, w.keyPlace())
		if t.Kind != Comment {
			fresh = t.Kind == Newline
		}
		switch {
		case t.Kind == Comment:
		case t.Kind == Newline:
			if len(w.frames) == 0 {
				w.state, path = state{}, nil
				w.block = w.at(w.table)
			}
		case w.value && w.is(t, '{'):
			w.extend(t)
			f := frame{table: true, path: w.full, block: w.block, state: w.state}
			w.frames = append(w.frames, f)
			w.state = state{}
			if len(f.path) == 1 && w.form(f.path[0].Text) == tomlread.Repeated {
				w.repeated(&Block{Kind: f.path[0], Start: t.Start, End: t.End})
			}
			w.block = w.at(f.path)
			path = nil
		case w.value && w.is(t, '['):
			w.extend(t)
			w.frames = append(w.frames, frame{path: w.full, block: w.block, state: w.state})
			w.depth++
		case len(w.frames) > 0 && (w.is(t, '}') || w.is(t, ']')):
			f := w.frames[len(w.frames)-1]
			w.frames = w.frames[:len(w.frames)-1]
			w.state, w.block, path = f.state, f.block, nil
			w.extend(t)
		case w.is(t, ',') && len(w.frames) > 0 && w.frames[len(w.frames)-1].table:
			f := w.frames[len(w.frames)-1]
			w.state, path = state{}, nil
			w.block = w.at(f.path)
		case w.value:
			w.extend(t)
		case w.is(t, '='):
			w.keyed(path)
			path = nil
		case w.is(t, '.') && len(path) > 0:
			w.block = w.at(w.join(path))
		case t.Kind == Word || t.Kind == String:
			path = append(path, w.part(t))
		}
	}
	if !w.seen {
		w.note(w.keyPlace())
	}
}

// join is the path of a key from the root.
func (w *walker) join(path []Part) []Part {
	base := w.table
	if n := len(w.frames); n > 0 {
		base = w.frames[n-1].path
	}
	return append(append([]Part(nil), base...), path...)
}

// keyed begins the value of a key.
func (w *walker) keyed(path []Part) {
	if len(path) == 0 {
		return
	}
	full := w.join(path)
	w.label(full) // `fixed = { ... }` below [wheel]
	w.block = w.at(full[:len(full)-1])
	w.assign(path[len(path)-1])
	w.full = full
}

// keyPlace is what is written next.
func (w *walker) keyPlace() Where {
	switch {
	case w.value:
		return AtValue
	case w.block != nil:
		return AtKey
	case len(w.table) == 0 && len(w.frames) == 0:
		return AtTop
	}
	return AtNothing
}

// anew reports whether a line that begins with the token cannot belong to the
// list or table that is open.
func (w *walker) anew(t Token) bool {
	switch {
	case w.is(t, '['):
		n := w.next(1)
		if w.is(n, '[') {
			n = w.next(2)
		}
		return n.Kind == Word && w.form(w.text(n)) != tomlread.Unknown
	case t.Kind == Word:
		list := len(w.frames) > 0 && !w.frames[len(w.frames)-1].table
		return w.is(w.next(1), '=') && list
	}
	return false
}

// header reads the header of a table from its [.
func (w *walker) header() {
	open := w.list[w.i]
	w.frames, w.state, w.block, w.table = nil, state{}, nil, nil
	var path []Part
	b := &Block{Start: open.Start, End: open.End}
	array := w.i+1 < len(w.list) && w.is(w.list[w.i+1], '[') && w.list[w.i+1].Start == open.End
	if array {
		w.i++
	}
	where, closed := AtKind, false
	for w.i++; w.i < len(w.list); w.i++ {
		t := w.list[w.i]
		ends := t.Kind == Newline || t.Kind == Comment
		if !w.seen {
			w.block = b
			if closed {
				w.reach(t, AtNothing)
			} else {
				w.reach(t, where)
			}
			w.context.Array = w.seen && array
		}
		if ends {
			break
		}
		b.End = t.End
		switch {
		case w.is(t, ']'):
			closed = true
		case w.is(t, '.') && where == AtKind:
			where = AtLabel
		case w.is(t, '.'):
			where = AtNothing
		case (t.Kind == Word || t.Kind == String) && !closed:
			path = append(path, w.part(t))
			if len(path) == 1 {
				b.Kind = path[0]
			} else if len(path) == 2 {
				b.Label = path[1]
			}
		}
	}
	if !w.seen && !closed && w.i == len(w.list) {
		w.note(where)
		w.context.Array = array
	}
	w.i-- // the end of the line is seen by the others
	w.table = path
	if array && len(path) == 1 && w.form(path[0].Text) == tomlread.Repeated {
		w.repeated(b)
	}
	w.block = w.at(path)
	if w.block != nil {
		w.block.Start, w.block.End = open.Start, b.End
	}
}

// repeated begins one more block of its kind.
func (w *walker) repeated(b *Block) {
	w.out.Blocks = append(w.out.Blocks, b)
	w.blocks[blockKey{kind: b.Kind.Text}] = b
}

// at finds or makes the block that a path of keys leads to; nil where it leads
// to none.
func (w *walker) at(path []Part) *Block {
	if len(path) == 0 {
		return nil
	}
	kind := path[0]
	w.label(path)
	switch form := w.form(kind.Text); {
	case form == tomlread.Repeated && w.blocks[blockKey{kind: kind.Text}] != nil:
		return w.blocks[blockKey{kind: kind.Text}]
	case form == tomlread.Labelled && len(path) == 1:
		return nil
	case form == tomlread.Labelled, form == tomlread.Unknown && len(path) > 1:
		return w.find(kind, path[1], nil)
	case form == tomlread.Grouped && len(path) > 1:
		return w.find(path[1], Part{}, w.find(kind, Part{}, nil))
	}
	return w.find(kind, Part{}, nil)
}

type blockKey struct {
	kind, label string
	within      *Block
}

func (w *walker) find(kind, label Part, within *Block) *Block {
	key := blockKey{kind.Text, label.Text, within}
	b := w.blocks[key]
	if b == nil {
		b = &Block{Kind: kind, Label: label, Within: within, Start: kind.Start, End: kind.End}
		w.blocks[key] = b
		w.out.Blocks = append(w.out.Blocks, b)
	}
	return b
}

// label notes where a path names a block.
func (w *walker) label(path []Part) {
	if len(path) < 2 || w.labels[path[1].Start] {
		return
	}
	if form := w.form(path[0].Text); form == tomlread.Labelled || form == tomlread.Unknown {
		w.labels[path[1].Start] = true
		w.out.Labels = append(w.out.Labels, Label{path[0].Text, path[1]})
	}
}
