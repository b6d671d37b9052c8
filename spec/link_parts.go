package spec

import (
	"fmt"

	"wheelwork/spec/text"
)

// StageKinds are the kinds of part a stage can add.
var StageKinds = []string{"arbor", "stud", "arm", "wheel", "sprocket", "chain", "slot", "counter", "coupling", "track", "drive", "hand", "marker"}

// PartNamed finds a part by kind and name, and the names there are of that
// kind where it is not found, nil if a stage cannot add the kind.
func (d *Design) PartNamed(kind, name string) (*Part, []string) {
	switch kind {
	case "arbor", "stud":
		if a := d.names.arbors[name]; a != nil && a.Kind == kind {
			return &a.Part, nil
		}
		var all []string
		for _, a := range d.Arbors {
			if a.Kind == kind {
				all = append(all, a.Name.Text)
			}
		}
		return nil, append([]string{}, all...)
	case "arm":
		return named(d.Arms, d.names.arms, name)
	case "wheel":
		return named(d.Wheels, d.names.wheels, name)
	case "sprocket":
		return named(d.Sprockets, d.names.sprockets, name)
	case "hand":
		return named(d.Hands, d.names.hands, name)
	case "slot":
		return named(d.Slots, nil, name)
	case "counter":
		return named(d.Counters, nil, name)
	case "coupling":
		return named(d.Couples, nil, name)
	case "track":
		return named(d.Tracks, nil, name)
	case "drive":
		return named(d.Drives, nil, name)
	case "marker":
		return named(d.Markers, nil, name)
	case "chain":
		all := []string{}
		for _, c := range d.Chains {
			if c.Named.Text == name {
				return &c.Part, nil
			}
			all = append(all, c.Named.Text)
		}
		return nil, all
	}
	return nil, nil
}

func named[P part](list []P, set map[string]P, name string) (*Part, []string) {
	if p, ok := set[name]; ok {
		return p.part(), nil
	}
	all := make([]string, 0, len(list))
	for _, p := range list {
		if set == nil && p.part().Name.Text == name {
			return p.part(), nil
		}
		all = append(all, p.part().Name.Text)
	}
	return nil, all
}

// circles tells arms that carry each other in a ring, and cuts the ring so
// that later steps end.
func (l *linking) circles() {
	const fresh, open, done = 0, 1, 2
	state := make(map[*Arm]int, len(l.design.Arms))
	for _, start := range l.design.Arms {
		var path []*Arm
		for a := start; a != nil && state[a] != done; {
			if state[a] == open {
				l.problem(a.Arbor.CarriedBy.Place(), fmt.Sprintf("arm %q carries itself", a.Name.Text), "", text.Related{Place: a.Head, Message: "the arm"})
				a.Arbor.Carrier = nil
				break
			}
			state[a] = open
			path = append(path, a)
			if a.Arbor == nil {
				break
			}
			a = a.Arbor.Carrier
		}
		for _, a := range path {
			state[a] = done
		}
	}
}

func (l *linking) wheel(w *Wheel) {
	if w.Module.Set() && w.Pitch.Set() {
		l.problem(w.Pitch.Place(), "module and pitch say the same thing; give one", "", text.Related{Place: w.Module.Place(), Message: "the module"})
	}
	if w.Teeth.Set() && w.Teeth.N < 3 && !w.Is("worm") {
		l.problem(w.Teeth.Place(), fmt.Sprintf("a wheel has 3 teeth or more, not %d", w.Teeth.N), "a worm with that many starts has kind = \"worm\"")
	}
}

func (l *linking) mesh(m *Mesh) {
	if !l.pair(m.Wheels, "wheels") {
		return
	}
	m.A = l.toothed(m.Wheels.List[0])
	m.B = l.toothed(m.Wheels.List[1])
	if m.A == nil || m.B == nil {
		return
	}
	if m.A.Arbor != nil && m.A.Arbor == m.B.Arbor {
		l.problem(m.Wheels.Place(), fmt.Sprintf("%q and %q are fixed to one arbor and cannot mesh", m.A.Name.Text, m.B.Name.Text), "", text.Related{Place: m.A.On.Place(), Message: "the arbor"})
		m.A, m.B = nil, nil
		return
	}
	if m.A.Is("ring") && m.B.Is("ring") {
		l.problem(m.Wheels.Place(), "two rings cannot mesh", "")
		m.A, m.B = nil, nil
		return
	}
	if !m.Sense.Set() && (crosses(m.A) || crosses(m.B)) {
		l.problem(m.Wheels.Place(), fmt.Sprintf("mesh %s needs sense: the axes cross, so tooth counts do not say which way it turns", m.Label()), "add sense = \"same\" or \"opposite\", each seen from above")
		m.A, m.B = nil, nil
		return
	}
	l.sense(m)
}

