package spec

import "iter"

// linking resolves names to the parts they mean.
type linking struct {
	*telling
	design *Design
	// partial is set if files of the design could not be read: then names that
	// are not known may well stand in them.
	partial bool
}

func (l *linking) link() {
	l.collect()
	d := l.design
	for _, a := range d.Arms {
		if a.Arbor = l.arbor(a.On); a.Arbor != nil {
			a.Arbor.Arms = append(a.Arbor.Arms, a)
		}
	}
	for i, a := range d.Arbors {
		a.Index = i
		a.Carrier = l.carrier(a.CarriedBy)
		l.either(a.Position.At, "at", a.Radius.At, "radius")
		l.either(a.Position.At, "at", a.Bear.At, "bearing")
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
		l.distinct(s.PinOn, s.SlotOn)
	}
	for _, c := range d.Counters {
		c.Driver, c.Driven = l.arbor(c.From), l.arbor(c.To)
		l.distinct(c.From, c.To)
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
		if v.Arbor = l.arbor(v.On); v.Arbor != nil && v.Arbor.Stud {
			l.tell(v.On.Place(), "", "%s does not turn on what carries it, so nothing drives it", v.Arbor.Title()).Related = see(v.Arbor.Head, "the stud")
		}
	}
	for _, h := range d.Hands {
		l.hand(h)
	}
	for _, m := range d.Markers {
		l.marker(m)
	}
	l.stages()
}

// find resolves a name within one set, the zero P if it is not given or not
// known.
func find[P part](l *linking, n Name, what string, set map[string]P, parts []P) P {
	p, ok := set[n.Text]
	if !ok && n.Set() {
		l.unknown(n, what, each(parts))
	}
	return p
}

func (l *linking) unknown(n Name, what string, candidates iter.Seq[string]) {
	if !l.partial {
		l.tell(n.Place(), l.near(n.Text, candidates), "no %s is named %q", what, clip(n.Text))
	}
}

func (l *linking) arbor(n Name) *Arbor {
	if n.Text == Frame {
		l.tell(n.Place(), "what is fixed to the frame stands on a stud", "the frame is no arbor")
		return nil
	}
	return find(l, n, "arbor or stud", l.design.names.arbors, l.design.Arbors)
}

func (l *linking) hands(n Name) *Hand {
	return find(l, n, "hand", l.design.names.hands, l.design.Hands)
}

func (l *linking) carrier(n Name) *Arm {
	if !n.Set() || n.Text == Frame {
		return nil
	}
	d := l.design
	if arm, ok := d.names.arms[n.Text]; ok {
		return arm
	}
	if a := d.names.arbors[n.Text]; a != nil {
		hint := "fix an arm to it: arm \"...\" { on = \"...\" }"
		if len(a.Arms) > 0 {
			hint = offer(a.Arms[0].Name.Text)
		}
		l.tell(n.Place(), hint, "%s carries nothing; an arm does", a.Title())
		return nil
	}
	l.unknown(n, "arm", and(each(d.Arms), frame))
	return nil
}

// body resolves the name of an arm, an arbor or the frame.
func (l *linking) body(n Name) Body {
	if !n.Set() || n.Text == Frame {
		return Body{}
	}
	d := l.design
	arm, arbor := d.names.arms[n.Text], d.names.arbors[n.Text]
	switch {
	case arm != nil && arbor != nil && arm.Arbor != arbor:
		p := l.tell(n.Place(), "give one of them another name", "%q is an arm and an arbor that are not one body", clip(n.Text))
		p.Related = append(see(arm.Head, "the arm"), see(arbor.Head, "the arbor")...)
		return Body{Arbor: arm.Arbor}
	case arm != nil:
		return Body{Arbor: arm.Arbor}
	case arbor != nil:
		return Body{Arbor: arbor}
	}
	l.unknown(n, "arm or arbor", and(each(d.Arms), each(d.Arbors), frame))
	return Body{}
}

func (l *linking) pair(n Names, what string) bool {
	if !n.Set() {
		return false
	}
	if len(n.List) != 2 {
		l.tell(n.Place(), "", "%s names two, not %d", what, len(n.List))
		return false
	}
	return l.distinct(n.List[0], n.List[1])
}

func (l *linking) distinct(first, second Name) bool {
	if first.Set() && second.Set() && first.Text == second.Text {
		l.tell(second.Place(), "", "%q is named twice", clip(second.Text))
		return false
	}
	return true
}

// either refuses two attributes of which one is enough.
func (l *linking) either(first At, firstName string, second At, secondName string) {
	if first.Set() && second.Set() {
		l.tell(second.Place(), "give one", "%s and %s say the same thing", firstName, secondName).Related = see(first.Place(), firstName)
	}
}

// together refuses one of two attributes that mean nothing without each other.
func (l *linking) together(first At, firstName string, second At, secondName string) {
	if first.Set() == second.Set() {
		return
	}
	given := first
	if second.Set() {
		given = second
	}
	l.tell(given.Place(), "", "%s and %s go together", firstName, secondName)
}
