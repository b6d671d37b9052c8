package tomlread

import "wheelwork/spec/syntax"

// store gives out the small pieces that a tree is made of in large lots.
type store struct {
	entries []entry
	tables  []table
	blocks  []syntax.Block
	attrs   []syntax.Attr
	values  []syntax.Value
}

const lot = 128

func (s *store) table() *table {
	if len(s.tables) == cap(s.tables) {
		s.tables = make([]table, 0, lot)
	}
	s.tables = s.tables[:len(s.tables)+1]
	return &s.tables[len(s.tables)-1]
}

func (s *store) block() *syntax.Block {
	if len(s.blocks) == cap(s.blocks) {
		s.blocks = make([]syntax.Block, 0, lot)
	}
	s.blocks = s.blocks[:len(s.blocks)+1]
	return &s.blocks[len(s.blocks)-1]
}

func (s *store) list(n int) []syntax.Value {
	if n == 0 {
		return nil
	}
	if cap(s.values)-len(s.values) < n {
		s.values = make([]syntax.Value, 0, max(lot, n))
	}
	start := len(s.values)
	s.values = s.values[:start+n]
	return s.values[start : start+n : start+n]
}

// attr adds an attribute to a block. Attributes that follow each other lie
// side by side in the lot, so that a block's grow in place.
func (s *store) attr(b *syntax.Block, a syntax.Attr) {
	n := len(b.Attrs)
	end := len(s.attrs)
	switch last := n > 0 && end > 0 && &s.attrs[end-1] == &b.Attrs[n-1]; {
	case last && end < cap(s.attrs):
		s.attrs = append(s.attrs, a)
		b.Attrs = s.attrs[end-n : end+1 : end+1]
	case n > lot/4:
		b.Attrs = append(b.Attrs, a)
	default:
		if cap(s.attrs)-end <= n {
			s.attrs, end = make([]syntax.Attr, 0, lot), 0
		}
		s.attrs = append(append(s.attrs, b.Attrs...), a)
		b.Attrs = s.attrs[end : end+n+1 : end+n+1]
	}
}
