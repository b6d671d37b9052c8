package rules

import (
	"math"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

// JointLoad is the greatest torque that a joint bears while the drives stall.
type JointLoad struct {
	// Torque is in N mm, of the joint's B against its carrier, if more than 0.
	Torque float64
	Held   *Held  // what is held fast then
	Lacks  string // for want of what it is not known, where Torque is 0
}

// Held is something that is held fast while the drives push on until they
// stall, or a coupling slips.
type Held struct {
	Arbor *spec.Arbor
	Base  spec.Body // it is held against this
	Part  *spec.Part
	// Torque is what it is held with, in N mm; 0 where that is not known.
	Torque float64
	// Limit is the drive, the coupling or the hand that gives way.
	Limit *spec.Part
	// At is where the spec says at what torque it does.
	At    spec.At
	Lacks string // for want of what the torque is not known

	slip  spec.Number // the torque at which the part itself slips
	bears []train.Slip
}

// Loads is what a design bears while its drives stall.
type Loads struct {
	Held  []Held
	Lacks string // why nothing is known at all, "" where something is

	of []JointLoad // by the joint's place in Train.Joints
}

// Of is the load of the joint in that place of Train.Joints; nil where nothing
// loads it.
func (l *Loads) Of(joint int) *JointLoad {
	if joint >= len(l.of) || l.of[joint] == (JointLoad{}) {
		return nil
	}
	return &l.of[joint]
}

type loadsKey struct{}

// LoadsOf works out what the design's joints bear while its drives stall: each
// hand, each arm and each arbor at the end of a train is held fast in turn,
// against what carries it and against the frame. The torques follow from the
// exact rates by virtual work, planets and differentials included, less what
// rubs away between the drive and the joint or goes round in circles. A coupling
// that slips bounds them, and so does a hand that is friction-tight only.
func LoadsOf(f *Facts) *Loads {
	return Shared(f, loadsKey{}, func(f *Facts) *Loads {
		l := &Loads{}
		gives := giveways(f.Design)
		switch {
		case len(f.Design.Drives) == 0:
			l.Lacks = "the design has no drive"
		case len(gives.torque) == 0:
			l.Lacks = "no drive says its torque"
		}
		if l.Lacks == "" {
			l.work(f, gives)
		}
		return l
	})
}

// giveway is a part that gives way at a torque: a drive that stalls, a coupling
// that slips.
type giveway struct {
	part *spec.Part
	at   spec.At
	most float64 // N mm
}

// ways are the parts that decide what passes through a train.
type ways struct {
	torque   map[*spec.Part]giveway // those whose torque is known
	unknown  map[*spec.Part]string  // those that let an unknown torque through, with the reason
	uneven   map[*spec.Part]string  // those that no torque is known beyond
	coupling map[*spec.Part]bool    // of torque, those that are couplings
}

func giveways(d *spec.Design) ways {
	w := ways{map[*spec.Part]giveway{}, map[*spec.Part]string{}, map[*spec.Part]string{}, map[*spec.Part]bool{}}
	for _, v := range d.Drives {
		if v.Torque.Set() {
			w.torque[&v.Part] = giveway{&v.Part, v.Torque.At, v.Torque.Exact.Float()}
		} else {
			w.unknown[&v.Part] = v.Title() + " does not say its torque"
		}
	}
	for _, c := range d.Couples {
		switch {
		case c.SlipTorque.Set():
			w.torque[&c.Part] = giveway{&c.Part, c.SlipTorque.At, c.SlipTorque.Exact.Float()}
			w.coupling[&c.Part] = true
		case c.Gives():
			w.unknown[&c.Part] = c.Title() + " does not say at what torque it slips"
		}
	}
	for _, c := range d.Counters {
		w.uneven[&c.Part] = c.Title() + " passes on its torque unevenly"
	}
	return w
}

func (l *Loads) work(f *Facts, gives ways) {
	passes := passage(f)
	l.of = make([]JointLoad, len(f.Train.Joints))
	l.Held = ends(f)
	slips := f.Train.NewSlips()
	kept := l.Held[:0]
	for _, h := range l.Held {
		h.bears = slips.Bearing(h.Arbor, h.Base)
		if h.hold(gives, passes) {
			kept = append(kept, h)
		}
	}
	l.Held = kept
	for i := range l.Held {
		h := &l.Held[i]
		if h.Lacks == "" {
			l.bear(h, passes)
		}
	}
	for i := range l.Held {
		if h := &l.Held[i]; h.Lacks != "" {
			l.miss(h)
		}
	}
	for i := range l.Held {
		h := &l.Held[i]
		h.bears = nil
		if h.Lacks == "" {
			h.Torque *= passes.to(h.Arbor)
		}
	}
	l.alike(f)
}

// hold finds the torque, nothing rubbing, at which something gives way; it is
// false where no drive pushes at all.
func (h *Held) hold(gives ways, passes passing) bool {
	most, driven, limited := math.Inf(1), false, false
	uneven, circling := "", passes.circling(h)
	for _, s := range h.bears {
		part := s.Joint.Part
		driven = driven || s.Joint.A == nil
		if why := gives.unknown[part]; why != "" && h.Lacks == "" {
			h.Lacks = why
		}
		if why := gives.uneven[part]; why != "" {
			uneven = why
		}
		g, known := gives.torque[part]
		if !known {
			continue
		}
		torque := g.most / s.Weight
		if gives.coupling[part] {
			torque /= passes.through(s.Index)
			limited = true
		} else {
			torque *= circling
		}
		if torque < most {
			most = torque
			h.Limit, h.At = g.part, g.at
		}
	}
	if h.slip.Set() {
		if torque := h.slip.Exact.Float() / passes.to(h.Arbor); torque < most {
			most = torque
			h.Limit, h.At = h.Part, h.slip.At
		}
		limited = true
	}
	if limited {
		h.Lacks = "" // whatever else there is, no more gets past what slips
	}
	if uneven != "" {
		h.Lacks = uneven
	}
	if h.Lacks == "" {
		h.Torque = most
	}
	return driven && (h.Lacks != "" || !math.IsInf(most, 1))
}

// bear notes what the joints bear while h is held.
func (l *Loads) bear(h *Held, passes passing) {
	for _, s := range h.bears {
		torque := h.Torque * s.Weight * passes.through(s.Index)
		if torque > l.of[s.Index].Torque {
			l.of[s.Index] = JointLoad{Torque: torque, Held: h}
		}
	}
}

// miss notes why the joints that only h loads cannot be judged.
func (l *Loads) miss(h *Held) {
	for _, s := range h.bears {
		if load := &l.of[s.Index]; load.Held == nil {
			load.Lacks = h.Lacks
		}
	}
}

// alike gives the meshes of planets that are alike one load: which of them
// carries it is a matter of play.
func (l *Loads) alike(f *Facts) {
	sets := planetSets(f)
	if len(sets) == 0 {
		return
	}
	joint := make(map[*spec.Mesh]int, len(f.Design.Meshes))
	for i := range f.Train.Joints {
		if m := f.Train.Joints[i].Mesh; m != nil {
			joint[m] = i
		}
	}
	for _, set := range sets {
		l.share(set.planets, func(p planet) int { return joint[p.toFirst.Mesh] })
		l.share(set.planets, func(p planet) int { return joint[p.toNext.Mesh] })
	}
}

// share gives one joint of each planet the load of the one that bears most.
func (l *Loads) share(planets []planet, joint func(planet) int) {
	var most JointLoad
	for _, p := range planets {
		if load := l.of[joint(p)]; load.Torque > most.Torque || most == (JointLoad{}) {
			most = load
		}
	}
	for _, p := range planets {
		l.of[joint(p)] = most
	}
}
