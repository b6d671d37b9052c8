package rules

import (
	"math"
	"slices"

	"wheelwork/rules/space"
	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// Bounds of what is tried for a level that is free.
const (
	mostLevels  = 32 // others to pass over in one direction
	mostMoved   = 40 // parts moved together
	mostMending = 50 // findings in one design
)

// leveller finds free levels for what runs into something.
type leveller struct {
	room  *space.Room
	judge *clashJudge
	tried int
	index map[*spec.Part]int // of the solids
}

// mend adds the remedy that moves one of the two to a level that is free, the
// later in the text if it can be.
func (l *leveller) mend(f *Finding, j *clashJudge, m *space.Meeting) {
	if l.tried++; l.tried > mostMending {
		return
	}
	if l.index == nil {
		l.index = make(map[*spec.Part]int, len(j.pieces))
		for i := range j.pieces {
			l.index[j.pieces[i].part] = i
		}
	}
	for _, i := range [...]int{m.A, m.B} {
		group := l.together(i)
		tenths, ok := l.free(group)
		if !ok {
			continue
		}
		var edits []Edit
		for _, g := range group {
			z := j.level(g)
			edit, ok := Figure(z.At, z.Exact.Add(exact.Frac(tenths, 10)), "mm")
			if !ok {
				edits = nil
				break
			}
			edits = append(edits, edit)
		}
		if edits != nil {
			to, _ := Decimal(j.level(i).Exact.Add(exact.Frac(tenths, 10)))
			title := "move " + j.pieces[i].part.Title() + " to " + to + " mm, where there is room"
			if len(group) > 1 {
				title = "move " + j.pieces[i].part.Title() + " and what runs with it by " + mm(float64(tenths)/10) + ", where there is room"
			}
			f.Mend(title, edits...)
			return
		}
	}
}

// level is the level of a wheel or sprocket.
func (j *clashJudge) level(i int) spec.Number {
	if p := &j.pieces[i]; p.wheel != nil {
		return p.wheel.Z
	}
	return j.pieces[i].sprocket.Z
}

// together lists the solids that must keep one level with a wheel or sprocket:
// its mates and their mates, or all of its chain. Of anything else it is nothing,
// and of what runs with a part whose own level is not known or is another.
func (l *leveller) together(i int) []int {
	first := &l.judge.pieces[i]
	if first.wheel == nil && first.sprocket == nil {
		return nil
	}
	group, whole := []int{i}, true
	add := func(part *spec.Part) {
		k, ok := l.index[part]
		whole = whole && ok && l.level(k, i)
		if ok && !slices.Contains(group, k) {
			group = append(group, k)
		}
	}
	for n := 0; n < len(group) && whole; n++ {
		if len(group) > mostMoved {
			return nil
		}
		switch p := &l.judge.pieces[group[n]]; {
		case p.wheel != nil:
			for _, mate := range l.judge.mates[p.wheel.Index] {
				add(&mate.Part)
			}
		default:
			for _, c := range l.judge.chains[p.sprocket.Index] {
				for _, s := range c.Over {
					add(&s.Part)
				}
			}
		}
	}
	if !whole {
		return nil
	}
	return group
}

// level reports whether two solids lie at one level, in part at least.
func (l *leveller) level(a, b int) bool {
	s, o := &l.judge.list[a], &l.judge.list[b]
	return s.From < o.To && o.From < s.To
}

// free is by how many tenths of a mm a group must move, up or down, to meet
// nothing, on its arbors all the while; the fewer of both ways.
func (l *leveller) free(group []int) (tenths int64, ok bool) {
	if len(group) == 0 {
		return 0, false
	}
	up, okUp := l.way(group, 1)
	down, okDown := l.way(group, -1)
	if okDown && (!okUp || -down < up) {
		return down, true
	}
	return up, okUp
}

// way moves a group up (1) or down (-1) past all that it meets.
func (l *leveller) way(group []int, sign float64) (tenths int64, ok bool) {
	for range mostLevels {
		next := tenths
		for _, g := range group {
			s := l.judge.list[g]
			s.From, s.To = s.From+float64(tenths)/10, s.To+float64(tenths)/10
			if !l.borne(g, &s) {
				return 0, false
			}
			if m, meets := l.room.Meets(&s, l.among(group, g)); meets {
				o := &l.judge.list[m.B]
				past := (o.To - s.From) * 10
				if sign < 0 {
					past = (s.To - o.From) * 10
				}
				// A clearance in height like that to the side.
				step := int64(math.Ceil(past+2-1e-6)) * int64(sign)
				if n := tenths + step; float64(n)*sign > float64(next)*sign {
					next = n
				}
			}
		}
		if next == tenths {
			return tenths, tenths != 0
		}
		tenths = next
	}
	return 0, false
}

// borne reports whether a part lies on its arbor from end to end.
func (l *leveller) borne(i int, s *space.Solid) bool {
	a := l.judge.pieces[i].arbor
	return (!a.From.Set() || s.From >= a.From.Exact.Float()) && (!a.To.Set() || s.To <= a.To.Exact.Float())
}

// among is the judge for one of a group moved together, which keep out of each
// other's way as they did.
func (l *leveller) among(group []int, i int) space.Judge {
	judge := l.judge.judge(&l.judge.pieces[i])
	apart := judge.Apart
	judge.Apart = func(a, b int) bool {
		return !slices.Contains(group, b) && apart(a, b)
	}
	return judge
}
