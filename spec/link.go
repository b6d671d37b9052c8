package spec

import (
	"fmt"
	"sort"
	"strings"

	"wheelwork/spec/text"
)

// names are the sets of names of a design.
type names struct {
	arbors    map[string]*Arbor
	arms      map[string]*Arm
	wheels    map[string]*Wheel
	sprockets map[string]*Sprocket
	hands     map[string]*Hand
}

// ArborNamed returns the arbor or stud of that name, nil if there is none.
func (d *Design) ArborNamed(name string) *Arbor { return d.names.arbors[name] }

// ArmNamed returns the arm of that name, nil if there is none.
func (d *Design) ArmNamed(name string) *Arm { return d.names.arms[name] }

// WheelNamed returns the wheel of that name, nil if there is none.
func (d *Design) WheelNamed(name string) *Wheel { return d.names.wheels[name] }

// SprocketNamed returns the sprocket of that name, nil if there is none.
func (d *Design) SprocketNamed(name string) *Sprocket { return d.names.sprockets[name] }

// HandNamed returns the hand of that name, nil if there is none.
func (d *Design) HandNamed(name string) *Hand { return d.names.hands[name] }

// linking resolves names to the parts they mean.
type linking struct {
	design   *Design
	problems []text.Problem
}

func (l *linking) link() {
	l.collect()
	d := l.design
	for i, a := range d.Arbors {
		a.Index = i
		a.Carrier = l.carrier(a.CarriedBy)
	}
	for _, a := range d.Arms {
		a.Arbor = l.arbor(a.On)
		if a.Arbor != nil {
			a.Arbor.Arms = append(a.Arbor.Arms, a)
		}
	}
	l.circles()
	for i, w := range d.Wheels {
		w.Index, w.Arbor = i, l.arbor(w.On)
		l.wheel(w)
	}
	for i, s := range d.Sprockets {
		s.Index, s.Arbor = i, l.arbor(s.On)
	}
	for _, m := range d.Meshes {
		l.mesh(m)
	}
	for _, c := range d.Chains {
		l.chain(c)
	}
	for _, s := range d.Slots {
		s.Pin, s.Slotted = l.arbor(s.PinOn), l.arbor(s.SlotOn)
		l.distinct(s.SlotOn, s.PinOn)
	}
	for _, c := range d.Counters {
		c.Driver, c.Driven = l.arbor(c.From), l.arbor(c.To)
		l.distinct(c.To, c.From)
	}
	for _, c := range d.Couples {
		if l.pair(c.Arbors, "arbors") {
			c.A, c.B = l.arbor(c.Arbors.List[0]), l.arbor(c.Arbors.List[1])
		}
	}
	for _, t := range d.Tracks {
		t.Body = l.body(t.On)
	}
	if c := d.Clock; c != nil {
		c.Arbor, c.Base = l.arbor(c.On), l.body(c.Against)
	}
	for _, v := range d.Drives {
		v.Arbor = l.arbor(v.On)
	}
	for _, h := range d.Hands {
		l.hand(h)
	}
	for _, m := range d.Markers {
		m.Hand = find(l, m.OnHand, "hand", d.names.hands)
	}
	l.stages()
}

func (l *linking) collect() {
	d := l.design
	d.names = names{
		arbors:    make(map[string]*Arbor, len(d.Arbors)),
		arms:      make(map[string]*Arm, len(d.Arms)),
		wheels:    make(map[string]*Wheel, len(d.Wheels)),
		sprockets: make(map[string]*Sprocket, len(d.Sprockets)),
		hands:     make(map[string]*Hand, len(d.Hands)),
	}
	claim(l, d.names.arbors, d.Arbors, "arbor or stud")
	claim(l, d.names.arms, d.Arms, "arm")
	claim(l, d.names.wheels, d.Wheels, "wheel or sprocket")
	claim(l, d.names.sprockets, d.Sprockets, "wheel or sprocket")
	claim(l, d.names.hands, d.Hands, "hand")
	unique(l, d.Tracks)
	unique(l, d.Slots)
	unique(l, d.Counters)
	unique(l, d.Couples)
	unique(l, d.Drives)
	unique(l, d.Markers)
	unique(l, d.Stages)
	for _, s := range d.Sprockets {
		if w := d.names.wheels[s.Name.Text]; w != nil {
			l.twice(&s.Part, &w.Part, "wheel or sprocket")
		}
	}
	for _, a := range d.Arms {
		if a.Name.Text == Frame {
			l.problem(a.Name.Place(), "\"frame\" is what stands still and no arm's name", "")
		}
	}
}

