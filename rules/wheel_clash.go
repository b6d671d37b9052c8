package rules

import (
	"fmt"
	"math"

	"wheelwork/rules/space"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "wheel-clash",
		Group:    Fit,
		Severity: Error,
		Checks:   "no wheel, sprocket, arm or arbor runs into another that lies at its level; what an arm carries is taken with the ring it sweeps",
		Why:      "a wheel that fouls another's arbor, or an arm that meets a post once in its round, is found when the model is put together, and costs a new plate",
		Formula: "two parts whose levels overlap need the radii of both between their axes, a wheel up to its tip circle; inside a ring, its tip radius less the other's. " +
			"An axis r from the middle of an arm comes as near as |R - r| and as far as R + r to one that stands R from that middle, and so on over each arm further out. " +
			"An arm counts as a bar 1 mm wide and a ring's rim as 2 modules beyond its roots. " +
			"Mates, sprockets of one chain, arbors on one axis and what bears them may touch; where arms keep their way to each other, or come back to it in ten turns, only what must meet is told; parts on leaning axes are left out",
		Source:     "computed from the geometry; the clearance is common practice",
		Thresholds: []Threshold{{Name: "clearance", Dimension: quantity.Length, Default: "0.2 mm", Doc: "less than this to the side is a warning"}},
		Breaks:     func() string { return clashExample("12") },
		Keeps:      func() string { return clashExample("16") },
		Run:        wheelClash,
	})
}

func clashExample(z string) string {
	return `
design { title = "Two wheels and a lay arbor" }
arbor "first" {
  at       = [0, 0]
  diameter = 3
  from     = 10
  to       = 22
}
arbor "lay" {
  at       = [22, 0]
  diameter = 3
  from     = 10
  to       = 15
}
wheel "first" {
  on     = "first"
  teeth  = 80
  module = 0.5
  z      = ` + z + `
  face   = 2
}
wheel "lay" {
  on     = "lay"
  teeth  = 20
  module = 0.5
  z      = 11
  face   = 2
}
`
}

func wheelClash(p *Pass) {
	s := solidsOf(p.Facts)
	s.lack.tell(p)
	if len(s.list) == 0 {
		return
	}
	room := space.NewRoom(s.list, p.Limit("clearance"))
	j := newClashJudge(p.Facts, s)
	free := leveller{room: room, judge: j}
	for _, m := range room.Meetings(j.judge(nil)) {
		if laterOf(p.Design, j.pieces[m.A].part, j.pieces[m.B].part) == j.pieces[m.B].part {
			m.A, m.B = m.B, m.A
		}
		clashFound(p, j, &m, &free)
	}
}

// clashFound reports a meeting, whose A is the part later in the text.
func clashFound(p *Pass, j *clashJudge, m *space.Meeting, free *leveller) {
	a, b := &j.pieces[m.A], &j.pieces[m.B]
	at, see := j.culprit(m.A, m.B), j.culprit(m.B, m.A)
	var f *Finding
	if m.Gap < -1e-6 {
		f = p.Found(a.part, at.Place(), "%s runs into %s: %s", j.called(m.A), j.called(m.B), j.told(m))
	} else {
		f = p.Found(a.part, at.Place(), "%s passes %s with %s to spare, less than %s: %s", j.called(m.A), j.called(m.B),
			mm(max(0, m.Gap)), mm(p.Limit("clearance")), j.told(m)).Weigh(Warning)
	}
	f.See(see.Place(), "%s", b.part.Title())
	free.mend(f, j, m)
	p.Report(f)
}

// called is a piece with its levels.
func (j *clashJudge) called(i int) string {
	return fmt.Sprintf("%s (%s to %s)", j.pieces[i].part.Title(), number(j.list[i].From), mm(j.list[i].To))
}

// number is a length without its unit.
func number(x float64) string {
	s := mm(x)
	return s[:len(s)-len(" mm")]
}

// told is how far apart two pieces are and how far they should be.
func (j *clashJudge) told(m *space.Meeting) string {
	a, b := &j.list[m.A], &j.list[m.B]
	round := ""
	if m.Turning {
		round = "carried round, "
	}
	switch need := a.Radius + b.Radius; {
	case m.Inside >= 0:
		ring, other := m.Inside, m.A+m.B-m.Inside
		return fmt.Sprintf("%swhat lies inside reaches %s from the axis of the ring, its teeth leave %s", round, mm(m.Most+j.list[other].Radius), mm(j.list[ring].Hole))
	case a.Length > 0 && b.Length > 0:
		return fmt.Sprintf("%sthe arms come as near as %s", round, mm(m.Least))
	case a.Length > 0 || b.Length > 0:
		return fmt.Sprintf("%sthe arm comes within %s of the axis, which needs %s", round, mm(m.Least), mm(need-armWidth/2))
	case m.Turning:
		return fmt.Sprintf("carried round, the axes come within %s and need %s", mm(m.Least), mm(need))
	case m.Least < 1e-6:
		return fmt.Sprintf("both turn about one axis and fill %s to %s", number(math.Max(a.From, b.From)), mm(math.Min(a.To, b.To)))
	default:
		return fmt.Sprintf("the axes stand %s apart and need %s", mm(m.Least), mm(need))
	}
}

// culprit is the value of a piece that brings it where the other is: its level;
// of a post the end by which it sticks into the other's levels, or where more of
// it stands there, its position.
func (j *clashJudge) culprit(i, other int) spec.At {
	p, s, o := &j.pieces[i], &j.list[i], &j.list[other]
	end := 2*(min(s.To, o.To)-max(s.From, o.From)) < s.To-s.From
	switch {
	case p.wheel != nil:
		return p.wheel.Z.At
	case p.sprocket != nil:
		return p.sprocket.Z.At
	case p.arm != nil:
		return p.arm.Z.At
	case end && s.To < o.To:
		return p.arbor.To.At
	case end && s.From > o.From:
		return p.arbor.From.At
	case p.arbor.Position.Set():
		return p.arbor.Position.At
	}
	return p.arbor.Radius.At
}

// laterOf is which of two parts comes later in the text.
func laterOf(d *spec.Design, a, b *spec.Part) *spec.Part {
	if a.At.File == b.At.File {
		if a.At.Start > b.At.Start {
			return a
		}
		return b
	}
	for _, f := range d.Files {
		switch f {
		case a.At.File:
			return b
		case b.At.File:
			return a
		}
	}
	return b
}
