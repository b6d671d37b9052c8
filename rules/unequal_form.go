package rules

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "unequal-form",
		Group:    Teeth,
		Severity: Error,
		Checks:   "both wheels of a mesh have teeth of one form: both involute or both cycloidal, helices that match, shapes that run together",
		Why:      "an involute wheel does not roll on a cycloidal pinion, two right-hand helices do not meet on parallel shafts, and a bevel does not run with a spur wheel",
		Formula:  "on parallel axes and of bevels helix angles are equal and of opposite hand, in a ring of the same hand; the helices of a worm and its wheel are of one hand and make 90 degrees, as do their axes; spur runs with spur, ring, crown or worm, bevel with bevel or crown gear",
		Source:   "ISO 21771 for the helices (from memory); common practice for the rest",
		Breaks: func() string {
			return pairExample{pinion: `teeth = 8; form = "cycloidal"; module = 0.5`, wheel: "teeth = 64; module = 0.5"}.text()
		},
		Keeps: func() string {
			return pairExample{pinion: `teeth = 8; form = "cycloidal"; module = 0.5`, wheel: `teeth = 64; form = "cycloidal"; module = 0.5`}.text()
		},
		Run: unequalForm,
	})
}

func unequalForm(p *Pass) {
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		switch {
		case g.Fault == errForms:
			p.formsDiffer(g.Mesh)
		case g.Fault == errShapes:
			p.shapesDiffer(g.Mesh)
		case g.Fault == errCrossed:
			m := g.Mesh
			f := p.foundMesh(m, m.Wheels.Place(), "the axes of mesh %s cross at %s deg: a %s and a %s run on parallel axes", m.Label(), fig(g.Crossing), shape(m.A), shape(m.B))
			f.See(tiltAt(m.A.Arbor), "%s", m.A.Arbor.Title())
			f.See(tiltAt(m.B.Arbor), "%s", m.B.Arbor.Title())
			p.Report(f)
		case g.parallel() || g.Pairing == BevelPair:
			p.helicesDiffer(g)
		case g.Pairing == WormPair:
			p.wormDiffers(g)
			p.wormAxes(g)
		}
	}
}

func shape(w *spec.Wheel) string {
	if w.Is("spur") {
		return "spur wheel"
	}
	return w.Shape.Text
}

func tiltAt(a *spec.Arbor) text.Place {
	if a.Tilt.Set() {
		return a.Tilt.Place()
	}
	return a.Head
}

func (p *Pass) formsDiffer(m *spec.Mesh) {
	odd, mate := m.A, m.B
	if !isCycloidal(odd) {
		odd, mate = mate, odd
	}
	f := p.Found(&odd.Part, odd.Form.Place(), "%s has cycloidal teeth, its mate %s involute ones", odd.Title(), mate.Title())
	at := mate.Head
	if mate.Form.Set() {
		at = mate.Form.Place()
	}
	f.See(at, "the mate")
	f.See(m.Head, "mesh %s", m.Label())
	if edit, ok := Assign(mate.Form.At, mate.Teeth.At, "form", `"cycloidal"`); ok {
		f.Mend("make "+mate.Title()+" cycloidal", edit)
	}
	if edit, ok := Replace(odd.Form.At, `"involute"`); ok {
		f.Mend("make "+odd.Title()+" involute", edit)
	}
	p.Report(f)
}

func (p *Pass) shapesDiffer(m *spec.Mesh) {
	odd, mate := m.A, m.B
	if !odd.Shape.Set() || odd.Is("spur") {
		odd, mate = mate, odd
	}
	f := p.Found(&odd.Part, odd.Shape.Place(), "%s is a %s and does not run with %s, a %s: %s", odd.Title(), shape(odd), mate.Title(), shape(mate), runsWith(odd))
	at := mate.Head
	if mate.Shape.Set() {
		at = mate.Shape.Place()
	}
	f.See(at, "the mate")
	f.See(m.Head, "mesh %s", m.Label())
	p.Report(f)
}

func runsWith(w *spec.Wheel) string {
	switch w.Shape.Text {
	case "bevel":
		return "a bevel takes a bevel or a crown gear"
	case "crown":
		return "a crown wheel takes a spur pinion or a bevel"
	case "worm":
		return "a worm takes a spur or helical wheel"
	}
	return "a ring takes a spur pinion"
}

// helicesDiffer reports helices that do not lie in one another.
func (p *Pass) helicesDiffer(g *Gearing) {
	m := g.Mesh
	if !m.A.Helix.Set() && !m.B.Helix.Set() {
		return
	}
	zero := exact.Rat{}
	a, b := m.A.Helix.Exact, m.B.Helix.Exact
	if a.Equal(zero) && b.Equal(zero) {
		return
	}
	if !a.Equal(b) {
		odd, mate := m.A, m.B
		if !odd.Helix.Set() || a.Equal(zero) {
			odd, mate = mate, odd
		}
		f := p.Found(&odd.Part, odd.Helix.Place(), "%s has a helix of %s deg, its mate %s one of %s deg", odd.Title(), fig(odd.Helix.Or(0)), mate.Title(), fig(mate.Helix.Or(0)))
		f.See(m.Head, "mesh %s", m.Label())
		if value, ok := Decimal(odd.Helix.Exact); ok {
			if edit, ok := Assign(mate.Helix.At, mate.Teeth.At, "helix", value); ok {
				f.Mend("give "+mate.Title()+" the helix of "+value+" deg", edit)
			}
		}
		p.Report(f)
		return
	}
	same := m.A.HandOf.Or("right") == m.B.HandOf.Or("right")
	if same == (g.Pairing == RingPair) {
		return
	}
	w, mate, want := m.B, m.A, "opposite hands"
	if !w.HandOf.Set() && mate.HandOf.Set() {
		w, mate = mate, w
	}
	if g.Pairing == RingPair {
		want = "the same hand"
	}
	at := w.Helix.Place()
	if w.HandOf.Set() {
		at = w.HandOf.Place()
	}
	kind := "helices on parallel axes"
	if g.Pairing == BevelPair {
		kind = "the helices of two bevels"
	}
	f := p.Found(&w.Part, at, "%s is %s-hand and so is its mate %s: %s are of %s", w.Title(), w.HandOf.Or("right"), mate.Title(), kind, want)
	if g.Pairing == RingPair {
		f.Message = w.Title() + " is " + w.HandOf.Or("right") + "-hand, its mate " + mate.Title() + " " + mate.HandOf.Or("right") + "-hand: a helix and its ring are of the same hand"
	}
	f.See(m.Head, "mesh %s", m.Label())
	other := `"left"`
	if w.HandOf.Text == "left" {
		other = `"right"`
	}
	if edit, ok := Assign(w.HandOf.At, w.Helix.At, "hand", other); ok {
		f.Mend("cut "+w.Title()+" "+other[1:len(other)-1]+"-hand", edit)
	}
	p.Report(f)
}
