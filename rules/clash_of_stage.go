package rules

import (
	"fmt"

	"wheelwork/spec"
)

func init() {
	register(&Rule{
		Name:     "clash-of-stage",
		Group:    Structure,
		Severity: Error,
		Checks:   "the stages of assembly name every part once, and none needs a part of a later stage or is barred by one of an earlier",
		Why:      "a tube that goes over a post which by then bears a wider wheel means taking everything apart again",
		Formula: "a wheel, sprocket, arm or hand needs its arbor, an arbor the arm that carries it, a chain its sprockets; what slides along an axis is barred " +
			"where parts of earlier stages on that axis, wider than its bore, lie both above and below it; a stud on the frame and an arm that carries an inner arbor bar the way as well, and a tube bars what is wider than its bore and sits on an arbor in it. " +
			"Of couplings, chains, hands and the like all are to be put in where any is",
		Source: "common practice",
		Breaks: func() string { return stageExample("1", "2") },
		Keeps:  func() string { return stageExample("2", "1") },
		Run:    clashOfStage,
	})
}

func stageExample(year, deck string) string {
	return `
design { title = "Year arm" }
arbor "year_tube" {}
arm "year" { on = "year_tube" }
stage "year" {
  order = ` + year + `
  parts = ["arm.year"]
}
stage "deck" {
  order = ` + deck + `
  parts = ["arbor.year_tube"]
}
`
}

// A step is the stage in which a part is put in.
type step struct {
	stage *spec.Stage
	name  spec.Name // as the stage names the part
}

// steps is the first stage of each part.
type steps map[*spec.Part]step

func clashOfStage(p *Pass) {
	d := p.Design
	if len(d.Stages) == 0 {
		return
	}
	s := stepsOf(p)
	s.missing(p)
	for _, a := range d.Arbors {
		if a.Carrier != nil {
			s.needs(p, &a.Part, &a.Carrier.Part, "is carried by")
		}
	}
	for _, a := range d.Arms {
		s.needsArbor(p, &a.Part, a.Arbor, "is fixed to")
	}
	for _, w := range d.Wheels {
		s.needsArbor(p, &w.Part, w.Arbor, "is fixed to")
	}
	for _, o := range d.Sprockets {
		s.needsArbor(p, &o.Part, o.Arbor, "is fixed to")
	}
	for _, c := range d.Chains {
		if last := s.last(c.Over); last != nil {
			s.needs(p, &c.Part, &last.Part, "runs over")
		}
	}
	for _, o := range d.Slots {
		s.needsArbor(p, &o.Part, o.Pin, "has its pin on")
		s.needsArbor(p, &o.Part, o.Slotted, "has its slot on")
	}
	for _, c := range d.Counters {
		s.needsArbor(p, &c.Part, c.Driver, "counts")
		s.needsArbor(p, &c.Part, c.Driven, "moves")
	}
	for _, c := range d.Couples {
		s.needsArbor(p, &c.Part, c.A, "joins")
		s.needsArbor(p, &c.Part, c.B, "joins")
	}
	for _, t := range d.Tracks {
		s.needsArbor(p, &t.Part, t.Body.Arbor, "lies on")
	}
	for _, v := range d.Drives {
		s.needsArbor(p, &v.Part, v.Arbor, "turns")
	}
	for _, h := range d.Hands {
		s.needsArbor(p, &h.Part, h.Arbor, "is fixed to")
	}
	for _, m := range d.Markers {
		if m.Hand != nil {
			s.needs(p, &m.Part, &m.Hand.Part, "lies on")
		}
	}
	s.barred(p)
}

// stepsOf lists the stage of each part, and reports parts that are named again.
func stepsOf(p *Pass) steps {
	s := make(steps)
	for _, stage := range p.Design.Stages {
		for _, m := range stage.Members {
			if m.Part == nil {
				continue
			}
			if first, again := s[m.Part]; again {
				where := stage.Title() + " once more"
				if first.stage != stage {
					where = fmt.Sprintf("%s, which %s did before", stage.Title(), first.stage.Title())
				}
				p.Report(p.Found(m.Part, m.Name.Place(), "%s is put in by %s", first.called(m.Part), where).
					See(first.name.Place(), "named here first"))
				continue
			}
			s[m.Part] = step{stage, m.Name}
		}
	}
	return s
}

// missing reports parts that are made and that no stage puts in: an arbor with
// what is missing along with it.
func (s steps) missing(p *Pass) {
	d := p.Design
	with := make([]int, len(d.Arbors)) // missing parts on missing arbors
	tell := func(part *spec.Part, on *spec.Arbor) {
		switch {
		case s.has(part):
		case on != nil && !s.has(&on.Part):
			with[on.Index]++
		default:
			p.Report(p.Found(part, part.Head, "no stage puts in %s", part.Title()).Weigh(Warning))
		}
	}
	for _, a := range d.Arms {
		tell(&a.Part, a.Arbor)
	}
	for _, w := range d.Wheels {
		tell(&w.Part, w.Arbor)
	}
	for _, o := range d.Sprockets {
		tell(&o.Part, o.Arbor)
	}
	for i, a := range d.Arbors {
		if s.has(&a.Part) {
			continue
		}
		f := p.Found(&a.Part, a.Head, "no stage puts in %s", a.Title()).Weigh(Warning)
		if with[i] > 0 {
			f.Message += " and " + counted(with[i], "part") + " on it"
		}
		p.Report(f)
	}
	s.missingKinds(p)
}

func (s steps) has(part *spec.Part) bool {
	_, ok := s[part]
	return ok
}

func (s steps) needsArbor(p *Pass, part *spec.Part, a *spec.Arbor, how string) {
	if a != nil {
		s.needs(p, part, &a.Part, how)
	}
}

// last is the sprocket that comes last.
func (s steps) last(list []*spec.Sprocket) *spec.Sprocket {
	var last *spec.Sprocket
	for _, o := range list {
		if _, ok := s[&o.Part]; ok && (last == nil || s.before(&last.Part, s[&o.Part])) {
			last = o
		}
	}
	return last
}

// before reports whether the part stands before a step.
func (s steps) before(part *spec.Part, own step) bool {
	st, ok := s[part]
	return ok && st.stage.Order.Exact.Cmp(own.stage.Order.Exact) < 0
}

// called is a part in messages; what has no label of its own is called as the
// stage does.
func (st step) called(part *spec.Part) string {
	if part.Name.Text == "" {
		return st.name.Text
	}
	return part.Title()
}

// needs reports a part that comes before another that it needs.
func (s steps) needs(p *Pass, part, other *spec.Part, how string) {
	own, ok := s[part]
	if !ok {
		return
	}
	need, ok := s[other]
	if !ok || !s.before(part, need) {
		return
	}
	p.Report(p.Found(part, own.name.Place(), "%s comes in %s and %s %s, which comes later, in %s", own.called(part), own.stage.Title(), how, other.Title(), need.stage.Title()).
		See(need.name.Place(), "%s", other.Title()))
}
