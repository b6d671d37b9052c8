package train

// lock names, for every equation that stopped something, the fewest joints
// that do so. A stop whose bodies still turn in the end is none: a differential
// may hold its cage still.
func (t *Train) lock() {
	for _, s := range t.sys.stops {
		held := -1
		for _, term := range t.sys.equations[s.equation].terms {
			if len(t.sys.of(term.body)) > 0 {
				held = -1
				break
			}
			if held < 0 {
				held = term.body
			}
		}
		if held < 0 {
			continue
		}
		l := Lock{Joint: &t.Joints[t.sys.equations[s.equation].joint]}
		for _, e := range t.fewest(t.sys.grounds(s.equation), s.equation, held) {
			l.Loop = append(l.Loop, &t.Joints[t.sys.equations[e].joint])
		}
		t.Locks = append(t.Locks, l)
	}
}

// fewest takes equations away as long as those left still hold the body. The
// closing equation stays: the loop is named by it.
func (t *Train) fewest(grounds []int, closing, held int) []int {
	keep := grounds
	for chunk := (len(keep) + 1) / 2; chunk >= 1; {
		shrunk := false
		for at := 0; at < len(keep); {
			end := min(at+chunk, len(keep))
			fewer := make([]int, 0, len(keep))
			for i, e := range keep {
				if i < at || i >= end || e == closing {
					fewer = append(fewer, e)
				}
			}
			if len(fewer) < len(keep) && t.holds(fewer, held) {
				keep, shrunk = fewer, true
				continue
			}
			at = end
		}
		if chunk == 1 && !shrunk {
			break
		}
		if chunk > 1 {
			chunk /= 2
		}
	}
	return keep
}

// holds reports whether the equations alone stop the body.
func (t *Train) holds(equations []int, held int) bool {
	number := map[int]int{frame: frame}
	of := func(body int) int {
		n, ok := number[body]
		if !ok {
			n = len(number)
			number[body] = n
		}
		return n
	}
	subset := make([]equation, len(equations))
	for i, e := range equations {
		old := t.sys.equations[e].terms
		terms := make([]term, len(old))
		for j, o := range old {
			terms[j] = term{of(o.body), o.k}
		}
		subset[i] = equation{terms: terms}
	}
	n, ok := number[held]
	if !ok {
		return false
	}
	s := newSystem(len(number), subset)
	for body := range len(number) {
		s.free(body)
	}
	return len(s.of(n)) == 0
}
