package spec

import (
	"wheelwork/spec/quantity"
	"wheelwork/spec/tomlread"
)

// Holds is what kind of value an attribute holds.
type Holds uint8

// The kinds of value an attribute can hold.
const (
	AText      Holds = iota // free text
	AName                   // the name of a part
	AChoice                 // a word from Choices
	ANumber                 // a figure of the attribute's Dimension
	ACount                  // a whole number of 1 or more
	AFlag                   // true or false
	APoint                  // [x, y]
	ADate                   // "2027-01-01"
	APeriod                 // a catalogue entry or a time
	ATolerance              // "30 ppm", "1 deg in 10 yr", "1 d in 100 yr"
	ANames                  // a list of names
	ANumbers                // a list of figures
	ARanges                 // a list of whole numbers and ranges "12-40"
)

// Reference says which set of names an attribute's names belong to.
type Reference uint8

// The sets of names.
const (
	NoReference Reference = iota
	ToArbor               // arbors and studs
	ToCarrier             // arms and the frame
	ToBody                // arms, arbors and the frame
	ToWheel
	ToSprocket
	ToHand
	ToPart // kind.name
)

// Range of a figure.
type Sign uint8

// What a figure may be.
const (
	AnySign Sign = iota
	NotNegative
	Positive
)

// Attribute is one row of the language table.
type Attribute struct {
	Name      string
	Doc       string
	Holds     Holds
	Dimension quantity.Dimension
	Sign      Sign
	Choices   []string
	Refers    Reference
	Required  bool
	Default   string

	field func(part any) setter
}

// BlockKind is one block of the language.
type BlockKind struct {
	Kind       string
	Doc        string
	Form       tomlread.Form
	Attributes []Attribute

	// add makes the part in the design and returns it, nil if it is not kept.
	add func(d *Design) any
}

// Attribute returns the attribute of that name, nil if there is none.
func (k *BlockKind) Attribute(name string) *Attribute {
	for i := range k.Attributes {
		if k.Attributes[i].Name == name {
			return &k.Attributes[i]
		}
	}
	return nil
}

// Language is the whole language, in the order in which it is best learnt.
func Language() []*BlockKind { return language }

// KindOf returns the block of that kind, nil if there is none.
func KindOf(kind string) *BlockKind {
	for _, k := range language {
		if k.Kind == kind {
			return k
		}
	}
	return nil
}

func formOf(kind string) tomlread.Form {
	if k := KindOf(kind); k != nil {
		return k.Form
	}
	return tomlread.Unknown
}

// An option refines an attribute of the table.
type option func(*Attribute)

func required(a *Attribute)    { a.Required = true }
func positive(a *Attribute)    { a.Sign = Positive }
func notNegative(a *Attribute) { a.Sign = NotNegative }

func in(d quantity.Dimension) option { return func(a *Attribute) { a.Dimension = d } }
func refers(r Reference) option {
	return func(a *Attribute) {
		a.Refers = r
		if a.Holds == AText {
			a.Holds = AName
		}
	}
}
func unless(def string) option { return func(a *Attribute) { a.Default = def } }
func oneOf(words ...string) option {
	return func(a *Attribute) { a.Holds, a.Choices = AChoice, words }
}

// attr makes a row of the table; what it holds follows from the field's type.
func attr[P any](name string, field func(*P) setter, doc string, options ...option) Attribute {
	a := Attribute{Name: name, Doc: doc, Holds: field(new(P)).holds(), field: func(part any) setter { return field(part.(*P)) }}
	for _, o := range options {
		o(&a)
	}
	return a
}
