package spec

import (
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// MostName bounds the bytes of a name.
const MostName = 128

// reading fills a design from the trees of its files.
type reading struct {
	*telling
	design *Design
	file   *text.File
	own    bool  // whether the file is the design's own, not one it uses
	rooms  []any // of the block kinds, by number
}

// part is a block of the model.
type part interface{ part() *Part }

// tree adds one file's blocks to the design.
func (r *reading) tree(t *syntax.Tree, own bool) {
	r.file, r.own = t.File, own
	headed := false // by a design block
	for _, b := range t.Blocks {
		kind := KindOf(b.Kind)
		switch {
		case kind == nil:
			r.problem(b.KindAt, r.nearOf(b.Kind, kindNames), "unknown block %q", clip(b.Kind))
		case kind.Kind == "given":
			r.problem(b.KindAt, "", "named values (given) are part of the HCL notation only")
		case !r.shape(kind, b):
		case kind.Form == tomlread.Grouped:
			r.bounds(b)
		case kind.Kind == "design" && !own:
			if headed {
				r.problem(b.KindAt, "", "design is given twice")
			}
			headed = true
			// A used file may be a design by itself; its heading is not this one's.
			design := r.design
			r.design = new(Design)
			r.block(kind, b)
			r.design = design
		case kind.Form == tomlread.Single && r.first(kind.Kind) != nil:
			r.problem(b.KindAt, "", "%s is given twice", kind.Kind).Related = see(r.first(kind.Kind).Head, "first here")
		default:
			r.block(kind, b)
		}
	}
}

// shape tells a label that is missing or too many and blocks where none belong.
func (r *reading) shape(kind *BlockKind, b *syntax.Block) bool {
	named := b.LabelAt.Len() > 0
	switch {
	case kind.Form == tomlread.Grouped:
		return true
	case kind.Form == tomlread.Labelled && !named:
		r.problem(b.KindAt, "write "+kind.Kind+" \"name\"", "%s needs a name", kind.Kind)
		return false
	case kind.Form == tomlread.Labelled && b.Label == "":
		r.problem(b.LabelAt, "", "the name of %s must not be empty", kind.noun())
		return false
	case kind.Form == tomlread.Labelled:
		r.short(b.Label, b.LabelAt)
	case named:
		r.problem(b.LabelAt, "", "%s takes no name", kind.Kind)
	}
	for _, inner := range b.Blocks {
		r.problem(inner.KindAt, r.nearOf(inner.Kind, kind.names), "%s holds no blocks", kind.Kind)
	}
	return true
}

// noun is the kind with its article.
func (k *BlockKind) noun() string {
	if k.Kind == "arbor" || k.Kind == "arm" {
		return "an " + k.Kind
	}
	return "a " + k.Kind
}

// short reports whether a name is no longer than names may be.
func (r *reading) short(name string, at text.Span) bool {
	if len(name) > MostName {
		r.problem(at, "", "a name of %d bytes, where at most %d are allowed", len(name), MostName)
		return false
	}
	return true
}

// first is the block of the kind where there can be only one, nil if there is
// none yet.
func (r *reading) first(kind string) *Part {
	d := r.design
	switch {
	case kind == "design" && d.Head.Kind != "":
		return &d.Head.Part
	case kind == "clock" && d.Clock != nil:
		return &d.Clock.Part
	case kind == "stock" && d.Stock != nil:
		return &d.Stock.Part
	case kind == "dividing" && d.Dividing != nil:
		return &d.Dividing.Part
	}
	return nil
}

func (r *reading) block(kind *BlockKind, b *syntax.Block) {
	into := kind.add(r.design, &r.rooms[kind.number])
	p := into.(part).part()
	p.Kind = kind.Kind
	p.At = text.Place{File: r.file, Span: b.At}
	p.Head = text.Place{File: r.file, Span: b.KindAt}
	if b.LabelAt.Len() > 0 {
		p.Head.Span = b.KindAt.Join(b.LabelAt)
		p.Name = Name{At: At{File: r.file, Key: b.KindAt, Val: b.LabelAt}, Text: b.Label}
	}
	missing := kind.required
	at := 0
	for i := range b.Attrs {
		a := &b.Attrs[i]
		n := kind.index(a.Name, at)
		if n < 0 {
			missing &^= r.unknown(kind, a)
			continue
		}
		at = n + 1
		missing &^= 1 << n
		row := &kind.Attributes[n]
		row.field(into).set(r, row, At{File: r.file, Key: a.Key, Val: a.Value.At, Derived: a.Value.Derived}, &a.Value)
	}
	for i := 0; missing != 0; i++ {
		if missing&(1<<i) != 0 {
			missing &^= 1 << i
			r.tell(p.Head, "", "%s needs %s: %s", p.Title(), kind.names[i], kind.Attributes[i].Doc)
		}
	}
}

// unknown tells an attribute that the kind does not have. It returns the bit
// of the one that was meant, so that it is not told as missing too.
func (r *reading) unknown(kind *BlockKind, a *syntax.Attr) (meant uint64) {
	r.problem(a.Key, r.nearOf(a.Name, kind.names), "%s has no attribute %q", kind.Kind, clip(a.Name))
	if n := kind.index(Nearest(a.Name, kind.names), 0); n >= 0 {
		meant = 1 << n
	}
	return meant
}

func (r *reading) problem(at text.Span, hint, format string, args ...any) *text.Problem {
	return r.tell(text.Place{File: r.file, Span: at}, hint, format, args...)
}
