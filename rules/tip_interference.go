package rules

import (
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "tip-interference",
		Group:    Teeth,
		Severity: Error,
		Checks:   "the tips of a pair of involute wheels stay off the mate's flank below its involute, and off the bottom of its gaps, as do those of bevels and worms",
		Why:      "a tip that reaches too deep digs into the foot of the mate's tooth: a cut pair jams or hammers there, a generated one has lost the flank it should run on",
		Formula:  "ra2^2 <= rb2^2 + (a sin aw)^2, and the same for ra1; clearance = a - ra1 - rf2; of bevels (dedendum - addendum - x1 - x2) m",
		Source:   "Shigley section 13-7 (from memory), as a test of any shift and centre distance; clearance of 0.25 m in ISO 53 (from memory), of which common practice leaves 0.1 m",
		Thresholds: []Threshold{
			{Name: "trace", Dimension: quantity.Plain, Default: "0.05", Doc: "depth in modules up to which interference is a warning: running in wears it away"},
			{Name: "clearance", Dimension: quantity.Plain, Default: "0.1", Doc: "least clearance in modules between tip and bottom"},
		},
		Breaks: func() string {
			return pairExample{pinion: "teeth = 13; module = 1", wheel: "teeth = 50; module = 1"}.text()
		},
		Keeps: func() string {
			return pairExample{pinion: "teeth = 13; module = 1; shift = 0.24", wheel: "teeth = 50; module = 1; shift = -0.24"}.text()
		},
		Run: tipInterference,
	})
}

func tipInterference(p *Pass) {
	trace, clearance := p.Limit("trace"), p.Limit("clearance")
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		if g.Pairing == BevelPair || g.Pairing == WormPair {
			p.crossedTips(g, clearance)
			continue
		}
		if !g.HasFit || g.jams() {
			continue // too deep altogether is what centre-distance says
		}
		if g.Pairing == OutsidePair {
			p.tipReaches(g, g.A, g.B, &g.Fit.A, trace)
			p.tipReaches(g, g.B, g.A, &g.Fit.B, trace)
		}
		p.tipBottoms(g, g.A, g.B, g.Fit.A.Clearance, clearance*g.module())
		p.tipBottoms(g, g.B, g.A, g.Fit.B.Clearance, clearance*g.module())
	}
	gearingsAside(p, list)
}

// gearingsAside stands aside for the involute meshes that cannot be judged.
func gearingsAside(p *Pass, list []Gearing) {
	var want lack
	for i := range list {
		if g := &list[i]; g.Lacks != "" && g.Pairing != ClockPair {
			want.of("a mesh "+g.Lacks, g.Mesh.Label())
		}
	}
	want.tell(p)
}

// tipReaches reports a wheel whose tip passes the point where its mate's
// involute ends.
func (p *Pass) tipReaches(g *Gearing, w, mate *spec.Wheel, s *tooth.Side, trace float64) {
	if !s.Interferes {
		return
	}
	module := g.Pair.A.Module
	depth := (s.Tip - s.TipLimit) / 2
	if depth < 1e-4*module {
		return
	}
	f := p.Found(&w.Part, tipPlace(w), "the tips of %s reach %s deep into the flanks of %s: they stand at %s across, the involute of the mate's %d teeth ends for them at %s",
		w.Title(), mm(depth), mate.Title(), mm(s.Tip), mate.Teeth.N, mm(s.TipLimit))
	if depth <= trace*module {
		f.Weigh(Warning)
	}
	f.See(mate.Teeth.Place(), "the mate's teeth")
	f.See(g.Mesh.Head, "mesh %s", g.Mesh.Label())
	// The tip that just keeps off, rounded down to a hundredth of a module.
	stub := math.Floor(((s.TipLimit-s.Reference)/(2*module)-w.Shift.Or(0))*100+1e-6) / 100
	if stub >= 0.6 {
		if edit, ok := Assign(w.Addendum.At, w.Teeth.At, "addendum", fig(stub)); ok {
			f.Mend("shorten the tips of "+w.Title()+" to an addendum of "+fig(stub), edit)
		}
	}
	p.Report(f)
}

// tipPlace is where a wheel says how far its tips stand out.
func tipPlace(w *spec.Wheel) text.Place {
	switch {
	case w.Addendum.Set():
		return w.Addendum.Place()
	case w.Shift.Set():
		return w.Shift.Place()
	}
	return w.Teeth.Place()
}

// crossedTips judges the tips of bevels at the large end, and of a worm and its
// wheel.
func (p *Pass) crossedTips(g *Gearing, clearance float64) {
	module, ok := ModuleOf(g.A)
	if !ok || !g.Known || g.Fault != nil {
		return
	}
	open := 0.0 // mm by which the axes stand too far apart
	if g.Pairing == WormPair && g.Placed && g.Wanted > 0 {
		open = g.Distance - g.Wanted
	}
	for _, pair := range [...][2]*spec.Wheel{{g.A, g.B}, {g.B, g.A}} {
		w, mate := pair[0], pair[1]
		gap := open + module*(mate.Dedendum.Or(1.25)-w.Addendum.Or(1))
		if g.Pairing == BevelPair {
			gap -= module * (w.Shift.Or(0) + mate.Shift.Or(0))
		}
		p.tipBottoms(g, w, mate, gap, clearance*module)
	}
}

// tipBottoms reports a tip that nearly or quite touches the bottom of the mate's
// gaps: it stands a gap off it, in mm, where there should be least.
func (p *Pass) tipBottoms(g *Gearing, w, mate *spec.Wheel, gap, least float64) {
	if gap >= least-1e-9 {
		return
	}
	message, weight := "the tips of %s stand %s from the bottom of the gaps of %s, less than %s", Warning
	if gap < 0 {
		message, weight = "the tips of %s dig %s into the bottom of the gaps of %s: they should stay off by %s", Error
		gap = -gap
	}
	f := p.Found(&w.Part, tipPlace(w), message, w.Title(), mm(gap), mate.Title(), mm(least)).Weigh(weight)
	at := mate.Teeth.Place()
	if mate.Dedendum.Set() {
		at = mate.Dedendum.Place()
	}
	f.See(at, "the mate")
	f.See(g.Mesh.Head, "mesh %s", g.Mesh.Label())
	p.Report(f)
}
