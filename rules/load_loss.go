package rules

import (
	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/train"
)

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
