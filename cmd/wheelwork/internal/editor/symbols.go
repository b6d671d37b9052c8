package editor

import (
	"sort"
	"strconv"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/spec"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

var symbolKinds = map[string]int{
	"arbor": lsp.SymbolField, "stud": lsp.SymbolField, "arm": lsp.SymbolInterface,
	"wheel": lsp.SymbolClass, "sprocket": lsp.SymbolClass,
	"mesh": lsp.SymbolOperator, "chain": lsp.SymbolOperator, "slot": lsp.SymbolOperator,
	"counter": lsp.SymbolOperator, "coupling": lsp.SymbolOperator,
	"hand": lsp.SymbolEvent, "marker": lsp.SymbolEvent, "clock": lsp.SymbolEvent,
	"drive": lsp.SymbolFunction, "given": lsp.SymbolConstant, "design": lsp.SymbolNamespace,
}

// part is a block as a symbol.
type part struct {
	name, kind, train string
	span, head        text.Span
}

// symbols lists the parts of a document, those of a train together: meshes and
// chains that name it, and the wheels and sprockets in them.
func symbols(q *inquiry, p *lsp.DocumentParams) (any, error) {
	var result any = []lsp.DocumentSymbol{}
	q.navigable(func(l *lens, in *file) bool {
		parts := l.parts(in)
		if q.view.tree {
			result = l.tree(in, parts)
		} else {
			result = l.flat(in, parts)
		}
		return true
	})
	return result, nil
}

func (l *lens) parts(in *file) []part {
	trains := l.trains()
	var list []part
	for _, b := range in.tree.Blocks {
		if spec.KindOf(b.Kind) == nil {
			continue
		}
		one := part{name: b.Label, kind: b.Kind, span: b.At.Join(b.KindAt), head: b.KindAt}
		if b.Label != "" {
			one.head = b.LabelAt
			one.span = one.span.Join(b.LabelAt)
		}
		switch b.Kind {
		case "mesh", "chain":
			one.train = textOf(b, "train")
			one.name = joint(b)
		case "wheel", "sprocket":
			one.train = trains[b.Label]
		}
		if one.name == "" {
			one.name = b.Kind
		}
		list = append(list, one)
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].span.Start < list[j].span.Start })
	return list
}

func textOf(b *syntax.Block, name string) string {
	if a := b.Find(name); a != nil {
		return a.Value.Text
	}
	return ""
}

// joint is how a mesh or chain is called: by its name, or its parts.
func joint(b *syntax.Block) string {
	if name := textOf(b, "name"); name != "" {
		return name
	}
	s := ""
	for _, key := range []string{"wheels", "sprockets"} {
		if a := b.Find(key); a != nil {
			for i, v := range a.Value.List {
				if i > 0 {
					s += "/"
				}
				s += v.Text
			}
		}
	}
	return s
}

// trains is the train of each wheel and sprocket: the first that a mesh or
// chain over it names.
func (l *lens) trains() map[string]string {
	of := map[string]string{}
	note := func(n spec.Names, train string) {
		for _, one := range n.List {
			if of[one.Text] == "" {
				of[one.Text] = train
			}
		}
	}
	for _, m := range l.design.Meshes {
		note(m.Wheels, m.Train.Text)
	}
	for _, c := range l.design.Chains {
		note(c.Sprockets, c.Train.Text)
	}
	return of
}

func (l *lens) tree(in *file, parts []part) []lsp.DocumentSymbol {
	list := []lsp.DocumentSymbol{}
	at := map[string]int{} // of a train in the list
	for _, p := range parts {
		whole, ok1 := l.span(in, p.span)
		head, ok2 := l.span(in, p.head)
		if !ok1 || !ok2 {
			continue
		}
		one := lsp.DocumentSymbol{Name: p.name, Detail: l.detail(&p), Kind: symbolKind(p.kind), Range: whole, Selection: head}
		if p.train == "" {
			list = append(list, one)
			continue
		}
		i, ok := at[p.train]
		if !ok {
			i = len(list)
			at[p.train] = i
			list = append(list, lsp.DocumentSymbol{Name: p.train, Detail: "train", Kind: lsp.SymbolNamespace, Range: whole, Selection: head})
		}
		list[i].Children = append(list[i].Children, one)
		if list[i].Range.End.Before(whole.End) {
			list[i].Range.End = whole.End
		}
	}
	return list
}

func (l *lens) flat(in *file, parts []part) []lsp.SymbolInformation {
	list := []lsp.SymbolInformation{}
	for _, p := range parts {
		if r, ok := l.span(in, p.span); ok {
			list = append(list, lsp.SymbolInformation{
				Name: p.name, Kind: symbolKind(p.kind), Container: p.train,
				Location: lsp.Location{URI: l.uriNow(in), Range: r},
			})
		}
	}
	return list
}

func symbolKind(kind string) int {
	if k, ok := symbolKinds[kind]; ok {
		return k
	}
	return lsp.SymbolObject
}

// detail is a part's kind, with the teeth of what has some.
func (l *lens) detail(p *part) string {
	switch p.kind {
	case "wheel":
		if w := l.design.WheelNamed(p.name); w != nil && w.Teeth.Set() {
			return "wheel, " + strconv.FormatInt(w.Teeth.N, 10) + " teeth"
		}
	case "sprocket":
		if s := l.design.SprocketNamed(p.name); s != nil && s.Teeth.Set() {
			return "sprocket, " + strconv.FormatInt(s.Teeth.N, 10) + " teeth"
		}
	}
	return p.kind
}
