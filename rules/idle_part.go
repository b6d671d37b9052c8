package rules

import "wheelwork/spec"

func init() {
	register(&Rule{
		Name:     "idle-part",
		Group:    Structure,
		Severity: Warning,
		Checks:   "every wheel is in a mesh, every sprocket has a chain, and every arm carries something",
		Why:      "a wheel without a mate is a mesh forgotten or a part left over: it is cut, paid for and turned for nothing",
		Source:   "common practice",
		Breaks:   func() string { return idleExample("") },
		Keeps:    func() string { return idleExample(`mesh { wheels = ["first", "spare"] }`) },
		Run:      idlePart,
	})
}

func idleExample(mesh string) string {
	return `
design { title = "Tide hand" }
arbor "crank" {}
arbor "tide" {}
arbor "lay" {}
wheel "first" {
  on    = "crank"
  teeth = 30
}
wheel "second" {
  on    = "tide"
  teeth = 31
}
wheel "spare" {
  on    = "lay"
  teeth = 32
}
mesh { wheels = ["first", "second"] }
` + mesh + "\n"
}

func idlePart(p *Pass) {
	d := p.Design
	u := used(p.Facts)
	switch {
	case len(d.Meshes) > 0:
		for _, w := range d.Wheels {
			if u.meshes[w.Index] == 0 {
				idle(p, &w.Part, "meshes nothing", w.On, w.Arbor)
			}
		}
	case len(d.Wheels) > 0:
		p.StandAside("no mesh says yet which wheels run together")
	}
	switch {
	case len(d.Chains) > 0:
		for _, s := range d.Sprockets {
			if u.chains[s.Index] == 0 {
				idle(p, &s.Part, "has no chain", s.On, s.Arbor)
			}
		}
	case len(d.Sprockets) > 0:
		p.StandAside("no chain says yet which sprockets run together")
	}
	idleArms(p)
}

func idle(p *Pass, part *spec.Part, does string, on spec.Name, arbor *spec.Arbor) {
	f := p.Found(part, part.Head, "%s %s", part.Title(), does)
	if arbor != nil {
		f.See(on.Place(), "it only turns with %s", arbor.Title())
	}
	p.Report(f)
}

// idleArms notes arms that carry no arbor and that nothing is read off. It is a
// note: what an arm bears need not be in the spec, such as a ball or a
// counterweight.
func idleArms(p *Pass) {
	d := p.Design
	if len(d.Arms) == 0 {
		return
	}
	busy := make([]bool, len(d.Arbors)) // arbors whose arms do something
	mark := func(a *spec.Arbor) {
		if a != nil {
			busy[a.Index] = true
		}
	}
	for _, a := range d.Arbors {
		if a.Carrier != nil {
			mark(a.Carrier.Arbor)
		}
	}
	for _, h := range d.Hands {
		mark(h.Arbor)
		mark(h.Base.Arbor)
	}
	for _, t := range d.Tracks {
		mark(t.Body.Arbor)
	}
	if c := d.Clock; c != nil {
		mark(c.Arbor)
		mark(c.Base.Arbor)
	}
	for _, a := range d.Arms {
		if a.Arbor != nil && !busy[a.Arbor.Index] {
			p.Report(p.Found(&a.Part, a.Head, "%s carries no arbor, no track and no hand", a.Title()).Weigh(Note))
		}
	}
}
