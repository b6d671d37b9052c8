package space

// Room is solids laid out so that what is near a solid is found at once.
type Room struct {
	solids    []Solid
	clearance float64
	plans     []plan
	way       []int // of legs, to be filled anew
}

// A plan is what a body has on it.
type plan struct {
	// still is what stands still in the plan, and the bodies that turn in it.
	still tree
	// round is what the body carries round, its own and what its arms bear, by
	// the distance from its middle.
	round tree
	// pivot is where its middle stands, and what its round fills there.
	pivot Locus
	holds box
}

// NewRoom lays out solids. Those that come less than a clearance near to each
// other meet.
func NewRoom(solids []Solid, clearance float64) *Room {
	r := &Room{solids: solids, clearance: clearance}
	most := -1
	for i := range solids {
		for _, l := range solids[i].Loci {
			most = max(most, l.Plan)
		}
	}
	r.plans = make([]plan, most+1)
	r.carry()
	r.stand()
	return r
}

// listing gathers the boxes of a tree for each plan.
type listing struct {
	boxes [][]box
	refs  [][]ref
}

// newListing makes room for so many in each plan.
func newListing(count []int) listing {
	l := listing{make([][]box, len(count)), make([][]ref, len(count))}
	total := 0
	for _, n := range count {
		total += n
	}
	boxes, refs := make([]box, total), make([]ref, total)
	for p, n := range count {
		l.boxes[p], boxes = boxes[:0:n], boxes[n:]
		l.refs[p], refs = refs[:0:n], refs[n:]
	}
	return l
}

func (l *listing) add(plan int, b box, r ref) {
	l.boxes[plan] = append(l.boxes[plan], b)
	l.refs[plan] = append(l.refs[plan], r)
}

// carry lists what each body carries round.
func (r *Room) carry() {
	count := make([]int, len(r.plans))
	for i := range r.solids {
		for _, l := range r.solids[i].Loci[:len(r.solids[i].Loci)-1] {
			count[l.Plan]++
		}
	}
	list := newListing(count)
	for i := range r.solids {
		s := &r.solids[i]
		for k := 1; k < len(s.Loci); k++ {
			b := r.ring(s.Loci[k].Least-s.Radius, s.outer(k), s.From, s.To)
			p := &r.plans[s.Loci[k-1].Plan]
			if len(list.boxes[s.Loci[k-1].Plan]) == 0 {
				p.pivot, p.holds = s.Loci[k], b
			}
			p.holds.join(&b)
			list.add(s.Loci[k-1].Plan, b, ref{int32(i), int32(k)})
		}
	}
	for i := range r.plans {
		r.plans[i].round = tree{boxes: list.boxes[i], refs: list.refs[i]}
	}
}

// stand lists what stands still in each plan, and the bodies that turn in it.
func (r *Room) stand() {
	count := make([]int, len(r.plans))
	for i := range r.solids {
		count[r.solids[i].Loci[0].Plan]++
	}
	for i := range r.plans {
		if p := &r.plans[i]; len(p.round.refs) > 0 {
			count[p.pivot.Plan]++
		}
	}
	list := newListing(count)
	for i := range r.solids {
		s := &r.solids[i]
		list.add(s.Loci[0].Plan, r.box(s, 0), ref{int32(i), 0})
	}
	for i := range r.plans {
		if p := &r.plans[i]; len(p.round.refs) > 0 {
			outer := p.holds.x1
			b := box{p.pivot.X - outer, p.pivot.X + outer, p.pivot.Y - outer, p.pivot.Y + outer, p.holds.z0, p.holds.z1}
			list.add(p.pivot.Plan, b, ref{int32(i), -1})
		}
	}
	for i := range r.plans {
		r.plans[i].still = tree{boxes: list.boxes[i], refs: list.refs[i]}
	}
}

// box bounds a solid in the plan of its locus k, with half a clearance around:
// boxes that do not meet hold what stays clear. What only touches in height is
// clear.
func (r *Room) box(s *Solid, k int) box {
	l, outer := &s.Loci[k], s.outer(k)+r.clearance/2
	b := box{l.X - outer, l.X + outer, l.Y - outer, l.Y + outer, s.From + fine/2, s.To - fine/2}
	if s.isBar(k) {
		b.x1 += s.Length
	}
	return b
}

// ring is as box, by the distance from the middle of a body.
func (r *Room) ring(inner, outer, from, to float64) box {
	return box{x0: inner - r.clearance/2, x1: outer + r.clearance/2, z0: from + fine/2, z1: to - fine/2}
}

// near calls each for what may meet a solid, in the plan of its locus k, of what
// a body carries round there, until it returns false.
func (p *plan) near(r *Room, s *Solid, k int, each func(ref) bool) {
	least, most := s.away(k, p.pivot.X, p.pivot.Y)
	b := r.ring(least-s.Radius, most+s.Radius, s.From, s.To)
	if s.Hole > 0 {
		// What stays so near to the pivot is within the hole.
		b.x0 = max(b.x0, s.Hole-most-r.clearance)
	}
	p.round.visit(&b, each)
}
