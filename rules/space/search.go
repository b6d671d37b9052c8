package space

// few is how many meetings of one solid are told, and many how many near
// neighbours it is held against: where more than that stand in one place, more
// would tell nothing and take long.
const (
	few  = 4
	many = 1000
)

// Judge is what is asked about solids and the bodies that carry them.
type Judge struct {
	// Apart reports whether two solids have nothing to do with each other: mates
	// and the like do not meet.
	Apart func(a, b int) bool
	// Turning reports whether the bodies of those plans, in any order, turn
	// against each other so that they come to stand in all ways.
	Turning func(plans []int) bool
}

// search gathers meetings.
type search struct {
	*Room
	Judge
	list  []Meeting
	told  []int32 // of each solid
	looks []int32
}

// Meetings finds the solids that meet. Of a solid that meets many, some few are
// told.
func (r *Room) Meetings(judge Judge) []Meeting {
	q := &search{Room: r, Judge: judge, told: make([]int32, len(r.solids)), looks: make([]int32, len(r.solids))}
	for i := range r.plans {
		r.plans[i].still.pairs(q.both)
	}
	return q.list
}

// both compares two that stand or turn in one plan.
func (q *search) both(a, b ref) {
	switch {
	case a.locus < 0 && b.locus < 0:
		g, h := &q.plans[a.solid], &q.plans[b.solid]
		if len(g.round.refs) > len(h.round.refs) {
			g, h = h, g
		}
		for _, one := range g.round.refs {
			q.carried(one, h)
		}
	case a.locus < 0:
		q.carried(b, &q.plans[a.solid])
	case b.locus < 0:
		q.carried(a, &q.plans[b.solid])
	default:
		q.two(a, b)
	}
}

// carried compares a solid with what a body carries round.
func (q *search) carried(a ref, p *plan) {
	if q.done(a.solid) {
		return
	}
	p.near(q.Room, &q.solids[a.solid], int(a.locus), func(b ref) bool {
		q.two(a, b)
		return !q.done(a.solid)
	})
}

func (q *search) done(solid int32) bool { return q.told[solid] >= few || q.looks[solid] >= many }

// two compares two solids.
func (q *search) two(a, b ref) {
	if q.done(a.solid) || q.done(b.solid) {
		return
	}
	q.looks[a.solid]++
	q.looks[b.solid]++
	m, ok := q.meet(&q.solids[a.solid], int(a.locus), &q.solids[b.solid], int(b.locus), q.Turning)
	if ok && q.Apart(int(a.solid), int(b.solid)) {
		q.told[a.solid]++
		q.told[b.solid]++
		q.list = append(q.list, m.of(int(a.solid), int(b.solid)))
	}
}

// Meets reports whether a solid that is not in the room itself meets one that
// is, and which, save those that the judge sets apart: it is asked with -1 for
// the solid.
func (r *Room) Meets(s *Solid, judge Judge) (m Meeting, ok bool) {
	looks := 0
	for k := range s.Loci {
		if ok || s.Loci[k].Plan >= len(r.plans) {
			break
		}
		hold := func(at ref) bool {
			looks++
			if m, ok = r.meet(s, k, &r.solids[at.solid], int(at.locus), judge.Turning); ok {
				ok = judge.Apart(-1, int(at.solid))
				m = m.of(-1, int(at.solid))
			}
			return !ok && looks < many
		}
		own := -1 // what the same body carries has been looked at
		if k > 0 {
			own = s.Loci[k-1].Plan
		}
		b := r.box(s, k)
		r.plans[s.Loci[k].Plan].still.visit(&b, func(at ref) bool {
			if at.locus >= 0 {
				return hold(at)
			}
			if int(at.solid) != own {
				r.plans[at.solid].near(r, s, k, hold)
			}
			return !ok && looks < many
		})
	}
	return m, ok
}

// of names the solids of a meeting.
func (m Meeting) of(a, b int) Meeting {
	m.A, m.B = a, b
	switch m.Inside {
	case 0:
		m.Inside = a
	case 1:
		m.Inside = b
	}
	return m
}
