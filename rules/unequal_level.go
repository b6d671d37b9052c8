package rules

import (
	"wheelwork/rules/chain"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "unequal-level",
		Group:    Fit,
		Severity: Error,
		Checks:   "mates on parallel axes lie at one level, and so do the sprockets of a chain",
		Why:      "wheels that lie at two levels pass over each other, and a chain that runs aslant climbs its sprockets",
		Formula: "height that both wheels share / face of the narrower one: nothing is an error, less than the threshold a warning; " +
			"a sprocket's height less that of the chain's first: more than the threshold is a warning, more than the width of its teeth an error",
		Source: "common practice",
		Thresholds: []Threshold{
			{Name: "share", Dimension: quantity.Plain, Default: "0.75", Doc: "mates that share less of the narrower face than this are a warning"},
			{Name: "aslant", Dimension: quantity.Length, Default: "0.3 mm", Doc: "sprockets of a chain that lie further from one level are a warning"},
		},
		Breaks: func() string { return levelExample("14") },
		Keeps:  func() string { return levelExample("10") },
		Run:    unequalLevel,
	})
}

func levelExample(z string) string {
	return `
design { title = "Two wheels" }
arbor "day" {}
arbor "lay" {}
wheel "day" {
  on    = "day"
  teeth = 30
  z     = 10
  face  = 3
}
wheel "lay" {
  on    = "lay"
  teeth = 47
  z     = ` + z + `
  face  = 3
}
mesh { wheels = ["day", "lay"] }
`
}

func unequalLevel(p *Pass) {
	var wants lack
	u := used(p.Facts)
	share := p.Limit("share")
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		if !g.parallel() || leans(p, g.A.Arbor) || leans(p, g.B.Arbor) {
			continue
		}
		a, b := g.Mesh.A, g.Mesh.B
		if !a.Z.Set() || !a.Face.Set() || !b.Z.Set() || !b.Face.Set() {
			wants.of("these meshes have wheels without z or face", g.Mesh.Label())
			continue
		}
		mated(p, u, g.Mesh, share)
	}
	for _, c := range p.Design.Chains {
		sprocketLevels(p, c, &wants)
	}
	wants.tell(p)
}

// leans reports whether an arbor's heights say nothing, for its axis is not
// upright.
func leans(p *Pass, a *spec.Arbor) bool {
	for ; a != nil; a = a.Carrier.Arbor {
		if a.Tilt.Or(0) != 0 {
			return true
		}
		if a.Carrier == nil {
			return false
		}
	}
	return false
}

// mated judges the wheels of one mesh.
func mated(p *Pass, u use, m *spec.Mesh, least float64) {
	a, b := m.A, m.B
	za, zb, fa, fb := a.Z.Exact.Float(), b.Z.Exact.Float(), a.Face.Exact.Float(), b.Face.Exact.Float()
	shared := min(za+fa, zb+fb) - max(za, zb)
	if shared >= least*min(fa, fb)-1e-9 {
		return
	}
	if laterOf(p.Design, &a.Part, &b.Part) == &a.Part {
		a, b, za, zb, fa, fb = b, a, zb, za, fb, fa
	}
	var f *Finding
	if shared <= 1e-9 {
		f = p.Found(&b.Part, b.Z.Place(), "%s lies at %s to %s, its mate %s at %s to %s: they do not meet", b.Title(), number(zb), mm(zb+fb), a.Title(), number(za), mm(za+fa))
	} else {
		f = p.Found(&b.Part, b.Z.Place(), "%s at %s to %s and its mate %s at %s to %s share %s, less than %s of the narrower face", b.Title(), number(zb), mm(zb+fb),
			a.Title(), number(za), mm(za+fa), mm(shared), figures(least, 3)).Weigh(Warning)
	}
	f.See(a.Z.Place(), "the level of %s", a.Title())
	f.See(m.Wheels.Place(), "they mesh here")
	for _, move := range [...][2]*spec.Wheel{{b, a}, {a, b}} {
		// One that has no other mate moves to its mate's level.
		if u.meshes[move[0].Index] != 1 {
			continue
		}
		if edit, ok := Figure(move[0].Z.At, move[1].Z.Exact, "mm"); ok {
			f.Mend("move "+move[0].Title()+" to "+measure(move[1].Z), edit)
			break
		}
	}
	p.Report(f)
}

// sprocketLevels judges the sprockets of one chain.
func sprocketLevels(p *Pass, c *spec.Chain, wants *lack) {
	var first *spec.Sprocket
	size, sized := chain.Lookup(c.Size.Text)
	width, err := chain.ToothWidth(size.Pitch, size.InnerWidth)
	for _, s := range c.Over {
		switch {
		case s.Arbor == nil || leans(p, s.Arbor):
			continue
		case !s.Z.Set():
			wants.of("these sprockets have no z", s.Title())
			continue
		case first == nil:
			first = s
			continue
		}
		off := s.Z.Exact.Sub(first.Z.Exact).Abs()
		if off.Cmp(p.Bound("aslant")) <= 0 {
			continue
		}
		f := p.Found(&s.Part, s.Z.Place(), "%s lies at %s and %s, over which the chain runs too, at %s: %s from one level, %s at most are wanted", s.Title(), measure(s.Z),
			first.Title(), measure(first.Z), mm(off.Float()), mm(p.Limit("aslant")))
		if sized && err == nil && off.Float() <= width {
			f.Weigh(Warning)
		}
		f.See(first.Z.Place(), "the level of %s", first.Title())
		if edit, ok := Figure(s.Z.At, first.Z.Exact, "mm"); ok {
			f.Mend("move "+s.Title()+" to "+measure(first.Z), edit)
		}
		p.Report(f)
	}
}
