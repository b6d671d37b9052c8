package editor

import (
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// hovering works out what is to be shown at a place.
type hovering struct {
	*page
	q      *inquiry
	lens   *lens
	in     *file
	offset int32
	facts  *rules.Facts // nil where nothing is known of the motion
	past   bool         // whether the facts are of an earlier text
}

// hover tells of what stands at a place.
func hover(q *inquiry, p *lsp.PositionParams) (any, error) {
	var result any
	for _, c := range q.of {
		done := q.look(c, func(l *lens, in *file) bool {
			offset, ok := l.offset(in, p.Position)
			if !ok {
				return false
			}
			h := &hovering{page: &page{markdown: q.view.markdown}, q: q, lens: l, in: in, offset: offset}
			defer h.know(c)()
			at := h.tell()
			h.findings()
			if len(h.sections) == 0 {
				return false
			}
			shown := lsp.Hover{Contents: lsp.Markup{Kind: lsp.Plain, Value: h.String()}}
			if h.markdown {
				shown.Contents.Kind = lsp.Markdown
			}
			if r, ok := l.span(in, at); ok && at.Len() > 0 {
				shown.Range = &r
			}
			result = shown
			return true
		})
		if done {
			break
		}
	}
	return result, nil
}

// know finds facts: of the text as it is, or where that has problems of the
// last that had none, whose mutex is then held until the function returned is
// called.
func (h *hovering) know(c *candidate) func() {
	h.lens.reach(solved)
	if h.facts = h.lens.facts; h.facts != nil {
		h.past = h.lens.model != c.now
		return func() {}
	}
	if c.sound == nil || c.sound == h.lens.model {
		return func() {}
	}
	c.sound.mu.Lock()
	h.facts, h.past = c.sound.facts, true
	return c.sound.mu.Unlock
}

// tell says what stands at the place, and where that begins and ends.
func (h *hovering) tell() text.Span {
	if n := h.lens.index().at(h.in, h.offset); n != nil && h.mention(n) {
		return n.inner()
	}
	for _, b := range h.in.tree.Blocks {
		if b.At.Start <= h.offset && h.offset <= b.At.End || touches(b.KindAt, h.offset) {
			if at, ok := h.block(b); ok {
				return at
			}
		}
	}
	return text.Span{}
}

func touches(s text.Span, offset int32) bool { return s.Start <= offset && offset <= s.End }

// mention tells of what is named.
func (h *hovering) mention(n *mention) bool {
	d := h.lens.design
	if h.facts != nil {
		d = h.facts.Design
	}
	switch n.set {
	case "arbor":
		return h.arbor(d.ArborNamed(n.name))
	case "arm":
		return h.arm(d.ArmNamed(n.name))
	case "wheel":
		if w := d.WheelNamed(n.name); w != nil {
			return h.wheel(w)
		}
		return h.sprocket(d.SprocketNamed(n.name))
	case "hand":
		return h.hand(d.HandNamed(n.name))
	case "chain":
		for _, c := range d.Chains {
			if c.Named.Text == n.name {
				return h.chain(c)
			}
		}
	case periods:
		return h.period(n.name)
	case ruled:
		if r := rules.Named(n.name); r != nil {
			h.rule(r, h.q.view.pages)
			return true
		}
	case values:
		return h.given(n.name)
	case trains:
		return h.train(d, n.name)
	}
	return false
}

// block tells of the word of a block that the place touches.
func (h *hovering) block(b *syntax.Block) (text.Span, bool) {
	kind := spec.KindOf(b.Kind)
	if kind == nil {
		return text.Span{}, false
	}
	if touches(b.KindAt, h.offset) {
		switch d := h.design(); {
		case b.Kind == "mesh":
			for _, m := range d.Meshes {
				if h.here(m.At, b) && h.mesh(m) {
					return b.KindAt, true
				}
			}
		case b.Kind == "chain":
			for _, c := range d.Chains {
				if h.here(c.At, b) && h.chain(c) {
					return b.KindAt, true
				}
			}
		}
		h.kind(kind)
		return b.KindAt, true
	}
	for i := range b.Attrs {
		a := &b.Attrs[i]
		row := kind.Attribute(a.Name)
		if row == nil {
			continue
		}
		if touches(a.Key, h.offset) {
			h.attribute(kind, row)
			return a.Key, true
		}
		if touches(a.Value.At, h.offset) {
			return h.value(kind, row, &a.Value)
		}
	}
	if b.Kind == "bounds" {
		return h.bounds(b)
	}
	return text.Span{}, false
}

// design is what facts are of.
func (h *hovering) design() *spec.Design {
	if h.facts != nil {
		return h.facts.Design
	}
	return h.lens.design
}

// here reports whether a part is the block. Of facts that are of an earlier
// text none is.
func (h *hovering) here(at text.Place, b *syntax.Block) bool {
	return !h.past && h.lens.of(at) == h.in && at.Start == b.At.Start
}

// findings adds the rules of the findings that lie here.
func (h *hovering) findings() {
	h.lens.reach(checked)
	told := map[*rules.Rule]bool{}
	for i := range h.lens.result.Findings {
		f := &h.lens.result.Findings[i]
		if h.lens.of(f.Place) == h.in && touches(f.Span, h.offset) && !told[f.Rule] {
			told[f.Rule] = true
			h.rule(f.Rule, h.q.view.pages)
		}
	}
}
