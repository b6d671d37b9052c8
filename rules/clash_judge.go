package rules

import (
	"slices"

	"wheelwork/rules/space"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// fewTurns is up to which number of turns two arms may come back to where they
// were to each other without having stood in all ways, as near as matters.
const fewTurns = 10

// clashJudge knows which pieces may touch, and which arms turn against each other.
type clashJudge struct {
	*solids
	train  *train.Train
	mates  [][]*spec.Wheel // by Wheel.Index
	chains [][]*spec.Chain // by Sprocket.Index
}

func newClashJudge(f *Facts, s *solids) *clashJudge {
	j := &clashJudge{solids: s, train: f.Train}
	u := used(f)
	j.mates = make([][]*spec.Wheel, len(f.Design.Wheels))
	all := make([]*spec.Wheel, 0, 2*len(f.Design.Meshes))
	for i := range j.mates {
		n, m := len(all), len(all)+int(u.meshes[i])
		j.mates[i] = all[n:n:m]
		all = all[:m]
	}
	for _, m := range f.Design.Meshes {
		if m.A != nil && m.B != nil {
			j.mates[m.A.Index] = append(j.mates[m.A.Index], m.B)
			j.mates[m.B.Index] = append(j.mates[m.B.Index], m.A)
		}
	}
	j.chains = make([][]*spec.Chain, len(f.Design.Sprockets))
	for _, c := range f.Design.Chains {
		for _, s := range c.Over {
			j.chains[s.Index] = append(j.chains[s.Index], c)
		}
	}
	return j
}

// judge is for the pieces as they stand, and for one that stands elsewhere,
// which is asked after as -1.
func (j *clashJudge) judge(moved *piece) space.Judge {
	at := func(i int) *piece {
		if i < 0 {
			return moved
		}
		return &j.pieces[i]
	}
	return space.Judge{Apart: func(a, b int) bool { return !j.belong(at(a), at(b)) }, Turning: j.turning}
}

// belong reports whether two pieces may fill the same room: mates, sprockets of
// one chain, what sits on one axis and what bears or is borne.
func (j *clashJudge) belong(p, q *piece) bool {
	if p.isPost() && q.isPost() {
		return j.coaxial(p.arbor, q.arbor)
	}
	if q.isPost() || q.arm != nil && !p.isPost() {
		p, q = q, p
	}
	switch {
	case p.isPost():
		return j.coaxial(p.arbor, q.arbor) && !encloses(p.arbor, q) || j.bears(q, p.arbor)
	case p.arm != nil && q.arm != nil:
		return j.train.SameBody(p.arbor, q.arbor)
	case p.arm != nil:
		// A wheel that is the arm, or an arm cut from a wheel.
		return p.arbor == q.arbor && j.oneLevel(p.arm, q)
	case p.wheel != nil && q.wheel != nil:
		return slices.Contains(j.mates[p.wheel.Index], q.wheel)
	case p.sprocket != nil && q.sprocket != nil:
		for _, c := range j.chains[p.sprocket.Index] {
			if slices.Contains(j.chains[q.sprocket.Index], c) {
				return true
			}
		}
	}
	return false
}

// encloses reports whether an arbor on the axis of a piece lies about the arbor
// that the piece is on, too narrow for the piece.
func encloses(tube *spec.Arbor, p *piece) bool {
	own := p.arbor
	return tube != own && tube.Diameter.Set() && own.Diameter.Set() && tube.Diameter.Exact.Cmp(own.Diameter.Exact) > 0 &&
		tube.Bore.Or(0) < 2*p.radius
}

// bears reports whether the piece is what carries the arbor: the arm, another of
// the same body, or a wheel in the arm's place.
func (j *clashJudge) bears(p *piece, a *spec.Arbor) bool {
	if p.arm == nil {
		return a.Carrier != nil && a.Carrier.Arbor == p.arbor
	}
	on, _, _, ok := j.train.Middle(p.arm)
	return ok && on == j.train.Carrier(a)
}

// oneLevel reports whether of an arm and a wheel one lies within the levels of
// the other.
func (j *clashJudge) oneLevel(a *spec.Arm, p *piece) bool {
	if p.wheel == nil {
		return false
	}
	from, to := a.Z.Exact, a.Z.Exact.Add(a.Face.Exact)
	low, high := p.wheel.Z.Exact, p.wheel.Z.Exact.Add(p.wheel.Face.Exact)
	return from.Cmp(low) <= 0 && to.Cmp(high) >= 0 || from.Cmp(low) >= 0 && to.Cmp(high) <= 0
}

// turning reports whether bodies come to stand in all ways to one another: none
// keeps still against another, and none comes back after few turns of another,
// as two cranks do that are set to pass each other.
func (j *clashJudge) turning(plans []int) bool {
	slices.Sort(plans) // the frame first: a ratio is never of it
	bodies := make([]spec.Body, len(plans))
	for i, p := range plans {
		bodies[i] = j.bodies[p]
	}
	for i, b := range bodies {
		for _, c := range bodies[:i] {
			if !j.train.Turns(b, c) {
				return false
			}
		}
	}
	base := bodies[0]
	for i := 2; i < len(bodies); i++ {
		for k := 1; k < i; k++ {
			if ratio, ok := j.train.Ratio(bodies[i].Arbor, base, bodies[k].Arbor, base); ok && simple(ratio) {
				return false
			}
		}
	}
	return true
}

// simple reports whether a ratio is one of numbers up to fewTurns.
func simple(r exact.Rat) bool {
	for n := int64(1); n <= fewTurns; n++ {
		if m, whole := r.Mul(exact.Int(n)).Int64(); whole {
			return -fewTurns <= m && m <= fewTurns
		}
	}
	return false
}
