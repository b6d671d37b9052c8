package rules

import (
	"fmt"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "sense-of-turning",
		Group:    Motion,
		Severity: Error,
		Checks:   "every hand that states its sense turns that way, or stands still",
		Why:      "one idler more or less turns a hand the other way round: the Moon rises in the west, and no setting mends it",
		Formula:  "the sign of the exact rate against the hand's base, counter-clockwise positive as seen from above; each outside mesh, crossed chain and mesh of opposite sense turns it round",
		Source:   "common practice",
		Breaks:   func() string { return senseExample("ccw") },
		Keeps:    func() string { return senseExample("cw") },
		Run:      senseOfTurning,
	})
}

func senseExample(sense string) string {
	return fmt.Sprintf(`
design { title = "Tide hand" }
arbor "day" {}
arbor "tide" {}
wheel "first" {
  on    = "day"
  teeth = 30
}
wheel "second" {
  on    = "tide"
  teeth = 31
}
mesh { wheels = ["first", "second"] }
clock {
  on     = "day"
  period = "solar day"
}
hand "tide" {
  on    = "tide"
  sense = "%s"
}
`, sense)
}

func senseOfTurning(p *Pass) {
	var missing lack
	for _, h := range p.Design.Hands {
		if !h.Sense.Set() {
			continue
		}
		r := p.Train.Read(h)
		if !r.Known {
			missing.of("the way it turns is not known, "+noRate(p), h.Title())
			continue
		}
		turns := train.Sense(r.Rate)
		if turns == h.Sense.Text {
			continue
		}
		path := p.Train.Path(h.Arbor, h.Base)
		f := p.Found(&h.Part, h.Sense.Place(), "%s %s, wanted %s", h.Title(), turning(r, path), h.Sense.Text)
		for _, j := range path {
			f.See(jointAt(j), "through %s, ratio %s", j.Name(), j.Ratio)
		}
		p.Report(f)
	}
	missing.tell(p)
	unsaidCounters(p)
}

// noRate says for want of what no rate of a hand is known.
func noRate(p *Pass) string {
	if !p.Train.Timed() {
		return "neither a clock nor a drive settles the time"
	}
	return "nothing turns it"
}

// turning says which way, how fast and through how many meshes a hand turns.
func turning(r train.Reading, path []*train.Joint) string {
	period, ok := r.Period()
	if !ok {
		return "stands still"
	}
	meshes, round := 0, 0
	for _, j := range path {
		if j.Mesh != nil {
			meshes++
		}
		if j.A != nil && j.Ratio.Sign() < 0 {
			round++
		}
	}
	return fmt.Sprintf("turns %s, once in %s through %s, turned round %s", train.Sense(r.Rate), days(period.Float()), plural(meshes, "mesh", "meshes"), times(round))
}

func times(n int) string {
	switch n {
	case 0:
		return "never"
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return counted(n, "time")
}

// unsaidCounters notes counters that do not say which way they move and behind
// which a hand states its sense.
func unsaidCounters(p *Pass) {
	silent := map[*spec.Part]*spec.Counter{}
	for _, c := range p.Design.Counters {
		if !c.Sense.Set() {
			silent[&c.Part] = c
		}
	}
	if len(silent) == 0 {
		return
	}
	found := map[*spec.Part]*Finding{}
	for _, h := range p.Design.Hands {
		if !h.Sense.Set() || h.Sense.Text == "still" || h.Arbor == nil {
			continue
		}
		for _, j := range p.Train.Path(h.Arbor, h.Base) {
			c := silent[j.Part]
			if c == nil {
				continue
			}
			if found[j.Part] == nil {
				found[j.Part] = unsaid(p, c)
			}
			found[j.Part].See(h.Sense.Place(), "%s behind it should turn %s", h.Title(), h.Sense.Text)
		}
	}
	for _, c := range p.Design.Counters {
		if f := found[&c.Part]; f != nil {
			p.Report(f.Weigh(Note))
		}
	}
}

func unsaid(p *Pass, c *spec.Counter) *Finding {
	f := p.Found(&c.Part, c.Head, "%s does not say its sense and is taken to turn %s the same way; a pin or finger outside the wheel it moves turns it the opposite way", c.Title(), c.Driven.Title())
	for _, sense := range [...]string{"opposite", "same"} {
		if edit, ok := Insert(c.Steps.At, "sense", `"`+sense+`"`); ok {
			f.Mend("say that it turns the "+sense+" way", edit)
		}
	}
	return f
}
