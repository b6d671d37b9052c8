package hclread

import (
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// moved is the block as read from the same text that many bytes further on.
func (b *block) moved(by int32) *block {
	if by == 0 {
		return b
	}
	m := *b
	m.KindAt, m.LabelAt, m.At = further(b.KindAt, by), further(b.LabelAt, by), further(b.At, by)
	m.Attrs = make([]syntax.Attr, len(b.Attrs))
	for i := range b.Attrs {
		a := &b.Attrs[i]
		m.Attrs[i] = syntax.Attr{Name: a.Name, Key: further(a.Key, by), Value: valueMoved(a.Value, by)}
	}
	m.open, m.within, m.Blocks = nil, nil, nil
	for _, o := range b.open {
		m.open = append(m.open, open{index: o.index, expr: o.expr.moved(by)})
	}
	for _, w := range b.within {
		m.hold(w.moved(by))
	}
	return &m
}

// further is the span that many bytes further on; that of nothing stays.
func further(s text.Span, by int32) text.Span {
	if s == (text.Span{}) {
		return s
	}
	return text.Span{Start: s.Start + by, End: s.End + by}
}

func valueMoved(v syntax.Value, by int32) syntax.Value {
	v.At = further(v.At, by)
	if v.List != nil {
		list := make([]syntax.Value, len(v.List))
		for i, x := range v.List {
			list[i] = valueMoved(x, by)
		}
		v.List = list
	}
	return v
}

func (e *expr) moved(by int32) *expr {
	if e == nil {
		return nil
	}
	m := *e
	m.at, m.value = further(e.at, by), valueMoved(e.value, by)
	m.x, m.y = e.x.moved(by), e.y.moved(by)
	m.list = nil
	for _, x := range e.list {
		m.list = append(m.list, x.moved(by))
	}
	return &m
}
