package rules

import (
	"fmt"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "pinch",
		Group:    Load,
		Severity: Note,
		Checks:   "the tip of an arm does not press hard on what it is driven against",
		Why:      "an arm that goes slowly is easily reached into, and behind a great reduction a small motor presses hard: fingers, and those of children first, are caught between the arm and what stands still. This is a caution and never a clearance: silence does not make an arm safe, wheelwork never certifies safety; guards, clutches and the judgement of someone licensed to give it do, under the rules of the place",
		Formula:  "F = T/reach, T of the stalled drive by the exact ratio of rates, less what rubs away, no more than couplings let pass",
		Source:   "75 N is what powered guards may press with that have no sensing edge (ISO 14120, from memory), and is a warning; 10 N is common practice for what people of all ages may touch",
		Thresholds: []Threshold{
			{Name: "caution", Dimension: quantity.Plain, Default: "10", Doc: "newtons at the tip from which on it is a note"},
			{Name: "hurt", Dimension: quantity.Plain, Default: "75", Doc: "newtons at the tip from which on it is a warning"},
		},
		Breaks: func() string { return pinchExample("3 N m") },
		Keeps:  func() string { return pinchExample("1 N m") },
		Run:    pinch,
	})
}

func pinchExample(torque string) string {
	return fmt.Sprintf(`
design { title = "An arm behind a clutch" }
arbor "hub" {}
arbor "tube" {}
coupling "clutch" {
  arbors      = ["hub", "tube"]
  slips       = true
  slip_torque = "%s"
}
arm "year" {
  on    = "tube"
  reach = 240
}
drive "motor" {
  on     = "hub"
  speed  = "1 rpm"
  torque = "20 N m"
}
`, torque)
}

// noClearance stands at the end of every word on forces.
const noClearance = "; a caution, not a clearance: wheelwork never certifies safety"

func pinch(p *Pass) {
	if len(p.Design.Arms) == 0 {
		return
	}
	loads := LoadsOf(p.Facts)
	if loads.Lacks != "" {
		p.StandAside("%s", loads.Lacks)
		return
	}
	caution, hurt := p.Limit("caution"), p.Limit("hurt")
	var want lack
	for _, a := range p.Design.Arms {
		held, lacks := loads.against(a)
		switch {
		case held == nil && lacks == "":
			continue // nothing turns it
		case held == nil:
			want.of(lacks, a.Name.Text)
			continue
		case !a.Reach.Set():
			want.of("an arm does not give its reach", a.Name.Text)
			continue
		}
		reach := a.Reach.Exact.Float()
		force := held.Torque / reach
		if force < caution {
			continue
		}
		f := p.Found(&a.Part, a.Reach.Place(), "%s presses with up to %s N at its tip, %s out, until %s", a.Title(), figures(force, 3), mm(reach), gives(held.Limit))
		if force >= hurt {
			f.Message += fmt.Sprintf(": from %s N on that injures, guard it or let a coupling slip sooner", fig(hurt))
			f.Weigh(Warning)
		} else {
			f.Message += fmt.Sprintf(": from %s N on keep fingers away from it", fig(caution))
		}
		f.Message += noClearance
		p.Report(f.See(held.At.Place(), "the torque at which %s", gives(held.Limit)))
	}
	want.tell(p)
}

// against is the strongest way in which an arm is held fast, or for want of what
// it is not known.
func (l *Loads) against(a *spec.Arm) (most *Held, lacks string) {
	for i := range l.Held {
		h := &l.Held[i]
		switch {
		case h.Arbor != a.Arbor:
		case h.Lacks != "":
			lacks = h.Lacks
		case most == nil || h.Torque > most.Torque:
			most = h
		}
	}
	return most, lacks
}
