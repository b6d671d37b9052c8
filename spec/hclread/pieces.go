package hclread

import (
	"strings"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// pieces reads a block item by item, so that what hclsyntax refuses in one
// hides no other. Once no more can be told only the blocks are kept.
func (r *reader) pieces(i int) *block {
	it := &r.items[i]
	b := &block{Block: syntax.Block{Kind: strings.Clone(r.of(it.key)), KindAt: it.key, LabelAt: it.label, At: it.at}}
	if it.label.Len() > 0 {
		b.Label = r.labelText(it)
	}
	seen := map[string]text.Span{}
	for j := i + 1; j < int(it.next); j = int(r.items[j].next) {
		in := &r.items[j]
		switch {
		case in.form == blockItem:
			b.hold(r.pieces(j))
		case in.form == attribute && !r.enough():
			name := strings.Clone(r.of(in.key))
			if first, doubled := seen[name]; doubled {
				r.add(notice{Problem: text.Problem{
					Place:   text.Place{File: r.file, Span: in.key},
					Message: short(name) + " is given twice",
					Related: []text.Related{{Place: text.Place{File: r.file, Span: first}, Message: "first here"}},
				}})
				continue
			}
			seen[name] = in.key
			b.attribute(name, in.key, r.piece(j))
		}
	}
	return b
}

// labelText is the label of a block.
func (r *reader) labelText(it *item) string {
	switch written := r.of(it.label); {
	case written[0] != '"':
		return strings.Clone(written)
	case it.bad:
		return strings.Trim(written, `"`)
	default:
		return unquote(written)
	}
}

// piece reads one attribute. If it has no value, why is told.
func (r *reader) piece(i int) operand {
	it := &r.items[i]
	broken := operand{value: syntax.Value{At: r.valueAt(it)}}
	part := it.at
	cut, isCut := r.cuts[i]
	if isCut {
		part.End = cut.at.Start
	} else if it.bad {
		return broken
	}
	body, diags := r.parseSpan(part)
	w := walker{src: r.src}
	var read operand
	for _, a := range body.Attributes {
		if spanOf(a.NameRange) == it.key {
			read = w.operand(a.Expr)
		}
	}
	if w.refused == nil && !isCut && !diags.HasErrors() {
		return read
	}
	s := r.stuckAt(text.Span{Start: it.inner, End: part.End}, diags)
	switch {
	case w.refused != nil && (int(w.refused.at.Start) < s.pos || isCut && s.open()):
		r.problem(w.refused.at, w.refused.message, w.refused.hint)
	case s.loop.End > 0:
		r.problem(s.loop, foreign(loop), loopHint)
	case isCut && s.open():
		r.problem(cut.at, cut.message, "")
	default:
		r.explain(&s)
	}
	return broken
}
