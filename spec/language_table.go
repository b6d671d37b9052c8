package spec

import "wheelwork/spec/quantity"

// attr makes a row of the table; what it holds follows from the field's type.
func attr[P any](name string, field func(*P) setter, doc string, options ...option) Attribute {
	a := Attribute{Name: name, Doc: doc, Holds: field(probe[P]()).holds(), field: func(part any) setter { return field(part.(*P)) }}
	for _, o := range options {
		o(&a)
	}
	return a
}

var probed any

// probe is a part whose fields are asked what they hold. The rows of a block
// come one after another and share it: a part for each would cost every start
// a tenth of a millisecond.
func probe[P any]() *P {
	p, ok := probed.(*P)
	if !ok {
		p = new(P)
		probed = p
	}
	return p
}

// An option refines an attribute of the table.
type option func(*Attribute)

func required(a *Attribute)    { a.Required = true }
func positive(a *Attribute)    { a.Sign = Positive }
func notNegative(a *Attribute) { a.Sign = NotNegative }

func unless(def string) option { return func(a *Attribute) { a.Default = def } }
func oneOf(words ...string) option {
	return func(a *Attribute) { a.Holds, a.Choices = AChoice, words }
}

func refers(r Reference) option {
	return func(a *Attribute) {
		a.Refers = r
		if a.Holds == AText {
			a.Holds = AName
		}
	}
}

func in(d quantity.Dimension) option { return func(a *Attribute) { a.Dimension = d } }

// Lengths, angles and so on, for short rows.
var (
	mm      = in(quantity.Length)
	degrees = in(quantity.Angle)
	days    = in(quantity.Time)
	rpm     = in(quantity.Speed)
	torque  = in(quantity.Torque)
)

// keep returns an add function that appends a new part to a list of the
// design. Parts are made some at a time, the more the more there are.
func keep[P any](list func(*Design) *[]*P) func(*Design, *any) any {
	return func(d *Design, room *any) any {
		l := list(d)
		made, _ := (*room).(*[]P)
		if made == nil {
			made = new([]P)
			*room = made
		}
		if len(*made) == 0 {
			*made = make([]P, min(4+len(*l), 64))
		}
		p := &(*made)[0]
		*made = (*made)[1:]
		*l = append(*l, p)
		return p
	}
}

// once returns an add function for a part that a design has one of.
func once[P any](field func(*Design) **P) func(*Design, *any) any {
	return func(d *Design, _ *any) any {
		p := new(P)
		*field(d) = p
		return p
	}
}
