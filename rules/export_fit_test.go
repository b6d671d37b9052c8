package rules

import "wheelwork/rules/space"

// Clash is what the search for parts that run into each other finds, worked out
// anew: the parts, and how deep they overlap.
type Clash struct {
	A, B string
	Gap  float64
}

// ComputeClashes finds them by the tree.
func ComputeClashes(f *Facts, clearance float64) []Clash {
	s := newSolids(f)
	j := newClashJudge(f, s)
	return clashes(s, space.NewRoom(s.list, clearance).Meetings(j.judge(nil)))
}

func clashes(s *solids, list []space.Meeting) []Clash {
	var all []Clash
	for _, m := range list {
		all = append(all, Clash{s.pieces[m.A].part.Title(), s.pieces[m.B].part.Title(), m.Gap})
	}
	return all
}
