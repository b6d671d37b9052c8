package rules

import (
	"math"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "backlash",
		Group:    Teeth,
		Severity: Warning,
		Checks:   "each mesh has the play it states, or where it states none a usual one, and the play of a hand's whole train stays below what the hand is to show",
		Why:      "without play a wheel that runs a little out of true jams once in a turn; with too much the hand hangs back, shakes, and shows nothing finer than its play",
		Formula:  "j = 2a (inv aw - inv aw without play); of a wheel 360 j/(pi dw) degrees; at the hand the sum of each mesh's angle over its ratio to the hand. A hand shows the angle of its tolerance, or what it turns in the time of it",
		Source:   "computed from the involute; train: SDP/SI D785 section 14 (from memory); 0.04 to 0.10 modules are usual in instruments and models, which is common practice, 0.03 to 0.06 in machines (Novexa glossary), up to 0.3 in the loosest class of fine-pitch gears (Machinery's Handbook, from memory)",
		Thresholds: []Threshold{
			{Name: "least", Dimension: quantity.Plain, Default: "0.03", Doc: "play in modules below which it is a note"},
			{Name: "most", Dimension: quantity.Plain, Default: "0.3", Doc: "play in modules above which it is a warning"},
			{Name: "hand", Dimension: quantity.Angle, Default: "6 deg", Doc: "play of a hand whose tolerance is neither an angle nor a time: a sixtieth of a turn"},
		},
		Breaks: func() string {
			return pairExample{distance: 40.5, pinion: "teeth = 20; module = 1", wheel: "teeth = 60; module = 1"}.text()
		},
		Keeps: func() string {
			return pairExample{distance: 40.08, pinion: "teeth = 20; module = 1", wheel: "teeth = 60; module = 1"}.text()
		},
		Run: backlash,
	})
}

func backlash(p *Pass) {
	list := Gearings(p.Facts)
	p.meshPlay(list)
	p.handPlay(list)
}

// meshPlay judges each mesh by itself.
func (p *Pass) meshPlay(list []Gearing) {
	least, most := p.Limit("least"), p.Limit("most")
	var want lack
	for i := range list {
		g := &list[i]
		switch {
		case g.Pairing == ClockPair:
			continue // the form has its own play
		case g.Lacks != "":
			want.of("a mesh "+g.Lacks, g.Mesh.Label())
			continue
		case g.Fault != nil, !g.Known:
			continue // other rules say why
		}
		play, ok := g.Backlash()
		if !ok {
			if !g.Placed || !g.involute() {
				want.of("neither positions nor backlash say how much play a mesh has", g.Mesh.Label())
			}
			continue
		}
		if play < -1e-9 && g.Placed {
			continue // too near: centre-distance says so where it is more than rounding
		}
		p.judgePlay(g, play, least, most)
	}
	want.tell(p)
}

// judgePlay compares the play of a mesh in mm with what it states, or with
// bounds in modules.
func (p *Pass) judgePlay(g *Gearing, play, least, most float64) {
	m, module := g.Mesh, g.module()
	stated, placed := m.Backlash.Set(), g.AtDistance()
	var f *Finding
	switch {
	case stated && placed && play < 0.8*m.Backlash.Or(0)-0.002:
		f = p.foundMesh(m, m.Backlash.Place(), "mesh %s has %s of play with its axes %s apart, wanted %s", m.Label(), mm(play), mm(g.Distance), mm(m.Backlash.Or(0)))
	case play > most*module+1e-9:
		f = p.foundMesh(m, playPlace(g), "mesh %s has %s of play, %s modules: more than %s", m.Label(), mm(max(play, 0)), fig(math.Round(max(play, 0)/module*1000)/1000), fig(most))
	case play < least*module-1e-9 && !(stated && (placed || m.Backlash.Exact.IsZero())):
		f = p.foundMesh(m, playPlace(g), "mesh %s has %s of play, %s modules: less than %s", m.Label(), mm(max(play, 0)), fig(math.Round(max(play, 0)/module*1000)/1000), fig(least)).Weigh(Note)
	default:
		return
	}
	if placed {
		f.See(placeOf(m.A.Arbor), "where %s stands", m.A.Arbor.Title())
		f.See(placeOf(m.B.Arbor), "where %s stands", m.B.Arbor.Title())
	}
	f.See(m.A.Teeth.Place(), "teeth of %s", m.A.Title())
	f.See(m.B.Teeth.Place(), "teeth of %s", m.B.Title())
	if d, ok := depthOf(g); ok && placed {
		p.moveApart(f, g, runningCentre(g, d))
	}
	p.Report(f)
}

type coaxialKey struct{}

// moveApart offers to move the freer arbor of a mesh to so many mm from the
// other.
func (p *Pass) moveApart(f *Finding, g *Gearing, distance float64) {
	bound := Shared(p.Facts, coaxialKey{}, func(f *Facts) coaxial { return coaxialArbors(f.Design) })
	free, other := g.Mesh.B.Arbor, g.Mesh.A.Arbor
	if bound.with(other) < bound.with(free) {
		free, other = other, free
	}
	if !move(p, f, free, other, distance) && bound.with(other) == 1 {
		move(p, f, other, free, distance)
	}
}

// playPlace is where the spec says what play the mesh has.
func playPlace(g *Gearing) text.Place {
	if !g.AtDistance() && g.Mesh.Backlash.Set() {
		return g.Mesh.Backlash.Place()
	}
	return g.Mesh.Wheels.Place()
}
