package spec

import (
	"wheelwork/rules/sky"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
)

// At says where an attribute stands. The zero At belongs to one that is not
// given.
type At struct {
	File *text.File
	Key  text.Span // the attribute's name
	Val  text.Span // its value
	// Derived is true if the text of the value is an expression over named
	// values: a remedy must not overwrite it.
	Derived bool
}

// Set reports whether the attribute is given.
func (a At) Set() bool { return a.File != nil }

// Place is where the value stands.
func (a At) Place() text.Place { return text.Place{File: a.File, Span: a.Val} }

// KeyPlace is where the attribute's name stands.
func (a At) KeyPlace() text.Place { return text.Place{File: a.File, Span: a.Key} }

// Name is a name, a word from a fixed choice, or free text.
type Name struct {
	At
	Text string
}

// Or is the text, or def if it is not given.
func (n Name) Or(def string) string {
	if n.Set() {
		return n.Text
	}
	return def
}

// Names is a list of names, each with its own place.
type Names struct {
	At
	List []Name
}

// Number is an exact figure in the base unit of its dimension.
type Number struct {
	At
	Exact exact.Rat
}

// Or is the figure as a float for geometry, or def if it is not given.
func (n Number) Or(def float64) float64 {
	if n.Set() {
		return n.Exact.Float()
	}
	return def
}

// Numbers is a list of figures, each with its own place.
type Numbers struct {
	At
	List []Number
}

// Count is a whole number.
type Count struct {
	At
	N int64
}

// Flag is true or false.
type Flag struct {
	At
	On bool
}

// Point is [x, y] in millimetres.
type Point struct {
	At
	X, Y Number
}

// Date is a calendar day, and the time of day in UT if one is said.
type Date struct {
	At
	Text             string
	Year, Month, Day int
	DayFraction      float64
}

// Tolerance is what a hand may be off by.
type Tolerance struct {
	At
	quantity.Tolerance
}

// Period is how long one turn takes: a catalogue entry or a quantity.
type Period struct {
	At
	Days exact.Rat
	// Entry is the catalogue's, "" for a quantity.
	Entry string
	// Named is the name of the catalogue as written, which may be another than the
	// entry's own.
	Named string
	// Quoted is the text of a quantity as written, with its digits.
	Quoted string
}

// Known returns the catalogue's entry of the period, if it is one.
func (p Period) Known() (sky.Period, bool) {
	if p.Entry == "" {
		return sky.Period{}, false
	}
	return sky.Lookup(p.Entry)
}

// Ranges is a list of whole numbers and ranges ("12-40") of them.
type Ranges struct {
	At
	List []Range
}

// Range is the whole numbers From to To, both included.
type Range struct {
	At
	From, To int64
}

// Holds reports whether n is in the list.
func (r Ranges) Holds(n int64) bool {
	for _, one := range r.List {
		if one.From <= n && n <= one.To {
			return true
		}
	}
	return false
}
