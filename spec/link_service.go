package spec

import "strings"

func (l *linking) hand(h *Hand) {
	h.Arbor, h.Base, h.OfHand = l.arbor(h.On), l.body(h.Against), l.hands(h.Of)
	if h.OfHand == h {
		l.tell(h.Of.Place(), "", "%s refers to itself", h.Title())
		h.OfHand = nil
	}
	l.together(h.Ratio.At, "ratio", h.Of.At, "of")
	if h.Ratio.Set() && h.Ratio.Exact.IsZero() {
		l.tell(h.Ratio.Place(), "a hand that stands still has sense = \"still\"", "ratio must not be zero")
		h.Ratio = Number{}
	}
	l.either(h.Shows.At, "shows", h.Period.At, "period")
	l.either(h.Shows.At, "shows", h.Ratio.At, "ratio")
	l.either(h.Period.At, "period", h.Ratio.At, "ratio")
}

func (l *linking) marker(m *Marker) {
	m.Hand = l.hands(m.OnHand)
	l.either(m.HalfAngle.At, "half_angle", m.Length.At, "length")
	if m.Length.Set() && !m.Radius.Set() && !m.HalfAngle.Set() {
		l.tell(m.Length.Place(), "", "length needs radius: the angle of the arc follows from both")
	}
}

func (l *linking) stages() {
	for _, s := range l.design.Stages {
		for _, n := range s.Parts.List {
			s.Members = append(s.Members, Member{Name: n, Part: l.member(n)})
		}
	}
}

func (l *linking) member(n Name) *Part {
	if !n.Set() {
		return nil
	}
	kind, name, ok := strings.Cut(n.Text, ".")
	if !ok {
		l.tell(n.Place(), "write it as \"wheel.idler\"", "%q is not kind.name", clip(n.Text))
		return nil
	}
	if !contains(StageKinds, kind) {
		l.tell(n.Place(), l.nearOf(kind, StageKinds), "a stage adds no %q", clip(kind))
		return nil
	}
	p := l.design.PartNamed(kind, name)
	if p == nil {
		l.unknown(Name{At: n.At, Text: name}, kind, l.design.namesOf(kind))
	}
	return p
}
