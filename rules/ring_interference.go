package rules

import (
	"math"

	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "ring-interference",
		Group:    Teeth,
		Severity: Error,
		Checks:   "a pinion runs free in its ring: the ring's tips stay off its flanks, the tips pass each other on the way out, and the pinion can be put in",
		Why:      "ring teeth of full height reach below the involute of a small pinion and scrape it; with nearly as many teeth on the pinion as on the ring the tips collide, and the pair jams or does not go together",
		Formula:  "involute: ra2^2 >= rb2^2 + (a sin aw)^2, a warning with the addendum that keeps it; trochoid: th1 z1/z2 + inv aw - inv aa2 >= th2, an error; trimming: th1 + inv aa1 - inv aw >= (z2/z1)(th2 + inv aa2 - inv aw), a note, for the pinion still goes in along its axis",
		Source:   "SDP/SI D785 eq 5-2 (from memory) and 5-4 to 5-10; the largest addendum computed from the first",
		Thresholds: []Threshold{
			{Name: "trace", Dimension: quantity.Plain, Default: "0.01", Doc: "addendum in modules that the ring may have too much"},
		},
		Breaks: func() string { return ringExample("teeth = 16; module = 1", `kind = "ring"; teeth = 48; module = 1`) },
		Keeps: func() string {
			return ringExample("teeth = 16; module = 1", `kind = "ring"; teeth = 48; module = 1; addendum = 0.79`)
		},
		Run: ringInterference,
	})
}

func ringExample(pinion, ring string) string { return pairExample{pinion: pinion, wheel: ring}.text() }

func ringInterference(p *Pass) {
	trace := p.Limit("trace")
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		if g.Pairing != RingPair {
			continue
		}
		if g.B.Teeth.N <= g.A.Teeth.N {
			f := p.Found(&g.B.Part, g.B.Teeth.Place(), "%s has %d teeth, its pinion %s %d: a ring has more", g.B.Title(), g.B.Teeth.N, g.A.Title(), g.A.Teeth.N)
			p.Report(f.See(g.A.Teeth.Place(), "the pinion's teeth"))
			continue
		}
		if g.HasFit {
			p.ringPair(g, trace)
		}
	}
	gearingsAside(p, list)
}

func (p *Pass) ringPair(g *Gearing, trace float64) {
	clear, err := g.Fit.RingClearance()
	if err != nil {
		return
	}
	ring, pinion := g.B, g.A
	see := func(f *Finding) *Finding {
		f.See(pinion.Teeth.Place(), "the pinion's teeth")
		return f.See(g.Mesh.Head, "mesh %s", g.Mesh.Label())
	}
	difference := ring.Teeth.N - pinion.Teeth.N
	switch {
	case !clear.Trochoid.Holds:
		p.Report(see(p.Found(&ring.Part, ring.Teeth.Place(), "the tips of %s and its pinion %s collide on their way out: %s more than the pinion's are too few at this depth",
			ring.Title(), pinion.Title(), teeth(difference))))
	case !clear.Trimming.Holds:
		p.Report(see(p.Found(&ring.Part, ring.Teeth.Place(), "%s goes into %s only along its axis: with no more than %s between them the tips are in its way from the side",
			pinion.Title(), ring.Title(), teeth(difference)).Weigh(Note)))
	}
	most, err := g.Fit.LargestRingAddendum()
	if clear.Involute.Holds || err != nil || g.Pair.B.Addendum <= most+trace {
		return
	}
	addendum := math.Floor(most*100+1e-6) / 100
	f := p.Found(&ring.Part, tipPlace(ring), "the tips of %s reach below the involute of its pinion %s: an addendum of %s modules is wanted at most, it has %s",
		ring.Title(), pinion.Title(), figures(most, 4), fig(g.Pair.B.Addendum)).Weigh(Warning)
	if addendum > 0 {
		if edit, ok := Assign(ring.Addendum.At, ring.Teeth.At, "addendum", fig(addendum)); ok {
			f.Mend("shorten the tips of "+ring.Title()+" to an addendum of "+fig(addendum), edit)
		}
	}
	p.Report(see(f))
}
