// Package syntax is what both notations are read into: blocks with labels,
// attributes and literal values, each with its place. It knows how a spec is
// written but not what it says.
package syntax

import (
	"wheelwork/spec/exact"
	"wheelwork/spec/text"
)

// Tree is one file as read.
type Tree struct {
	File   *text.File
	Blocks []*Block // in the order of the text
}

// Block is `kind "label" { ... }` in HCL, `[kind.label]` or `[[kind]]` in TOML.
type Block struct {
	Kind    string
	KindAt  text.Span
	Label   string // "" if it has none
	LabelAt text.Span
	// At covers the whole block, from its first byte to its last.
	At     text.Span
	Attrs  []Attr
	Blocks []*Block // blocks within, as in bounds
}

// Attr is `name = value`.
type Attr struct {
	Name  string
	Key   text.Span
	Value Value
}

// Kind is what sort of literal a value is.
type Kind uint8

// The kinds of value.
const (
	Invalid Kind = iota // could not be read; its problem is already told
	String
	Number
	Bool
	List
)

// Noun names the kind for messages.
func (k Kind) Noun() string {
	return [...]string{"an unreadable value", "a string", "a number", "true or false", "a list"}[k]
}

// Value is a value with its place.
type Value struct {
	Kind Kind
	At   text.Span
	// Derived is true if the text at the place is an expression over named
	// values rather than the value itself, so that a remedy must not overwrite it.
	Derived bool
	Text    string // of a String
	Number  exact.Rat
	Bool    bool
	List    []Value
}

// Find returns the attribute of that name, nil if there is none.
func (b *Block) Find(name string) *Attr {
	for i := range b.Attrs {
		if b.Attrs[i].Name == name {
			return &b.Attrs[i]
		}
	}
	return nil
}
