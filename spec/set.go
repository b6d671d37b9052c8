package spec

import (
	"strings"

	"wheelwork/spec/syntax"
)

// A setter is a field of a part that takes a value of the text.
type setter interface {
	holds() Holds
	set(r *reading, a *Attribute, at At, v *syntax.Value)
}

func (*Name) holds() Holds      { return AText }
func (*Names) holds() Holds     { return ANames }
func (*Number) holds() Holds    { return ANumber }
func (*Numbers) holds() Holds   { return ANumbers }
func (*Count) holds() Holds     { return ACount }
func (*Flag) holds() Holds      { return AFlag }
func (*Point) holds() Holds     { return APoint }
func (*Date) holds() Holds      { return ADate }
func (*Tolerance) holds() Holds { return ATolerance }
func (*Period) holds() Holds    { return APeriod }
func (*Ranges) holds() Holds    { return ARanges }

// wants tells that a value is not of the kind the attribute holds.
func (r *reading) wants(a *Attribute, v *syntax.Value, what string) {
	if v.Kind != syntax.Invalid { // else it is already told
		r.problem(v.At, "", "%s is %s, not %s", a.Name, what, v.Kind.Noun())
	}
}

// listing reports whether the value is a list, and tells if it is not.
func (r *reading) listing(a *Attribute, v *syntax.Value, what string) bool {
	if v.Kind != syntax.List {
		r.wants(a, v, "a list of "+what)
		return false
	}
	return true
}

// holdsNo tells that an element is not of the kind its list holds.
func (r *reading) holdsNo(a *Attribute, e *syntax.Value, what string) {
	if e.Kind != syntax.Invalid {
		r.problem(e.At, "", "%s holds %s, not %s", a.Name, what, e.Kind.Noun())
	}
}

func (n *Name) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	if v.Kind != syntax.String {
		r.wants(a, v, "a string")
		return
	}
	word := v.Text
	switch {
	case a.Choices != nil && !contains(a.Choices, word):
		r.problem(v.At, r.nearOf(word, a.Choices), "%s is one of %s, not %q", a.Name, strings.Join(a.Choices, ", "), clip(word))
		// The word that was meant stands for it, so that nothing else is told because of it.
		if word = Nearest(word, a.Choices); word == "" {
			return
		}
	case a.Holds == AName && !r.short(word, v.At):
		return
	}
	*n = Name{At: at, Text: word}
}

func (n *Names) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	if !r.listing(a, v, "names") {
		return
	}
	list := make([]Name, len(v.List))
	for i := range v.List {
		switch e := &v.List[i]; {
		case e.Kind != syntax.String:
			r.holdsNo(a, e, "names") // its Name stays unset: the others keep their places
		case strings.TrimSpace(e.Text) == "":
			r.problem(e.At, "", "%s holds names, and one of them is empty", a.Name)
		case a.Refers == NoReference || r.short(e.Text, e.At):
			list[i] = Name{At: element(at, e), Text: e.Text}
		}
	}
	*n = Names{At: at, List: list}
}

func (f *Flag) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	if v.Kind != syntax.Bool {
		r.wants(a, v, "true or false")
		return
	}
	*f = Flag{At: at, On: v.Bool}
}

func (p *Point) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	switch {
	case v.Kind != syntax.List:
		r.wants(a, v, "[x, y]")
		return
	case len(v.List) != 2:
		r.problem(v.At, "", "%s is [x, y], not a list of %d", a.Name, len(v.List))
		return
	}
	x, ok1 := r.figure(a, &v.List[0])
	y, ok2 := r.figure(a, &v.List[1])
	if ok1 && ok2 {
		*p = Point{At: at, X: Number{At: element(at, &v.List[0]), Exact: x}, Y: Number{At: element(at, &v.List[1]), Exact: y}}
	}
}

func element(at At, v *syntax.Value) At {
	return At{File: at.File, Key: at.Key, Val: v.At, Derived: v.Derived || at.Derived}
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}