// sense refuses a stated sense that tooth counts on parallel axes contradict.
func (l *linking) sense(m *Mesh) {
	a, b := m.A.Arbor, m.B.Arbor
	if !m.Sense.Set() || crosses(m.A) || crosses(m.B) || a == nil || b == nil || a.Tilt.Set() || b.Tilt.Set() {
		return
	}
	turns := "opposite"
	if m.A.Is("ring") || m.B.Is("ring") {
		turns = "same"
	}
	if m.Sense.Text != turns {
		way := map[string]string{"opposite": "opposite ways", "same": "the same way"}[turns]
		l.problem(m.Sense.Place(), fmt.Sprintf("%s and %s turn %s, not %q", m.A.Title(), m.B.Title(), way, m.Sense.Text), "leave sense out where axes are parallel")
	}
}

func (l *linking) toothed(n Name) *Wheel {
	if w, ok := l.design.names.wheels[n.Text]; ok {
		return w
	}
	if l.design.names.sprockets[n.Text] != nil {
		l.problem(n.Place(), fmt.Sprintf("%q is a sprocket and meshes only with a chain", n.Text), "")
		return nil
	}
	l.unknown(n, "wheel", keys(l.design.names.wheels))
	return nil
}

func crosses(w *Wheel) bool { return w.Is("bevel") || w.Is("crown") || w.Is("worm") }

func (l *linking) chain(c *Chain) {
	if !c.Sprockets.Set() {
		return
	}
	if n := len(c.Sprockets.List); n < 2 {
		l.problem(c.Sprockets.Place(), fmt.Sprintf("a chain runs over two sprockets or more, not %d", n), "")
		return
	}
	if c.Crossed.On && len(c.Sprockets.List) != 2 {
		l.problem(c.Crossed.Place(), "a crossed chain runs over two sprockets", "")
		return
	}
	seen := map[string]bool{}
	for _, n := range c.Sprockets.List {
		if seen[n.Text] {
			l.problem(n.Place(), fmt.Sprintf("%q is named twice", clip(n.Text)), "")
			c.Over = nil
			return
		}
		seen[n.Text] = true
		s := l.design.names.sprockets[n.Text]
		if s == nil {
			if l.design.names.wheels[n.Text] != nil {
				l.problem(n.Place(), fmt.Sprintf("%q is a wheel; a chain runs over sprockets", n.Text), "")
			} else {
				l.unknown(n, "sprocket", keys(l.design.names.sprockets))
			}
			c.Over = nil
			return
		}
		c.Over = append(c.Over, s)
	}
}

func (l *linking) hand(h *Hand) {
	h.Arbor, h.Base = l.arbor(h.On), l.body(h.Against)
	h.OfHand = find(l, h.Of, "hand", l.design.names.hands)
	if h.OfHand == h {
		l.problem(h.Of.Place(), fmt.Sprintf("hand %q refers to itself", h.Name.Text), "")
		h.OfHand = nil
	}
	if h.Ratio.Set() != h.Of.Set() {
		given := h.Ratio.At
		if h.Of.Set() {
			given = h.Of.At
		}
		l.problem(given.Place(), "ratio and of go together", "")
	}
	if h.Ratio.Set() && h.Ratio.Exact.IsZero() {
		l.problem(h.Ratio.Place(), "ratio must not be zero", "a hand that stands still has sense = \"still\"")
		h.Ratio = Number{}
	}
	if h.Shows.Set() && h.Period.Set() {
		l.problem(h.Period.Place(), "shows and period say the same thing; give one", "", text.Related{Place: h.Shows.Place(), Message: "what it shows"})
	}
}
