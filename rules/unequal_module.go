package rules

import (
	"fmt"

	"wheelwork/spec"
	"wheelwork/spec/exact"
)

func init() {
	register(&Rule{
		Name:     "unequal-module",
		Group:    Teeth,
		Severity: Error,
		Checks:   "both wheels of a mesh have the same module",
		Why:      "teeth of two sizes do not fit between one another: the wheels cannot be brought to depth, and forced they jam at the first turn",
		Formula:  "module of the one = module of the other, exactly; module = 25.4 mm / diametral pitch, which a module may round to one part in a million",
		Source:   "ISO 54 and ISO 701 for the module, the inch of 25.4 mm by the agreement of 1959; of helical wheels the normal module counts",
		Breaks:   func() string { return moduleExample("0.6") },
		Keeps:    func() string { return moduleExample("0.5") },
		Run:      unequalModule,
	})
}

func moduleExample(module string) string {
	return fmt.Sprintf(`
design { title = "Tide hand" }
arbor "day" {}
arbor "tide" {}
wheel "first" {
  on     = "day"
  teeth  = 30
  module = 0.5
}
wheel "second" {
  on     = "tide"
  teeth  = 31
  module = %s
}
mesh { wheels = ["first", "second"] }
`, module)
}

func unequalModule(p *Pass) {
	var missing lack
	for _, m := range p.Design.Meshes {
		if m.A == nil || m.B == nil {
			continue
		}
		a, okA := exactModule(m.A)
		b, okB := exactModule(m.B)
		switch {
		case !okA && !okB:
			missing.of("no module of either wheel", "mesh "+m.Label())
		case !okA:
			missing.of("no module of one wheel", m.A.Title())
		case !okB:
			missing.of("no module of one wheel", m.B.Title())
		case !a.Equal(b) && !(m.A.Module.Set() != m.B.Module.Set() && SameModule(m.A, m.B)):
			f := p.Found(&m.Part, moduleAt(m.B).Place(), "%s against %s of %s: the teeth of mesh %s are of two sizes", moduleWords(m.B, b), moduleWords(m.A, a), m.A.Title(), m.Label())
			f.Part = "mesh " + m.Label()
			f.See(moduleAt(m.A).Place(), "%s of %s", moduleWords(m.A, a), m.A.Title())
			f.See(m.Wheels.Place(), "they mesh here")
			equalise(f, m.B, m.A, a)
			equalise(f, m.A, m.B, b)
			p.Report(f)
		}
	}
	missing.tell(p)
}

// moduleAt is where a wheel gives its module or pitch.
func moduleAt(w *spec.Wheel) spec.At {
	if w.Module.Set() {
		return w.Module.At
	}
	return w.Pitch.At
}

func moduleWords(w *spec.Wheel, module exact.Rat) string {
	if w.Module.Set() {
		return "module " + fig(module.Float()) + " mm"
	}
	return fmt.Sprintf("pitch %s (module %s mm)", fig(w.Pitch.Exact.Float()), fig(module.Float()))
}

// equalise adds the remedy that gives a wheel its mate's module, or pitch where
// that is what the mate gives.
func equalise(f *Finding, w, mate *spec.Wheel, module exact.Rat) {
	at, from := moduleAt(w), moduleAt(mate)
	title := fmt.Sprintf("give %s the module of %s", w.Title(), mate.Title())
	var edit Edit
	var ok bool
	switch {
	case from.Derived && sameNotation(at, from):
		// The name of a value says more than its figure.
		edit, ok = Replace(at, from.Place().Text())
	case mate.Pitch.Set():
		edit, ok = Replace(at, literal(mate.Pitch.Exact))
	case w.Pitch.Set():
		edit, ok = Replace(at, literal(module))
	default:
		edit, ok = Figure(at, module, "mm")
	}
	switch {
	case !ok:
	case w.Module.Set() == mate.Module.Set():
		f.Mend(title, edit)
	default:
		f.Mend(title, Edit{Place: at.KeyPlace(), Text: from.KeyPlace().Text()}, edit)
	}
}
