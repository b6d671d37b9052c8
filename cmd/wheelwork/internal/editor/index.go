package editor

import (
	"sort"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/scan"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// symbol is a name in one of the sets of names of a design.
type symbol struct{ set, name string }

// The sets that are no kind of block. Arbors and studs are all in "arbor",
// wheels and sprockets in "wheel"; every other kind has a set of its own.
const (
	trains  = "train"
	periods = "period" // of the catalogue
	values  = "given"
	ruled   = "rule"
	paths   = "file" // that a design uses
)

// mention is a place that names something.
type mention struct {
	symbol
	file *file
	span text.Span // with the quotes, if it has any
	how  how
	def  bool // whether the thing is made here
	// derived is whether the text is an expression whose value is the name.
	derived bool
}

// how is how a name is written.
type how uint8

const (
	asText  how = iota // a string that is the name
	asPart             // a string "kind.name"
	asLabel            // a label, or in TOML a part of a key
	asWord             // a bare word
)

// index is the mentions of all files of a model.
type index struct {
	all []mention // in the order of files and places
	of  map[*file][]mention
}

// index finds what the files name. The caller holds the model's mutex, and the
// model is read.
func (m *model) index() *index {
	if m.indexed != nil {
		return m.indexed
	}
	x := &index{of: map[*file][]mention{}}
	for _, f := range m.files {
		t := taker{model: m, file: f}
		t.blocks(f.tree.Blocks)
		t.scanned()
		sort.SliceStable(t.list, func(i, j int) bool { return t.list[i].span.Start < t.list[j].span.Start })
		x.of[f] = t.list
		x.all = append(x.all, t.list...)
	}
	m.indexed = x
	return x
}

// at is the mention that an offset touches, nil if there is none.
func (x *index) at(f *file, offset int32) *mention {
	list := x.of[f]
	i := sort.Search(len(list), func(i int) bool { return list[i].span.End >= offset })
	if i < len(list) && list[i].span.Start <= offset {
		return &list[i]
	}
	return nil
}

// taker gathers the mentions of one file.
type taker struct {
	model *model
	file  *file
	list  []mention
}

func (t *taker) add(set, name string, span text.Span, how how, def, derived bool) {
	if name != "" && span.Len() > 0 {
		t.list = append(t.list, mention{symbol{set, name}, t.file, span, how, def, derived})
	}
}

// setOf is the set of names that a kind of block adds to.
func setOf(kind string) string {
	switch kind {
	case "stud":
		return "arbor"
	case "sprocket":
		return "wheel"
	}
	return kind
}

func (t *taker) blocks(list []*syntax.Block) {
	for _, b := range list {
		kind := spec.KindOf(b.Kind)
		if kind == nil {
			continue
		}
		switch kind.Form {
		case tomlread.Labelled:
			t.add(setOf(b.Kind), b.Label, b.LabelAt, asLabel, true, false)
		case tomlread.Grouped:
			t.add(ruled, b.Label, b.LabelAt, asLabel, false, false)
			for _, inner := range b.Blocks {
				t.add(ruled, inner.Kind, inner.KindAt, asLabel, false, false)
			}
		}
		for i := range b.Attrs {
			a := &b.Attrs[i]
			if row := kind.Attribute(a.Name); row != nil {
				t.value(kind, row, &a.Value, a.Value.Derived)
			}
		}
	}
}

func (t *taker) value(kind *spec.BlockKind, a *spec.Attribute, v *syntax.Value, derived bool) {
	if v.Kind == syntax.List {
		for i := range v.List {
			t.value(kind, a, &v.List[i], derived)
		}
		return
	}
	derived = derived || v.Derived
	if v.Kind != syntax.String {
		return
	}
	switch {
	case a.Refers == spec.ToPart:
		if part, name, ok := strings.Cut(v.Text, "."); ok {
			t.add(setOf(part), name, v.At, asPart, false, derived)
		}
	case a.Refers != spec.NoReference:
		if set := t.refers(a.Refers, v.Text); set != "" {
			t.add(set, v.Text, v.At, asText, false, derived)
		}
	case a.Name == "train" && a.Holds == spec.AText:
		t.add(trains, v.Text, v.At, asText, false, derived)
	case a.Name == "name" && (kind.Kind == "chain" || kind.Kind == "mesh"):
		t.add(kind.Kind, v.Text, v.At, asText, true, derived)
	case a.Name == "uses":
		t.add(paths, v.Text, v.At, asText, false, derived)
	case a.Holds == spec.APeriod:
		if p, ok := sky.Lookup(v.Text); ok {
			t.add(periods, p.Name, v.At, asText, false, derived)
		}
	}
}

// refers is the set that a name belongs to, "" for the frame's.
func (t *taker) refers(r spec.Reference, name string) string {
	switch r {
	case spec.ToArbor:
		return "arbor"
	case spec.ToWheel, spec.ToSprocket:
		return "wheel"
	case spec.ToHand:
		return "hand"
	}
	d := t.model.design
	switch {
	case name == spec.Frame:
		return ""
	case r == spec.ToCarrier, d.ArmNamed(name) != nil, d.ArborNamed(name) == nil:
		return "arm"
	}
	return "arbor"
}

// scanned adds what the trees do not tell: named values, and labels of TOML in
// keys beside the first.
func (t *taker) scanned() {
	toml := t.file.toml()
	o := scan.Read(t.file.Bytes, toml, formOf)
	if toml {
		first := map[int32]bool{}
		for i := range t.list {
			first[t.list[i].span.Start] = true
		}
		for _, l := range o.Labels {
			if !first[l.Start] && spec.KindOf(l.Kind) != nil {
				t.add(setOf(l.Kind), l.Text, text.Span{Start: l.Start, End: l.End}, asLabel, true, false)
			}
		}
		return
	}
	for _, b := range o.Blocks {
		if b.Kind.Text == values && b.Within == nil {
			for _, e := range b.Entries {
				t.add(values, e.Key.Text, text.Span{Start: e.Key.Start, End: e.Key.End}, asWord, true, false)
			}
		}
	}
	for _, g := range o.Given {
		t.add(values, g.Text, text.Span{Start: g.Start, End: g.End}, asWord, false, false)
	}
}

func formOf(kind string) tomlread.Form {
	if k := spec.KindOf(kind); k != nil {
		return k.Form
	}
	return tomlread.Unknown
}

func (f *file) toml() bool { return strings.HasSuffix(f.path, ".toml") }
