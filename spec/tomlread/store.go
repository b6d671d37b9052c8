package tomlread

import "wheelwork/spec/syntax"

// store gives out the small pieces that a tree is made of in large lots.
type store struct {
	entries []entry
	tables  []table
	blocks  []syntax.Block
	attrs   []syntax.Attr
	values  []syntax.Value
	inner   int32 // number of the last inline table
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

// attr adds an attribute to the block of a table. Attributes that follow each
// other lie side by side in the lot, so that a block's grow in place.
func (s *store) attr(t *table, a syntax.Attr) {
	b := t.block
	n := len(b.Attrs)
	if n > 0 && int(t.attrs)+n == len(s.attrs) && &s.attrs[t.attrs] == &b.Attrs[0] && len(s.attrs) < cap(s.attrs) {
		s.attrs = append(s.attrs, a)
		b.Attrs = s.attrs[t.attrs:len(s.attrs):len(s.attrs)]
		return
	}
	if n > lot/4 {
		b.Attrs = append(b.Attrs, a)
		return
	}
	if cap(s.attrs)-len(s.attrs) <= n {
		s.attrs = make([]syntax.Attr, 0, lot)
	}
	t.attrs = int32(len(s.attrs))
	s.attrs = append(append(s.attrs, b.Attrs...), a)
	b.Attrs = s.attrs[t.attrs:len(s.attrs):len(s.attrs)]
}
