package spec

import "iter"

// names are the sets of names of a design.
type names struct {
	arbors    map[string]*Arbor
	arms      map[string]*Arm
	wheels    map[string]*Wheel
	sprockets map[string]*Sprocket
	hands     map[string]*Hand
	others    map[partName]*Part // of the kinds that only stages name
}

type partName struct{ kind, name string }

// ArborNamed returns the arbor or stud of that name, nil if there is none.
func (d *Design) ArborNamed(name string) *Arbor { return d.names.arbors[name] }

// ArmNamed returns the arm of that name, nil if there is none.
func (d *Design) ArmNamed(name string) *Arm { return d.names.arms[name] }

// WheelNamed returns the wheel of that name, nil if there is none.
func (d *Design) WheelNamed(name string) *Wheel { return d.names.wheels[name] }

// SprocketNamed returns the sprocket of that name, nil if there is none.
func (d *Design) SprocketNamed(name string) *Sprocket { return d.names.sprockets[name] }

// HandNamed returns the hand of that name, nil if there is none.
func (d *Design) HandNamed(name string) *Hand { return d.names.hands[name] }

// StageKinds are the kinds of part a stage can add.
var StageKinds = []string{"arbor", "stud", "arm", "wheel", "sprocket", "chain", "slot", "counter", "coupling", "track", "drive", "hand", "marker"}

// PartNamed returns the part of a kind of StageKinds, nil if there is none.
func (d *Design) PartNamed(kind, name string) *Part {
	switch kind {
	case "arbor", "stud":
		if a := d.names.arbors[name]; a != nil && a.Kind == kind {
			return &a.Part
		}
	case "arm":
		return lookUp(d.names.arms, name)
	case "wheel":
		return lookUp(d.names.wheels, name)
	case "sprocket":
		return lookUp(d.names.sprockets, name)
	case "hand":
		return lookUp(d.names.hands, name)
	}
	return d.names.others[partName{kind, name}]
}

func lookUp[P part](set map[string]P, name string) *Part {
	if p, ok := set[name]; ok {
		return p.part()
	}
	return nil
}

// namesOf goes through the names of the kind, in the order of the design.
func (d *Design) namesOf(kind string) iter.Seq[string] {
	switch kind {
	case "arbor", "stud":
		return func(yield func(string) bool) {
			for _, a := range d.Arbors {
				if a.Kind == kind && !yield(a.Name.Text) {
					return
				}
			}
		}
	case "arm":
		return each(d.Arms)
	case "wheel":
		return each(d.Wheels)
	case "sprocket":
		return each(d.Sprockets)
	case "hand":
		return each(d.Hands)
	case "slot":
		return each(d.Slots)
	case "counter":
		return each(d.Counters)
	case "coupling":
		return each(d.Couples)
	case "track":
		return each(d.Tracks)
	case "drive":
		return each(d.Drives)
	case "marker":
		return each(d.Markers)
	case "chain":
		return func(yield func(string) bool) {
			for _, c := range d.Chains {
				if !yield(c.Named.Text) {
					return
				}
			}
		}
	}
	return each[*Part](nil)
}

// each goes through the names of parts.
func each[P part](parts []P) iter.Seq[string] {
	return func(yield func(string) bool) {
		for _, p := range parts {
			if !yield(p.part().Name.Text) {
				return
			}
		}
	}
}

// and goes through several lists of names, and the frame's where it is one.
func and(lists ...iter.Seq[string]) iter.Seq[string] {
	return func(yield func(string) bool) {
		for _, list := range lists {
			for name := range list {
				if !yield(name) {
					return
				}
			}
		}
	}
}

func frame(yield func(string) bool) { yield(Frame) }
