package rules

import (
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/train"
)

// passing is which part of a drive's power reaches the arbors and joints.
type passing struct {
	f      *Facts
	arbors []float64 // by Arbor.Index, 0 where no drive reaches it
	joints []passed  // by the joint's place in Train.Joints
}

// passed is what a joint makes of the power that reaches it.
type passed struct {
	reached float64 // the part of the drive's power that does
	loss    float64 // what rubs away for a unit that is passed on
	rate    float64 // of its B against its carrier, in turns a day
}

// to is the part that reaches an arbor.
func (p passing) to(a *spec.Arbor) float64 {
	if b := p.bodyOf(a); b != nil && p.arbors[b.Index] > 0 {
		return p.arbors[b.Index]
	}
	return 1
}

// through is the part that reaches a joint.
func (p passing) through(joint int) float64 {
	if x := p.joints[joint].reached; x > 0 {
		return x
	}
	return 1
}

// circling is what is left, beside the efficiency of each joint on the way, of
// the power with which an arbor is held: in trains of small differences far more
// goes round and rubs than is passed on.
//
// A joint rubs away its share of the power that rolls through it, its torque times
// its rate against its carrier; for a plain train the sum of them is the way's own
// efficiency, and circling is 1.
func (p passing) circling(h *Held) float64 {
	rate, _ := p.f.Train.Against(h.Arbor, h.Base)
	away := 0.0
	for _, s := range h.bears {
		x := p.joints[s.Index]
		away += x.loss * s.Weight * x.rate
	}
	left := 1 / (1 + away/math.Abs(rate.Float()))
	return min(1, left/p.to(h.Arbor))
}

// bodyOf is the arbor that stands for the arbor's body: a stud is one with what
// carries it. It is nil for the frame.
func (p passing) bodyOf(a *spec.Arbor) *spec.Arbor {
	if a != nil && a.Stud {
		return p.f.Train.Carrier(a).Arbor
	}
	return a
}

// passage follows the power from the drives through the joints, nearest first.
func passage(f *Facts) passing {
	p := passing{f, make([]float64, len(f.Design.Arbors)), make([]passed, len(f.Train.Joints))}
	joints := f.Train.Joints
	touching := p.touching()
	best := efficiencies(f)
	var queue []*spec.Arbor
	for i := range joints {
		if j := &joints[i]; j.A == nil {
			if b := p.bodyOf(j.B); b != nil && p.arbors[b.Index] == 0 {
				p.arbors[b.Index] = 1
				queue = append(queue, b)
			}
		}
	}
	for len(queue) > 0 {
		a := queue[0]
		queue = queue[1:]
		for _, i := range touching.of(a) {
			j := &joints[i]
			if p.joints[i].reached > 0 {
				continue
			}
			share := best.of(int(i), j, a)
			rate, _ := f.Train.Against(j.B, j.Carrier)
			p.joints[i] = passed{p.arbors[a.Index], max(0, 1/max(share, 1e-3)-1), math.Abs(rate.Float())}
			beyond := p.arbors[a.Index] * share
			for _, b := range [...]*spec.Arbor{p.bodyOf(j.A), p.bodyOf(j.B), j.Carrier.Arbor} {
				if b != nil && p.arbors[b.Index] == 0 {
					p.arbors[b.Index] = beyond
					queue = append(queue, b)
				}
			}
		}
	}
	return p
}

// touches is the joints of each body: those of the arbor with index i in
// list[from[i]:from[i+1]].
type touches struct{ from, list []int32 }

func (t touches) of(a *spec.Arbor) []int32 { return t.list[t.from[a.Index]:t.from[a.Index+1]] }

func (p passing) touching() touches {
	joints := p.f.Train.Joints
	each := func(do func(joint int, a *spec.Arbor)) {
		for i := range joints {
			j := &joints[i]
			if j.A == nil || j.Wanders {
				continue
			}
			for _, b := range [...]*spec.Arbor{p.bodyOf(j.A), p.bodyOf(j.B), j.Carrier.Arbor} {
				if b != nil {
					do(i, b)
				}
			}
		}
	}
	t := touches{from: make([]int32, len(p.f.Design.Arbors)+2)}
	each(func(_ int, a *spec.Arbor) { t.from[a.Index+2]++ })
	for i := 2; i < len(t.from); i++ {
		t.from[i] += t.from[i-1]
	}
	t.list = make([]int32, t.from[len(t.from)-1])
	each(func(i int, a *spec.Arbor) {
		t.list[t.from[a.Index+1]] = int32(i)
		t.from[a.Index+1]++
	})
	return t
}

// efficiency is which part of the power joints pass on at most.
type efficiency struct {
	spur, bevel, chain, clock float64
	gearings                  []*Gearing // by joint
	slots                     map[*spec.Part]*spec.Slot
}

func efficiencies(f *Facts) efficiency {
	e := efficiency{gearings: jointGearings(f), slots: map[*spec.Part]*spec.Slot{}}
	_, e.spur, _ = tooth.Efficiency(tooth.SpurDrive)
	_, e.bevel, _ = tooth.Efficiency(tooth.BevelDrive)
	_, e.chain, _ = tooth.Efficiency(tooth.ChainDrive)
	_, e.clock, _ = tooth.Efficiency(tooth.ClockDrive)
	for _, s := range f.Design.Slots {
		e.slots[&s.Part] = s
	}
	return e
}

// of is what passes through a joint that is driven from an arbor. Of a slot it
// is more than 1: the torque swings as the speed does.
func (e efficiency) of(joint int, j *train.Joint, from *spec.Arbor) float64 {
	if s := e.slots[j.Part]; s != nil {
		ratio := s.Offset.Or(0) / s.PinRadius.Or(1)
		switch {
		case ratio <= 0 || ratio >= 1:
			return 1
		case from == s.Slotted:
			return 1 / (1 - ratio)
		}
		return 1 + ratio
	}
	switch {
	case j.Chain != nil:
		return e.chain
	case j.Mesh == nil:
		return 1
	}
	g := e.gearings[joint]
	if g == nil {
		return e.spur
	}
	switch g.Pairing {
	case BevelPair, CrownPair:
		return e.bevel
	case ClockPair:
		return e.clock
	case WormPair:
		return wormPasses(g, from)
	}
	return e.spur
}

const (
	wormFriction = 0.1 // at rest and greased, from memory
	wormMost     = 0.9 // the best of worms, where the lead is not known
)

// wormPasses is which part of the power a worm pair passes on that is driven
// from an arbor.
func wormPasses(g *Gearing, from *spec.Arbor) float64 {
	lead, ok := g.statedLead()
	if s, known := g.Worm(); known && !ok {
		lead, ok = s.LeadAngle, true
	}
	if !ok {
		return wormMost
	}
	forward, back, err := tooth.WormEfficiency(lead, g.A.PressureAngle.Or(20), wormFriction)
	switch {
	case err != nil:
		return wormMost
	case from == g.B.Arbor:
		return back
	}
	return forward
}

type jointGearingsKey struct{}

// jointGearings is each joint's mesh as geometry, by its place in Train.Joints;
// nil where it is no mesh.
func jointGearings(f *Facts) []*Gearing {
	return Shared(f, jointGearingsKey{}, func(f *Facts) []*Gearing {
		list := Gearings(f)
		of := make([]*Gearing, len(f.Train.Joints))
		next := 0
		for i := range of {
			// Both lists are in the order of the text, and each mesh that is a
			// joint has its wheels.
			if m := f.Train.Joints[i].Mesh; m != nil {
				for list[next].Mesh != m {
					next++
				}
				of[i] = &list[next]
			}
		}
		return of
	})
}
