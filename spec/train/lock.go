package train

import "wheelwork/spec/exact"

// lock names what cannot turn: joints that hold an arbor fast by themselves,
// and for every loop that stops what is in it the fewest joints that do so.
func (t *Train) lock() {
	pinned := t.pins()
	for _, s := range t.sys.stops {
		held, ok := t.held(s.equation)
		if !ok && !s.dead {
			continue // a loop that only ties rates to one another
		}
		grounds := t.sys.grounds(s.equation)
		if ok {
			// Joints of one carrier lock by themselves, whatever drives them
			// and however the carrier turns.
			if own := t.onCarrier(grounds, s.equation); t.holds(own, held) {
				t.add(t.fewest(own, s.equation, held), pinned)
				continue
			}
		}
		switch {
		case !s.dead:
			// It is tied to what turns, not stopped: the planets of a
			// differential may stand still because both its suns turn alike.
		case t.unit >= 0 && t.sys.params[s.param].body == t.unit:
			t.add(t.fewest(grounds, s.equation, pair{t.unit, frame}), pinned)
		case ok:
			t.add(t.fewest(grounds, s.equation, held), pinned)
		}
	}
	if t.unit >= 0 && t.sys.from[t.unit] >= 0 {
		// No drive can turn: what it turns was held fast before it came.
		e := int(t.sys.from[t.unit])
		t.add(t.fewest(t.sys.grounds(e), e, pair{t.unit, frame}), pinned)
	}
}

// pins tells joints that join an arbor to what its own carrier holds fast, such
// as a wheel on the frame that meshes with one on a stud of the frame. A
// coupling to a stud is meant to hold.
func (t *Train) pins() map[int]bool {
	var pinned map[int]bool
	for i := range t.sys.equations {
		e := t.sys.equations[i].joint
		j := &t.Joints[e]
		if j.A == nil || j.Part.Kind == "coupling" {
			continue
		}
		c := t.body(j.Carrier)
		if (t.bodyOf[j.A.Index] == c) != (t.bodyOf[j.B.Index] == c) {
			if pinned == nil {
				pinned = map[int]bool{}
			}
			pinned[i] = true
			t.Locks = append(t.Locks, Lock{Joint: j, Loop: []*Joint{j}, equations: []int{i}})
		}
	}
	return pinned
}

// add makes a lock of the equations, unless one of them is told already. It is
// named by its joint that comes last in the text, drives after all others.
func (t *Train) add(equations []int, pinned map[int]bool) {
	l := Lock{equations: equations}
	for _, e := range equations {
		if pinned[e] {
			return
		}
		l.Joint = &t.Joints[t.sys.equations[e].joint]
		l.Loop = append(l.Loop, l.Joint)
	}
	t.Locks = append(t.Locks, l)
}

// onCarrier keeps the equations of joints on the carrier of the closing one,
// drives left out.
func (t *Train) onCarrier(equations []int, closing int) []int {
	carrier := t.Joints[t.sys.equations[closing].joint].Carrier
	var kept []int
	for _, e := range equations {
		if j := &t.Joints[t.sys.equations[e].joint]; j.A != nil && t.body(j.Carrier) == t.body(carrier) {
			kept = append(kept, e)
		}
	}
	return kept
}

// pair is a body and the one against which it cannot turn.
type pair struct{ body, against int }

// held finds a body of the closing equation that stands still on the carrier. A
// stop whose bodies still turn against their carrier in the end is none: a
// differential may hold its cage still.
func (t *Train) held(closing int) (pair, bool) {
	carrier := t.body(t.Joints[t.sys.equations[closing].joint].Carrier)
	var one pair
	found := false
	for _, term := range t.sys.equations[closing].terms {
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
// closing equation stays.
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
	s, of := t.alone(equations)
	body, ok := of(held.body)
	if !ok {
		return false
	}
	against, ok := of(held.against)
	return ok && s.stands(body, against)
}

// alone solves some equations by themselves. What they say of a body of the
// train is under the number that of returns; ok is false where they say nothing.
func (t *Train) alone(equations []int) (s *system, of func(body int) (int, bool)) {
	number := map[int]int{frame: frame}
	subset := make([]equation, len(equations))
	for i, e := range equations {
		old := t.sys.equations[e].terms
		terms := make([]term, len(old))
		for j, o := range old {
			n, ok := number[o.body]
			if !ok {
				n = len(number)
				number[o.body] = n
			}
			terms[j] = term{n, o.k}
		}
		subset[i] = equation{terms: terms}
	}
	s = newSystem(len(number), subset)
	for body := range len(number) {
		s.free(body)
	}
	return s, func(body int) (int, bool) {
		n, ok := number[body]
		return n, ok
	}
}