// claim gives each part its name; a second of the same name is a problem.
func claim[P part](l *linking, set map[string]P, parts []P, what string) {
	for _, p := range parts {
		name := p.part().Name.Text
		if first, taken := set[name]; taken {
			l.twice(p.part(), first.part(), what)
			continue
		}
		set[name] = p
	}
}

func unique[P part](l *linking, parts []P) {
	if len(parts) > 0 {
		claim(l, make(map[string]P, len(parts)), parts, parts[0].part().Kind)
	}
}

func (l *linking) twice(p, first *Part, what string) {
	l.problem(p.Name.Place(), fmt.Sprintf("a %s named %q is already there", what, clip(p.Name.Text)), "", text.Related{Place: first.Head, Message: "the first"})
}

// find resolves a name within one set, nil if it is not given or not known.
func find[P any](l *linking, n Name, what string, set map[string]*P) *P {
	if !n.Set() {
		return nil
	}
	if p, ok := set[n.Text]; ok {
		return p
	}
	l.unknown(n, what, keys(set))
	return nil
}

func (l *linking) unknown(n Name, what string, candidates []string) {
	l.problem(n.Place(), fmt.Sprintf("no %s is named %q", what, clip(n.Text)), near(n.Text, candidates))
}

func (l *linking) arbor(n Name) *Arbor {
	return find(l, n, "arbor or stud", l.design.names.arbors)
}

func (l *linking) carrier(n Name) *Arm {
	if !n.Set() || n.Text == Frame {
		return nil
	}
	if arm, ok := l.design.names.arms[n.Text]; ok {
		return arm
	}
	message := ""
	if a := l.design.names.arbors[n.Text]; a != nil && len(a.Arms) > 0 {
		message = fmt.Sprintf("an arm carries arbors; did you mean %q?", a.Arms[0].Name.Text)
	} else if a != nil {
		message = "an arbor carries nothing; fix an arm to it"
	} else {
		message = near(n.Text, append(keys(l.design.names.arms), Frame))
	}
	l.problem(n.Place(), fmt.Sprintf("no arm is named %q", clip(n.Text)), message)
	return nil
}

// body resolves the name of an arm, an arbor or the frame.
func (l *linking) body(n Name) Body {
	if !n.Set() || n.Text == Frame {
		return Body{}
	}
	if arm, ok := l.design.names.arms[n.Text]; ok {
		return Body{Arbor: l.design.names.arbors[arm.On.Text]}
	}
	if a, ok := l.design.names.arbors[n.Text]; ok {
		return Body{Arbor: a}
	}
	l.unknown(n, "arm or arbor", append(append(keys(l.design.names.arms), keys(l.design.names.arbors)...), Frame))
	return Body{}
}

func (l *linking) pair(n Names, what string) bool {
	if !n.Set() {
		return false
	}
	if len(n.List) != 2 {
		l.problem(n.Place(), fmt.Sprintf("%s names two, not %d", what, len(n.List)), "")
		return false
	}
	return l.distinct(n.List[1], n.List[0])
}

func (l *linking) distinct(n, other Name) bool {
	if n.Set() && other.Set() && n.Text == other.Text {
		l.problem(n.Place(), fmt.Sprintf("%q is named twice", clip(n.Text)), "")
		return false
	}
	return true
}

func (l *linking) problem(at text.Place, message, hint string, related ...text.Related) {
	l.problems = append(l.problems, text.Problem{Place: at, Message: message, Hint: hint, Related: related})
}

func keys[P any](set map[string]*P) []string {
	list := make([]string, 0, len(set))
	for k := range set {
		list = append(list, k)
	}
	// Nearest takes the first of equals, so the order must not be the map's.
	sort.Strings(list)
	return list
}

func (l *linking) stages() {
	for _, s := range l.design.Stages {
		for _, n := range s.Parts.List {
			s.Members = append(s.Members, Member{Name: n, Part: l.member(n)})
		}
	}
}

func (l *linking) member(n Name) *Part {
	kind, name, ok := strings.Cut(n.Text, ".")
	if !ok {
		l.problem(n.Place(), fmt.Sprintf("%q is not kind.name", clip(n.Text)), "write it as \"wheel.idler\"")
		return nil
	}
	p, candidates := l.design.PartNamed(kind, name)
	if p == nil {
		if candidates == nil {
			l.problem(n.Place(), fmt.Sprintf("a stage adds no %q", clip(kind)), near(kind, StageKinds))
		} else {
			l.unknown(Name{At: n.At, Text: name}, kind, candidates)
		}
	}
	return p
}
