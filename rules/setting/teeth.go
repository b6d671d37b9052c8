package setting

import (
	"math"
	"slices"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

// engagement is a mesh or chain that can be lifted out to set a hand.
type engagement struct {
	joint *train.Joint
	index int
	pitch float64 // degrees of the hand for one tooth
	z     int64
}

// teeth lifts teeth out and lets them in again where the hand stands nearest:
// at the finest engagement of the hand's own train.
func (b *bench) teeth(h *Hand, lack float64) Step {
	own, all := b.engagements(h)
	if len(own) == 0 {
		own = all
	}
	if len(own) == 0 {
		return Step{By: ByTied, Error: -lack}
	}
	e := finest(own)
	n := math.Round(lack / e.pitch)
	b.shift(h, e.index, n*e.pitch)
	s := Step{By: ByTeeth, Joint: e.joint, index: e.index, Turn: n * e.pitch, Pitch: e.pitch, Places: int(n), Error: n*e.pitch - lack}
	if n == 0 {
		s.By = ByFollows // no tooth brings it nearer
	}
	s.Finer = finer(own, lack, s.Error)
	return s
}

// engagements lists those that move the hand and none set before: its own, which
// move no more hands than any, and all.
func (b *bench) engagements(h *Hand) (own, all []engagement) {
	least := int32(math.MaxInt32)
	for _, slip := range h.slips {
		least = min(least, b.moves[slip.Index])
	}
	for i, slip := range h.slips {
		z := teethOf(slip.Joint)
		if z == 0 || i >= most || !b.alone(h, slip.Index) {
			continue
		}
		e := engagement{slip.Joint, slip.Index, 360 / float64(z) * b.turns(h, slip.Index).Abs().Float(), z}
		all = append(all, e)
		if b.moves[slip.Index] <= least {
			own = append(own, e)
		}
	}
	return own, all
}

func finest(list []engagement) engagement {
	return slices.MinFunc(list, func(a, b engagement) int {
		switch {
		case a.pitch < b.pitch:
			return -1
		case a.pitch > b.pitch:
			return 1
		}
		return 0
	})
}

// finer looks for two engagements that together leave half the error at most,
// and of these the least, moved by as few teeth as will do.
func finer(list []engagement, lack, left float64) *Finer {
	const many = 2000 // teeth of a wheel, of which more are not tried
	if math.Abs(left) < 5*nothing {
		return nil
	}
	var best *Finer
	count := 0
	for i, a := range list {
		for _, c := range list[i+1:] {
			for m := -a.z / 2; m <= a.z/2 && a.z <= many; m++ {
				n := math.Round((lack - float64(m)*a.pitch) / c.pitch)
				off := float64(m)*a.pitch + n*c.pitch - lack
				moved := int(math.Abs(float64(m)) + math.Abs(n))
				if m == 0 || n == 0 || math.Abs(off) > math.Abs(left)/2 || math.Abs(n) > float64(c.z) {
					continue
				}
				if best == nil || math.Abs(off) < math.Abs(best.Error)-1e-9 || math.Abs(off) < math.Abs(best.Error)+1e-9 && moved < count {
					best, count = &Finer{[2]*train.Joint{a.joint, c.joint}, [2]int{int(m), int(n)}, off}, moved
				}
			}
		}
	}
	return best
}

// teethOf is the teeth by which a joint's B engages, 0 where it has none.
func teethOf(j *train.Joint) int64 {
	switch {
	case j.Mesh != nil:
		return j.Mesh.B.Teeth.N
	case j.Chain != nil:
		for _, s := range j.Chain.Over {
			if s.Arbor == j.B {
				return s.Teeth.N
			}
		}
	}
	return 0
}

// countedBy is by how many degrees a step of the counter next to the hand moves
// it, 0 where there is none.
func countedBy(h *Hand) float64 {
	for _, slip := range h.slips {
		if slip.Joint.Part.Kind == "counter" {
			return 360 * slip.Joint.Ratio.Abs().Float() * slip.Weight
		}
	}
	return 0
}

// movesOf counts, by joint, the arbors whose hands nothing sets without steps,
// and the clock's, which the joint moves: what the rule setting-step goes by.
func movesOf(t *train.Train, hands []*Hand, gives map[*spec.Part]bool) []int32 {
	moves := make([]int32, len(t.Joints))
	by := map[*spec.Arbor][]train.Slip{}
	var arbors []*spec.Arbor
	add := func(a *spec.Arbor, slips []train.Slip) {
		if _, ok := by[a]; !ok {
			arbors = append(arbors, a)
		}
		by[a] = append(by[a], slips...)
	}
	for _, h := range hands {
		free := h.SlipTorque.Set() || h.Hand.Sense.Text == "still" || slices.ContainsFunc(h.slips, func(s train.Slip) bool {
			return s.Joint.Part.Kind == "counter" || gives[s.Joint.Part]
		})
		if len(h.slips) > 0 && !free {
			add(h.Arbor, h.slips)
		}
	}
	if c := t.Design.Clock; c != nil && c.Arbor != nil {
		add(c.Arbor, t.NewSlips().Of(c.Arbor, spec.Body{}))
	}
	for _, a := range arbors {
		seen := map[int]bool{}
		for _, s := range by[a] {
			if !seen[s.Index] {
				seen[s.Index] = true
				moves[s.Index]++
			}
		}
	}
	return moves
}

// rounds is, for each hand that others follow by ratio, how many turns it takes
// until all of them stand as before: hands behind a counter are set by it, and
// ratios whose rounds are longer than a thousand turns are not waited for.
func rounds(list []*Hand) map[*Hand]int64 {
	of := map[*spec.Hand]*Hand{}
	for _, h := range list {
		of[h.Hand] = h
	}
	rounds := map[*Hand]int64{}
	for _, h := range list {
		ratio := h.Ratio.Exact.Abs()
		at := of[h.OfHand]
		for depth := 0; at != nil && h.Ratio.Set() && countedBy(h) == 0 && depth < len(list); depth++ {
			den := ratio.Big().Denom()
			before := max(rounds[at], 1)
			if den.IsInt64() && den.Int64() <= 1000 {
				if n := before / gcd(before, den.Int64()) * den.Int64(); n <= 1000 {
					rounds[at] = n
				}
			}
			if !at.Ratio.Set() {
				break
			}
			ratio = ratio.Mul(at.Ratio.Exact.Abs())
			at = of[at.OfHand]
		}
	}
	return rounds
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
