package spec

// collect makes the sets of names and tells names that are taken.
func (l *linking) collect() {
	d := l.design
	d.names = names{
		arbors:    make(map[string]*Arbor, len(d.Arbors)),
		arms:      make(map[string]*Arm, len(d.Arms)),
		wheels:    make(map[string]*Wheel, len(d.Wheels)),
		sprockets: make(map[string]*Sprocket, len(d.Sprockets)),
		hands:     make(map[string]*Hand, len(d.Hands)),
		others:    map[partName]*Part{},
	}
	claim(l, d.names.arbors, d.Arbors, "an arbor or stud")
	claim(l, d.names.arms, d.Arms, "an arm")
	claim(l, d.names.wheels, d.Wheels, "a wheel or sprocket")
	claim(l, d.names.sprockets, d.Sprockets, "a wheel or sprocket")
	claim(l, d.names.hands, d.Hands, "a hand")
	claimOthers(l, d.Tracks)
	claimOthers(l, d.Slots)
	claimOthers(l, d.Counters)
	claimOthers(l, d.Couples)
	claimOthers(l, d.Drives)
	claimOthers(l, d.Markers)
	claimOthers(l, d.Stages)
	for _, s := range d.Sprockets {
		if w := d.names.wheels[s.Name.Text]; w != nil {
			l.taken(s.Name, "a wheel or sprocket", &w.Part)
		}
	}
	for _, c := range d.Chains {
		if c.Named.Set() {
			l.claimOther(c.Named, &c.Part)
		}
	}
	for _, a := range d.Arms {
		l.notFrame(a.Name, "arm")
	}
	for _, a := range d.Arbors {
		l.notFrame(a.Name, a.Kind)
	}
}

// claim gives each part its name; a second of the same name is a problem.
func claim[P part](l *linking, set map[string]P, parts []P, what string) {
	for _, p := range parts {
		name := p.part().Name
		if first, taken := set[name.Text]; taken {
			l.taken(name, what, first.part())
			continue
		}
		set[name.Text] = p
	}
}

func claimOthers[P part](l *linking, parts []P) {
	for _, p := range parts {
		l.claimOther(p.part().Name, p.part())
	}
}

func (l *linking) claimOther(name Name, p *Part) {
	key := partName{p.Kind, name.Text}
	if first := l.design.names.others[key]; first != nil {
		l.taken(name, "a "+p.Kind, first)
		return
	}
	l.design.names.others[key] = p
}

func (l *linking) taken(name Name, what string, first *Part) {
	l.tell(name.Place(), "", "%s named %q is already there", what, clip(name.Text)).Related = see(first.Head, "the first")
}

// notFrame keeps the frame's name from being another's: as what a hand is read
// against it would mean the frame.
func (l *linking) notFrame(n Name, kind string) {
	if n.Text == Frame {
		l.tell(n.Place(), "", "\"frame\" is what stands still and no %s's name", kind)
	}
}
