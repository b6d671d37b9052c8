package spec

func (l *linking) wheel(w *Wheel) {
	l.either(w.Module.At, "module", w.Pitch.At, "pitch")
	if w.Teeth.Set() && w.Teeth.N < 3 && !w.Is("worm") {
		l.tell(w.Teeth.Place(), "a worm with that many starts has kind = \"worm\"", "a wheel has 3 teeth or more, not %d", w.Teeth.N)
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
	switch {
	case m.A.Arbor != nil && m.A.Arbor == m.B.Arbor:
		l.tell(m.Wheels.Place(), "", "%s and %s are fixed to one arbor and cannot mesh", m.A.Title(), m.B.Title()).Related =
			append(see(m.A.On.Place(), "the arbor"), see(m.B.On.Place(), "the same")...)
	case m.A.Is("ring") && m.B.Is("ring"):
		l.tell(m.Wheels.Place(), "", "two rings cannot mesh").Related =
			append(see(m.A.Head, "a ring"), see(m.B.Head, "a ring")...)
	case !m.Sense.Set() && (crosses(m.A) || crosses(m.B)):
		l.tell(m.Wheels.Place(), "add sense = \"same\" or \"opposite\", each seen from above",
			"mesh %q needs sense: the axes cross, so tooth counts do not say which way it turns", clip(m.Label()))
	default:
		l.sense(m)
		return
	}
	m.A, m.B = nil, nil
}

// sense refuses a stated sense that tooth counts on parallel axes contradict.
func (l *linking) sense(m *Mesh) {
	a, b := m.A.Arbor, m.B.Arbor
	if !m.Sense.Set() || crosses(m.A) || crosses(m.B) || a == nil || b == nil || a.Tilt.Set() || b.Tilt.Set() {
		return
	}
	turns, way := "opposite", "opposite ways"
	if m.A.Is("ring") || m.B.Is("ring") {
		turns, way = "same", "the same way"
	}
	if m.Sense.Text != turns {
		l.tell(m.Sense.Place(), "leave sense out where axes are parallel",
			"%s and %s turn %s, not %q", m.A.Title(), m.B.Title(), way, m.Sense.Text)
	}
}

func (l *linking) toothed(n Name) *Wheel {
	d := l.design
	if w := d.names.wheels[n.Text]; w != nil || !n.Set() {
		return w
	}
	if d.names.sprockets[n.Text] != nil {
		l.tell(n.Place(), "", "%q is a sprocket and meshes only with a chain", clip(n.Text))
		return nil
	}
	l.unknown(n, "wheel", each(d.Wheels))
	return nil
}

func crosses(w *Wheel) bool { return w.Is("bevel") || w.Is("crown") || w.Is("worm") }

func (l *linking) chain(c *Chain) {
	l.either(c.Size.At, "size", c.Pitch.At, "pitch")
	if !c.Sprockets.Set() {
		return
	}
	list := c.Sprockets.List
	over := make([]*Sprocket, 0, len(list))
	arbors := make(map[*Arbor]*Sprocket, len(list))
	for _, n := range list {
		s := l.sprocket(n)
		if s == nil {
			continue
		}
		first := arbors[s.Arbor]
		switch {
		case first == s:
			l.tell(n.Place(), "", "%q is named twice", clip(n.Text))
			continue
		case first != nil && s.Arbor != nil:
			l.tell(n.Place(), "", "%s and %s are fixed to one arbor, so no chain runs over both", first.Title(), s.Title()).Related =
				append(see(first.On.Place(), "the arbor"), see(s.On.Place(), "the same")...)
			continue
		}
		arbors[s.Arbor] = s
		over = append(over, s)
	}
	switch {
	case len(list) < 2:
		l.tell(c.Sprockets.Place(), "", "a chain runs over two sprockets or more, not %d", len(list))
	case c.Crossed.On && len(list) > 2:
		l.tell(c.Crossed.Place(), "", "a crossed chain runs over two sprockets, not %d", len(list)).Related = see(c.Sprockets.Place(), "the sprockets")
	case len(over) == len(list):
		c.Over = over
	}
}

func (l *linking) sprocket(n Name) *Sprocket {
	d := l.design
	if s := d.names.sprockets[n.Text]; s != nil || !n.Set() {
		return s
	}
	if d.names.wheels[n.Text] != nil {
		l.tell(n.Place(), "", "%q is a wheel; a chain runs over sprockets", clip(n.Text))
		return nil
	}
	l.unknown(n, "sprocket", each(d.Sprockets))
	return nil
}
