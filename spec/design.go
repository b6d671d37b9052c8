// Package spec holds a design as its text says it: blocks and attributes with
// the place of every value, read from HCL or TOML into one model. What the
// parts do together is found by package train, what is wrong with it by
// package rules.
package spec

import (
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// Design is one design: a file with a `design` block and all files it uses.
type Design struct {
	Files []*text.File   // the design's own file first
	Trees []*syntax.Tree // as each of them was read, named values put in

	Head      Head
	Arbors    []*Arbor // arbors and studs
	Arms      []*Arm
	Wheels    []*Wheel
	Sprockets []*Sprocket
	Meshes    []*Mesh
	Chains    []*Chain
	Slots     []*Slot
	Counters  []*Counter
	Couples   []*Coupling
	Tracks    []*Track
	Clock     *Clock
	Drives    []*Drive
	Hands     []*Hand
	Markers   []*Marker
	Stock     *Stock
	Dividing  *Dividing
	Stages    []*Stage
	Bounds    []*Bounds
	Waivers   []Waiver

	names names
}

// Part is what every block has.
type Part struct {
	Kind string
	Name Name       // the label; not set where the block has none
	At   text.Place // the whole block
	Head text.Place // its first line's kind and label
}

func (p *Part) part() *Part { return p }

// Head is the `design` block.
type Head struct {
	Part
	Title   Name
	Epoch   Date
	Horizon Number // days
	Uses    Names
}

// Arbor is a turning shaft or tube, or a stud that does not turn on its carrier.
type Arbor struct {
	Part
	Stud           bool
	CarriedBy      Name
	Position       Point // `at`
	Radius, Bear   Number
	Diameter, Bore Number
	From, To       Number
	Tilt, Toward   Number

	Index   int    // its place in Design.Arbors
	Carrier *Arm   // nil for the frame
	Arms    []*Arm // the arms that are one body with this arbor
}

// Arm is a body that turns with the arbor in its middle and carries arbors.
type Arm struct {
	Part
	On             Name
	Reach, Z, Face Number

	Arbor *Arbor
}

// Wheel is a toothed part fixed to an arbor.
type Wheel struct {
	Part
	On            Name
	Teeth         Count
	Module, Pitch Number
	Shape         Name // `kind`
	Form          Name
	PressureAngle Number
	Shift         Number
	Addendum      Number
	Dedendum      Number
	Helix         Number
	HandOf        Name // `hand`
	Z, Face, Bore Number
	Material      Name

	Index int // its place in Design.Wheels
	Arbor *Arbor
}

// Sprocket is a chain wheel.
type Sprocket struct {
	Part
	On    Name
	Teeth Count
	Z     Number

	Index int // its place in Design.Sprockets
	Arbor *Arbor
}

// Mesh is two wheels in engagement.
type Mesh struct {
	Part
	Wheels   Names
	Named    Name // `name`
	Train    Name
	Sense    Name
	Backlash Number

	A, B *Wheel
}

// Chain is a chain over sprockets.
type Chain struct {
	Part
	Sprockets Names
	Size      Name
	Pitch     Number
	Links     Count
	Crossed   Flag
	Named     Name
	Train     Name

	Over []*Sprocket
}

// Slot is a pin on one arbor that drives a slot on another.
type Slot struct {
	Part
	PinOn, SlotOn     Name
	PinRadius, Offset Number

	Pin, Slotted *Arbor
}

// Counter moves one arbor by a step for each turn of another.
type Counter struct {
	Part
	From, To Name
	Steps    Count
	Sort     Name // `kind`
	Sense    Name

	Driver, Driven *Arbor
}

// Coupling makes two arbors turn as one.
type Coupling struct {
	Part
	Arbors     Names
	Sort       Name // `kind`
	Slips      Flag
	SlipTorque Number // N mm

	A, B *Arbor
}

// Gives reports whether the coupling slips at some torque.
func (c *Coupling) Gives() bool { return c.Slips.On || c.SlipTorque.Set() }

// Track is an inclined ring that a follower climbs.
type Track struct {
	Part
	On           Name
	Tilt, Radius Number

	Body Body
}

// Clock fixes model time.
type Clock struct {
	Part
	On, Against Name
	Period      Period
	Pace        Number // days that one period should take at full speed

	Arbor *Arbor
	Base  Body
}

// Drive is what turns the model.
type Drive struct {
	Part
	On     Name
	Speed  Number // rpm
	Torque Number // N mm
	By     Name

	Arbor *Arbor
}

// Hand is what a person reads.
type Hand struct {
	Part
	On, Against Name
	Shows       Period
	Period      Period
	Ratio       Number
	Of          Name
	Within      Tolerance
	Sense       Name
	SlipTorque  Number // N mm; set where it slips on its arbor

	Arbor  *Arbor
	Base   Body
	OfHand *Hand
}

// Marker is an arc on a hand that foretells an event.
type Marker struct {
	Part
	OnHand                    Name // `hand`
	Event                     Name
	HalfAngle, Length, Radius Number

	Hand *Hand
}

// Stock is what there is to build from.
type Stock struct {
	Part
	Teeth   Ranges
	Modules Numbers
	Cutters Names
	Chains  Names
}

// Dividing is the dividing head.
type Dividing struct {
	Part
	Ratio   Number
	Circles Ranges
}

// Stage is a step of the assembly.
type Stage struct {
	Part
	Order Number
	Parts Names

	Members []Member
}

// Member is one part named by a stage, nil Part if the name is not known.
type Member struct {
	Name Name
	Part *Part
}

// Bounds is a severity and thresholds for one rule, as written; the rules
// themselves know what they mean.
type Bounds struct {
	Rule   Name
	At     text.Place
	Values []Bound
}

// Bound is one attribute of a bounds block. Value is a Number, a Name or a Flag.
type Bound struct {
	Key   string
	Value any
	At    At
}

// Body is what turns as one: the frame, or an arbor with the arm fixed to it.
// Arbor is nil for the frame.
type Body struct{ Arbor *Arbor }

// Is reports whether the wheel is of the shape; "spur" is what it is unless said.
func (w *Wheel) Is(shape string) bool { return w.Shape.Or("spur") == shape }

// CarrierName is the name of the arm that carries the arbor, or "frame".
func (a *Arbor) CarrierName() string {
	if a.Carrier == nil {
		return Frame
	}
	return a.Carrier.Name.Text
}

// Frame is the name of what stands still.
const Frame = "frame"
