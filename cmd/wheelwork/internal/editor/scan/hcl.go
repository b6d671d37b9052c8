package scan

import "wheelwork/spec/tomlread"

// hcl walks over text in the HCL notation.
func (w *walker) hcl() {
	var head []Part // the words of an item, until it is known what it is
	finish := func(at int32) {
		w.done()
		head = nil
		if w.block != nil {
			w.block.End = at
			w.block = w.block.Within
		}
	}
	for w.i = 0; w.i < len(w.list); w.i++ {
		t := w.list[w.i]
		if (t.Kind == Word || t.Kind == String) && w.begins(t, head) {
			head = nil
			if w.value {
				w.done()
			}
			for w.block != nil && w.margin(t) {
				finish(t.Start)
			}
		}
		w.reach(t, w.place(head))
		switch {
		case t.Kind == Comment:
		case t.Kind == Newline:
			if w.value && w.depth == 0 {
				w.done()
			}
			if !w.value && !w.is(w.next(1), '{') {
				head = nil
			}
		case w.is(t, '{') && !w.value:
			b := &Block{Within: w.block, Start: t.Start, End: int32(len(w.src))}
			if len(head) > 0 {
				b.Kind, b.Start = head[0], head[0].Start
			}
			if len(head) > 1 {
				b.Label = head[1]
			}
			head = nil
			w.out.Blocks = append(w.out.Blocks, b)
			w.block = b
		case w.is(t, '}'):
			finish(t.End)
		case w.value:
			w.extend(t)
			w.brackets(t)
			w.given(t)
		case w.is(t, '='):
			if len(head) > 0 {
				w.assign(head[len(head)-1])
			}
			head = nil
		case t.Kind == Word || t.Kind == String:
			head = append(head, w.part(t))
		}
	}
	if !w.seen {
		w.note(w.place(head))
	}
	for w.block != nil {
		finish(int32(len(w.src)))
	}
}

// begins reports whether an item begins with the token although another one is
// not finished: a name with its = in a value, or at the margin a block.
func (w *walker) begins(t Token, head []Part) bool {
	if t.Kind == Word && w.value && (w.is(w.next(1), '=') && !w.is(w.next(2), '=') || w.ended && w.depth == 0) {
		return true
	}
	return w.margin(t) && (w.value || w.block != nil || len(head) > 0)
}

// margin reports whether a block of a known kind begins at the token, at the
// beginning of a line.
func (w *walker) margin(t Token) bool {
	if t.Kind != Word || t.Start > 0 && w.src[t.Start-1] != '\n' || w.form(string(w.src[t.Start:t.End])) == tomlread.Unknown {
		return false
	}
	n := w.next(1)
	return n.Kind == String || w.is(n, '{')
}

// place is what is written next.
func (w *walker) place(head []Part) Where {
	switch {
	case w.value && w.ended && w.depth == 0 && w.block != nil:
		return AtKey
	case w.value:
		return AtValue
	case len(head) > 0 && w.block == nil:
		return AtLabel
	case len(head) > 0:
		return AtNothing
	case w.block == nil:
		return AtTop
	}
	return AtKey
}

// brackets counts those of a value.
func (w *walker) brackets(t Token) {
	switch {
	case w.is(t, '[') || w.is(t, '('):
		w.depth++
	case (w.is(t, ']') || w.is(t, ')')) && w.depth > 0:
		w.depth--
	}
}

// given notes a named value that is read at the token.
func (w *walker) given(t Token) {
	if t.Kind != Word || string(w.src[t.Start:t.End]) != "given" || !w.is(w.next(1), '.') {
		return
	}
	if name := w.next(2); name.Kind == Word {
		w.out.Given = append(w.out.Given, w.part(name))
	}
}
