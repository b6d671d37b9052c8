package tomlread

import (
	"sort"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// Reader reads the versions of one file that an editor has, one after the
// other. It remembers the last valid one and has only the statements decoded
// that are not in it. The zero Reader remembers nothing. A Reader is not safe
// for concurrent use.
type Reader struct {
	src    string
	starts []int32
}

// Parse does what the function Parse does.
func (m *Reader) Parse(f *text.File, form func(kind string) Form) (*syntax.Tree, []text.Problem) {
	r := reader{file: f, form: form, tree: &syntax.Tree{File: f}}
	if !r.encoding() {
		return r.tree, r.problems
	}
	r.empty()
	r.checker = checker{file: f, src: r.src, known: m.knows(r.src)}
	end := r.read()
	faults, settled := r.checker.end(end)
	r.finish(faults)
	if len(r.problems) == 0 && !settled {
		// The statements were at odds only with each other.
		if fault := decode(r.src); fault != nil {
			r.tell(fault.problem(f, 0, end))
		}
	}
	if len(r.problems) == 0 {
		m.src, m.starts = r.src, r.checker.starts
	}
	return r.tree, r.problems
}

// knows gives the test whether a statement of the text, from where it starts
// to where the next one does, is also in the last valid one.
func (m *Reader) knows(src string) func(start, end int32) bool {
	if m.src == "" {
		return nil
	}
	most := min(len(src), len(m.src))
	before := 0
	for before < most && src[before] == m.src[before] {
		before++
	}
	after := 0
	for after < most && src[len(src)-1-after] == m.src[len(m.src)-1-after] {
		after++
	}
	shift := int32(len(m.src) - len(src))
	return func(start, end int32) bool {
		switch {
		case int(end) <= before && src[end-1] == '\n':
			return true
		case int(start) < len(src)-after:
			return false
		}
		// What stands here may have been within a string.
		old := start + shift
		i := sort.Search(len(m.starts), func(i int) bool { return m.starts[i] >= old })
		return i < len(m.starts) && m.starts[i] == old
	}
}
