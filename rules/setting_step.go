package rules

import (
	"fmt"
	"slices"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "setting-step",
		Group:    Setting,
		Severity: Warning,
		Checks:   "a hand that is set by lifting a wheel out of mesh and putting it back some teeth further can be brought as near to its place as its tolerance asks",
		Why:      "a hand whose wheel has 60 teeth stands on one of 60 places, up to three degrees off whatever the date: on a dial of days the model is wrong from the day it is set, and no counting of teeth mends it",
		Formula:  "step = 360/z of the driven wheel or sprocket, times the turns of the hand to one of it; the least of the engagements that move this hand and no other; what may remain is half of it. A slipping coupling in the train, or a hand that slips on its arbor, sets without steps, and the drive sets the hand on the clock's arbor; drums behind a counter show whole steps",
		Source:   "computed from the counts. A hand is to be set to the angle of its tolerance, or to what it turns in the time of it, but no finer than it can be read; both thresholds are common practice. A note where the tolerance is neither, and where the design names nothing that slips: hands may be friction-tight all the same",
		Thresholds: []Threshold{
			{Name: "hand", Dimension: quantity.Angle, Default: "6 deg", Doc: "to what a hand is to be set whose tolerance is neither an angle nor a time: a sixtieth of a turn"},
			{Name: "reading", Dimension: quantity.Angle, Default: "1 deg", Doc: "the finest that is read off a hand: no tolerance asks for less"},
		},
		Breaks: func() string { return settingExample("") },
		Keeps:  func() string { return settingExample("\n  slip_torque = \"30 N mm\"") },
		Run:    settingStep,
	})
}

func settingExample(slips string) string {
	return fmt.Sprintf(`
design { title = "The year by one pair" }
arbor "week" {}
arbor "year" {}
wheel "week_pinion" {
  on    = "week"
  teeth = 14
}
wheel "year_wheel" {
  on    = "year"
  teeth = 73
}
mesh { wheels = ["week_pinion", "year_wheel"] }
clock {
  on     = "week"
  period = "70.046 d"
}
hand "year" {
  on          = "year"
  shows       = "tropical year"
  within      = "1 d in 1 yr"%s
}
`, slips)
}

// setter is a hand as one sets it.
type setter struct {
	hand  *spec.Hand // nil for the clock
	arbor *spec.Arbor
	slips []train.Slip
}

func settingStep(p *Pass) {
	setters := p.setters()
	if len(setters) == 0 {
		return
	}
	// How many arbors with a hand that cannot be set by itself a joint moves.
	moves := make([]int32, len(p.Train.Joints))
	last := make([]*spec.Arbor, len(p.Train.Joints))
	for i := range setters {
		s := &setters[i]
		for _, slip := range s.slips {
			if last[slip.Index] != s.arbor {
				last[slip.Index] = s.arbor
				moves[slip.Index]++
			}
		}
	}
	j := settingJudge{Pass: p, moves: moves, usual: p.Limit("hand"), reading: p.Limit("reading"), slips: p.namesSlips()}
	for i := range setters {
		if s := &setters[i]; s.hand != nil && !p.setByDrive(s.hand) {
			j.judge(s)
		}
	}
}

// setters lists the hands that nothing sets without steps, those on one arbor
// together, and the clock's arbor after them.
func (p *Pass) setters() []setter {
	var gives map[*spec.Part]bool
	for _, c := range p.Design.Couples {
		if c.Gives() {
			if gives == nil {
				gives = map[*spec.Part]bool{}
			}
			gives[&c.Part] = true
		}
	}
	var list []setter
	slips := handSlips(p.Facts)
	for i, h := range p.Design.Hands {
		if len(slips[i]) > 0 && !h.SlipTorque.Set() && h.Sense.Text != "still" && inSteps(slips[i], gives) {
			list = append(list, setter{h, h.Arbor, slips[i]})
		}
	}
	slices.SortStableFunc(list, func(a, b setter) int { return a.arbor.Index - b.arbor.Index })
	if c := p.Design.Clock; c != nil && c.Arbor != nil && len(list) > 0 {
		list = append(list, setter{nil, c.Arbor, p.Train.NewSlips().Of(c.Arbor, spec.Body{})})
	}
	return list
}

// inSteps reports whether nothing on the way to a hand slips or counts.
func inSteps(slips []train.Slip, gives map[*spec.Part]bool) bool {
	for _, s := range slips {
		if part := s.Joint.Part; part.Kind == "counter" || gives[part] {
			return false
		}
	}
	return true
}

// setByDrive reports whether running the drive sets the hand: it turns with the
// clock's arbor or a drive's.
func (p *Pass) setByDrive(h *spec.Hand) bool {
	if c := p.Design.Clock; c != nil && c.Arbor != nil {
		return c.Arbor == h.Arbor
	}
	for _, v := range p.Design.Drives {
		if v.Arbor == h.Arbor {
			return true
		}
	}
	return false
}

// namesSlips reports whether the design says of anything that it slips.
func (p *Pass) namesSlips() bool {
	return slices.ContainsFunc(p.Design.Couples, (*spec.Coupling).Gives) ||
		slices.ContainsFunc(p.Design.Hands, func(h *spec.Hand) bool { return h.SlipTorque.Set() })
}

type settingJudge struct {
	*Pass
	moves          []int32 // by joint, how many hands' arbors it moves
	usual, reading float64
	slips          bool // whether the design names something that slips
}

func (p *settingJudge) judge(s *setter) {
	// What moves no more hands than the joint next to this one is its own train.
	own := p.moves[s.slips[0].Index]
	for _, slip := range s.slips {
		own = min(own, p.moves[slip.Index])
	}
	step, by := 0.0, (*train.Joint)(nil)
	for _, slip := range s.slips {
		z := teethOfB(slip.Joint)
		if z == 0 || p.moves[slip.Index] > own {
			continue
		}
		if one := 360 / float64(z) * slip.Weight; by == nil || one < step {
			step, by = one, slip.Joint
		}
	}
	bound, said := p.handShows(s.hand, p.usual)
	loose := bound == p.usual || !p.slips
	if bound < p.reading {
		bound, said = p.reading, "the "+fig(p.reading)+" deg that can be read off it"
	}
	if by == nil || step/2 <= bound {
		return
	}
	at := s.hand.Head
	if s.hand.Within.Set() {
		at = s.hand.Within.Place()
	}
	f := p.Found(&s.hand.Part, at, "%s can be set in steps of %s deg only, a tooth of %s, and may stand %s deg off: more than %s; a coupling that slips sets it freely",
		s.hand.Title(), figures(step, 4), by.Name(), figures(step/2, 4), said)
	if loose {
		f.Weigh(Note)
	}
	p.Report(f.See(jointAt(by), "the finest engagement that moves this hand alone"))
}

// teethOfB is the teeth by which a joint's B engages, 0 where it has none.
func teethOfB(j *train.Joint) int64 {
	switch {
	case j.Mesh != nil:
		return j.Mesh.B.Teeth.N
	case j.Chain != nil:
		for _, s := range j.Chain.Over {
			if s.Arbor == j.B {
				return s.Teeth.N
			}
		}
	}
	return 0
}
