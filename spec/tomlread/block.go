package tomlread

import (
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// represent gives a new table the block it stands for.
func (r *reader) represent(t *table, span text.Span) {
	up := t.parent
	switch {
	case up.role == rootRole:
		t.role, t.form = kindRole, r.form(t.name)
		r.settle(t, span)
	case up.role == kindRole && up.block == nil:
		t.role = blockRole
		r.labelled(up, t, span)
	default:
		t.role = blockRole
		t.block = r.store.block()
		*t.block = syntax.Block{Kind: t.name, KindAt: t.at, At: span}
		up.block.Blocks = append(up.block.Blocks, t.block)
		if up.form == Grouped && t.how == element {
			r.problem(t.at, short(t.name)+" is not an array of tables", "write ["+up.name+"."+short(t.name)+"] once")
		}
	}
}

// settle makes the block that the table of a kind stands for, now that it is
// known how the table is written.
func (r *reader) settle(t *table, span text.Span) {
	explicit := t.how != implied && t.how != dotted
	switch t.form {
	case Single, Grouped:
		if t.block == nil {
			r.block(t, span)
		}
		if t.how == element {
			r.wrongForm(t, t.at, t.name+" is not an array of tables")
		}
	case Labelled:
		if t.how == element {
			r.wrongForm(t, t.at, t.name+" is not an array of tables")
			t.block = new(syntax.Block)
		}
	case Repeated:
		if t.how == element {
			r.block(t, span)
		} else if explicit {
			r.wrongForm(t, t.at, t.name+" is not a single table")
			r.block(t, span)
		}
	case Unknown:
		if explicit {
			r.block(t, span)
		}
	}
}

// labelled makes the block of a table below that of its kind.
func (r *reader) labelled(kind, t *table, span text.Span) {
	b := r.store.block()
	*b = syntax.Block{Kind: kind.name, KindAt: kind.at, Label: t.name, LabelAt: t.at, At: span}
	t.block = b
	switch {
	case kind.form == Repeated:
		r.wrongForm(kind, t.at, kind.name+" takes no name")
		b.Label, b.LabelAt = "", text.Span{}
	case kind.form == Labelled && t.how == element:
		r.wrongForm(kind, t.at, kind.title(t.name)+" is not an array of tables")
		return
	}
	r.tree.Blocks = append(r.tree.Blocks, b)
}

// block makes a table of a kind stand for a block without a label.
func (r *reader) block(t *table, span text.Span) {
	t.block = r.store.block()
	*t.block = syntax.Block{Kind: t.name, KindAt: t.at, At: span}
	r.tree.Blocks = append(r.tree.Blocks, t.block)
}

func (r *reader) wrongForm(kind *table, at text.Span, message string) {
	r.problem(at, message, written(kind.name, kind.form))
}

// written says how blocks of a kind are written.
func written(kind string, form Form) string {
	switch form {
	case Single:
		return "write [" + kind + "] once"
	case Labelled:
		return "write [" + kind + ".NAME] for each"
	case Repeated:
		return "write [[" + kind + "]] for each"
	}
	return "write [" + kind + ".NAME]"
}

// owner makes sure that a table has a block that can take the value of a key.
// It reports false if it can have none.
func (r *reader) owner(t *table, name string, at text.Span, start int32) bool {
	switch {
	case t.block != nil:
		return true
	case t.role == rootRole:
		if form := r.form(name); form != Unknown {
			r.problem(at, name+" is a block, not a value", written(name, form))
		} else {
			r.problem(at, short(name)+" stands outside a block", "write it below the header of its block")
		}
		return false
	case t.form == Labelled:
		if !t.told {
			t.told = true
			r.problem(at, short(name)+" stands in no "+t.name+" that has a name", "write ["+t.name+".NAME] above it")
		}
		r.faulty = true
		return false
	case t.form == Repeated:
		r.wrongForm(t, t.at, t.name+" is not a single table")
	}
	r.block(t, text.Span{Start: start, End: at.End})
	return true
}

// nameless reports kinds of labelled blocks that are opened and hold none.
func (r *reader) nameless() {
	for i := r.root.first; i != 0; i = r.store.entries[i-1].next {
		t := r.store.entries[i-1].table
		if t != nil && t.form == Labelled && t.how == headed && t.count == 0 {
			r.wrongForm(t, t.at, t.name+" needs a name")
		}
	}
}
