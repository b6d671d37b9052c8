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

// Sign is what a figure may be.
type Sign uint8

// The signs.
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

	// add makes the part in the design and returns it. What it keeps in room
	// is its own.
	add      func(d *Design, room *any) any
	number   int      // in the language
	names    []string // of the attributes
	required uint64   // a bit for each attribute that must be given
}

// Attribute returns the attribute of that name, nil if there is none.
func (k *BlockKind) Attribute(name string) *Attribute {
	if i := k.index(name, 0); i >= 0 {
		return &k.Attributes[i]
	}
	return nil
}

// index finds an attribute, -1 if there is none. The search begins at from:
// most specs keep to the order of the table.
func (k *BlockKind) index(name string, from int) int {
	for i := from; i < len(k.names); i++ {
		if k.names[i] == name {
			return i
		}
	}
	for i := range from {
		if k.names[i] == name {
			return i
		}
	}
	return -1
}

// Language is the whole language, in the order in which it is best learnt.
func Language() []*BlockKind { return language }

// KindOf returns the block of that kind, nil if there is none.
func KindOf(kind string) *BlockKind { return kinds[kind] }

func formOf(kind string) tomlread.Form {
	if k := kinds[kind]; k != nil {
		return k.Form
	}
	return tomlread.Unknown
}

var (
	language  = assemble()
	kinds     = map[string]*BlockKind{}
	kindNames []string
)

func assemble() []*BlockKind {
	var all []*BlockKind
	all = append(all, serviceBlocks[:2]...)
	all = append(all, partBlocks...)
	all = append(all, jointBlocks...)
	return append(all, serviceBlocks[2:]...)
}

func init() {
	for n, k := range language {
		k.number = n
		kinds[k.Kind] = k
		kindNames = append(kindNames, k.Kind)
		for i := range k.Attributes {
			k.names = append(k.names, k.Attributes[i].Name)
			if k.Attributes[i].Required {
				k.required |= 1 << i
			}
		}
	}
}
