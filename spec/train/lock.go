package train

import "wheelwork/spec/exact"

// lock names, for every equation that stopped something, the fewest joints
// that do so. A stop whose bodies still turn against their carrier in the end
// is none: a differential may hold its cage still.
func (t *Train) lock() {
	for _, s := range t.sys.stops {
		joint := &t.Joints[t.sys.equations[s.equation].joint]
		held, ok := t.held(s, joint)
		if !ok {
			continue
		}
		l := Lock{Joint: joint}
		for _, e := range t.fewest(t.sys.grounds(s.equation), s.equation, held) {
			l.Loop = append(l.Loop, &t.Joints[t.sys.equations[e].joint])
		}
		t.Locks = append(t.Locks, l)
	}
}

// pair is a body and the one against which it cannot turn.
type pair struct{ body, against int }

func (t *Train) held(s stop, j *Joint) (pair, bool) {
	if t.unit >= 0 && t.sys.params[s.param].body == t.unit {
		return pair{t.unit, frame}, true
	}
	carrier := t.body(j.Carrier)
	var one pair
	found := false
	for _, term := range t.sys.equations[s.equation].terms {
		if term.body == carrier {
			continue
		}
		if !t.sys.stands(term.body, carrier) {
			return pair{}, false
		}
		if !found {
			one, found = pair{term.body, carrier}, true
		}
	}
	return one, found
}

// stands reports whether the body cannot turn against the other.
func (s *system) stands(body, against int) bool {
	return len(s.of(body).plus(exact.Int(-1), s.of(against))) == 0
}

// fewest takes equations away as long as those left still hold the body. The
// closing equation stays: the loop is named by it.
func (t *Train) fewest(grounds []int, closing int, held pair) []int {
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
		chunk = max(chunk/2, 1)
	}
	return keep
}

// holds reports whether the equations alone stop the body.
func (t *Train) holds(equations []int, held pair) bool {
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
	body, against := of(held.body), of(held.against)
	s := newSystem(len(number), subset)
	for body := range len(number) {
		s.free(body)
	}
	return s.stands(body, against)
}
