package rules

import (
	"fmt"

	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "worn-step",
		Group:    Load,
		Severity: Warning,
		Checks:   "a train does not speed up by too much, in one involute pair or in several on end",
		Why:      "where a wheel drives a pinion its teeth meet before the line of centres and rub towards each other; what the fast end loses to friction is multiplied at the slow one, so that the first pair wears, and a train that was free on the bench stops when its oil thickens",
		Formula:  "of a pair, teeth of the driver over teeth of the driven; of a train their product from its slowest arbor on, chains counted. Which wheel drives follows from the drive, or without one from the clock's arbor",
		Source:   "common practice: up to 1 to 5 in an involute pair, a note, and 1 to 20 in all. Cycloidal pairs are made for it and are not counted; worms are left to worm-drives-back",
		Thresholds: []Threshold{
			{Name: "pair", Dimension: quantity.Plain, Default: "5", Doc: "greatest speeding up of one involute pair; beyond it is a note"},
			{Name: "train", Dimension: quantity.Plain, Default: "20", Doc: "greatest speeding up of a train"},
		},
		Breaks: func() string { return wornExample(90, 84) },
		Keeps:  func() string { return wornExample(75, 76) },
		Run:    wornStep,
	})
}

func wornExample(first, second int) string {
	return fmt.Sprintf(`
design { title = "A fan behind a slow drum" }
arbor "drum" {}
arbor "lay" {}
arbor "fan" {}
wheel "drum_wheel" {
  on    = "drum"
  teeth = %d
}
wheel "lay_pinion" {
  on    = "lay"
  teeth = 19
}
wheel "lay_wheel" {
  on    = "lay"
  teeth = %d
}
wheel "fan_pinion" {
  on    = "fan"
  teeth = 17
}
mesh { wheels = ["drum_wheel", "lay_pinion"] }
mesh { wheels = ["lay_wheel", "fan_pinion"] }
drive "drum" {
  on    = "drum"
  speed = "1 rpm"
}
`, first, second)
}

// speeding is by how much a train has sped up on the way to an arbor.
type speeding struct {
	ratio float64 // from its slowest arbor on; 0 where it begins
	by    *speeding
	joint *train.Joint
}

func wornStep(p *Pass) {
	if len(p.Design.Meshes) == 0 {
		return
	}
	flow := passage(p.Facts)
	pair, most := p.Limit("pair"), p.Limit("train")
	of := jointGearings(p.Facts)
	arbors := make([]speeding, len(p.Design.Arbors))
	if len(flow.order) == 0 {
		p.StandAside("neither a drive nor a clock says which wheel of a pair drives")
		return
	}
	for _, i := range flow.order {
		j, passed := &p.Train.Joints[i], &flow.joints[i]
		// What is reached by its carrier drives from A to B.
		reverse := flow.bodyOf(j.B) == passed.from || passed.to != nil && flow.bodyOf(j.A) == passed.to
		ratio := j.Ratio.Abs().Float()
		if reverse {
			ratio = 1 / ratio
		}
		if g := of[i]; g != nil && ratio > 1 {
			if !counts(g) {
				ratio = 1
			} else if ratio > pair {
				p.wornPair(g, reverse, ratio, pair)
			}
		}
		if passed.to == nil || passed.to == j.Carrier.Arbor {
			continue
		}
		before := &arbors[passed.from.Index]
		now := speeding{ratio: max(before.ratio, 1) * ratio, by: before, joint: j}
		if now.ratio <= 1 {
			continue // the run begins anew
		}
		arbors[passed.to.Index] = now
		if now.ratio > most && before.ratio <= most {
			p.wornTrain(j, &arbors[passed.to.Index], most)
		}
	}
}

// counts reports whether a pair wears where it speeds up: cycloidal pairs are
// made for it, and worms are another matter.
func counts(g *Gearing) bool {
	return g.Pairing != ClockPair && g.Pairing != WormPair && !isCycloidal(g.A)
}

func (p *Pass) wornPair(g *Gearing, reverse bool, ratio, most float64) {
	driver, driven := g.Mesh.A, g.Mesh.B
	if reverse {
		driver, driven = driven, driver
	}
	f := p.foundMesh(g.Mesh, driven.Teeth.Place(), "%s of %d teeth drives %s of %d, a step up of 1 to %s: more than 1 to %s wears an involute pair", driver.Title(), driver.Teeth.N, driven.Title(), driven.Teeth.N, figures(ratio, 3), fig(most))
	f.See(driver.Teeth.Place(), "the wheel that drives")
	p.Report(f.Weigh(Note))
}

func (p *Pass) wornTrain(j *train.Joint, s *speeding, most float64) {
	ratio := s.ratio
	var run []*train.Joint
	for ; s.joint != nil; s = s.by {
		if s.joint.Mesh != nil || s.joint.Chain != nil {
			run = append(run, s.joint)
		}
	}
	f := p.Found(j.Part, jointAt(j), "the train speeds up 1 to %s up to %s: more than 1 to %s, the first pair wears and the train stops easily", figures(ratio, 3), j.Name(), fig(most))
	for i := len(run) - 1; i >= 0; i-- {
		f.See(jointAt(run[i]), "through %s", run[i].Name())
	}
	p.Report(f)
}
