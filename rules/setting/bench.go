package setting

import (
	"math"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// nothing is what nobody reads off a dial, in degrees.
const nothing = 0.01

// most is how many joints, nearest the hand, are looked at to set it.
const most = 40

// bench is a model on which hands are being set.
type bench struct {
	reach  map[int][]reach // joint that can be moved on by itself -> the hands it moves
	gives  map[*spec.Part]bool
	moves  []int32 // by joint, how many hands' arbors it moves
	hands  []*Hand
	at     map[*Hand]float64 // degrees from the zero mark, in the sense it turns
	set    map[*Hand]bool
	moved  map[*Hand][]*Hand // hand -> hands whose setting moved it
	rounds map[*Hand]int64   // hand -> turns after which what follows it repeats
}

// reach is a hand with its turns for one of a joint's B.
type reach struct {
	hand  *Hand
	turns exact.Rat
}

// order finds the steps.
func (s *Setting) order(t *train.Train) {
	gives := givingParts(t.Design)
	list, driven := s.settable(t, gives)
	if len(list) == 0 {
		return
	}
	b := &bench{gives: gives, hands: list, reach: map[int][]reach{}, at: map[*Hand]float64{}, set: map[*Hand]bool{}, moved: map[*Hand][]*Hand{}, rounds: rounds(list)}
	b.moves = movesOf(t, s.Hands, b.gives)
	var joints []int
	seen := map[int]bool{}
	for _, h := range list {
		for i, slip := range h.slips {
			if (i < most || b.gives[slip.Joint.Part]) && !seen[slip.Index] {
				seen[slip.Index] = true
				joints = append(joints, slip.Index)
			}
		}
	}
	shifts := t.NewShifts(joints)
	for _, h := range list {
		for _, s := range shifts.Of(h.Arbor, h.Base) {
			b.reach[s.Joint] = append(b.reach[s.Joint], reach{h, s.Turns})
		}
	}
	for _, h := range list {
		var step Step
		if h == driven {
			step = b.drive(h)
		} else {
			step = b.step(h)
		}
		step.Hand, step.After = h, b.moved[h]
		b.set[h] = true
		for _, o := range b.movedBy(&step) {
			if o != h {
				b.moved[o] = append(b.moved[o], h)
				step.With = append(step.With, o)
			}
		}
		s.Steps = append(s.Steps, step)
	}
}

// stands is where the hand stands, which behind a counter moves in steps.
func (b *bench) stands(h *Hand) float64 {
	if pitch := countedBy(h); pitch > 0 {
		return floor(b.at[h], pitch)
	}
	return b.at[h]
}

// shift moves a joint on so that the hand moves by so many degrees.
func (b *bench) shift(h *Hand, joint int, degrees float64) {
	own := b.turns(h, joint)
	for _, r := range b.reach[joint] {
		b.at[r.hand] += degrees * r.turns.Quo(own).Float() * r.hand.sign * h.sign
	}
}

// turns is by how many turns the joint moves the hand for one of its B.
func (b *bench) turns(h *Hand, joint int) exact.Rat {
	for _, r := range b.reach[joint] {
		if r.hand == h {
			return r.turns
		}
	}
	return exact.Rat{}
}

// alone reports whether the joint moves the hand and none of those set before.
func (b *bench) alone(h *Hand, joint int) bool {
	moves := false
	for _, r := range b.reach[joint] {
		if b.set[r.hand] {
			return false
		}
		moves = moves || r.hand == h
	}
	return moves
}

// movedBy lists the hands that a step moves, in the order of the trains.
func (b *bench) movedBy(s *Step) (list []*Hand) {
	switch {
	case s.By == ByDrive:
		for _, h := range b.hands {
			if h.drive != 0 {
				list = append(list, h)
			}
		}
	case s.Joint != nil && s.Turn != 0:
		for _, r := range b.reach[s.index] {
			list = append(list, r.hand)
		}
	}
	return list
}

// nearest is x less whole rounds, as near to 0 as can be.
func nearest(x, round float64) float64 { return x - round*math.Ceil(x/round-0.5) }
