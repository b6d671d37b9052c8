package space

// AllPairs finds what Meetings finds, by holding every solid against every
// other.
func (r *Room) AllPairs(judge Judge) []Meeting {
	var list []Meeting
	for i := range r.solids {
		for j := range i {
			a, b := &r.solids[i], &r.solids[j]
			k, l := common(a.Loci, b.Loci)
			if m, ok := r.meet(a, k, b, l, judge.Turning); ok && judge.Apart(i, j) {
				list = append(list, m.of(i, j))
			}
		}
	}
	return list
}

// common is the first plan that both ways outwards pass.
func common(a, b []Locus) (i, j int) {
	for i := range a {
		for j := range b {
			if a[i].Plan == b[j].Plan {
				return i, j
			}
		}
	}
	panic("ways that never meet")
}

// Few is how many meetings of one solid are told.
const Few = few
