package change

import "slices"

// Change is one figure of one part that the two versions do not share. A part
// that only one of them has is one Change with no What.
type Change struct {
	Group, Name, Train string
	What, Unit         string
	Old, New           string // "" where that version has none
	// OldExact and NewExact are fractions where the figures are exact.
	OldExact, NewExact string
}

// Between lists what differs, by group, then in the order of the new version;
// what is gone comes after.
func Between(old, new []Subject) []Change {
	type key struct{ group, name string }
	was := make(map[key]*Subject, len(old))
	for i := range old {
		was[key{old[i].Group, old[i].Name}] = &old[i]
	}
	var list []Change
	is := make(map[key]bool, len(new))
	for i := range new {
		n := &new[i]
		k := key{n.Group, n.Name}
		is[k] = true
		o := was[k]
		if o == nil {
			list = append(list, Change{Group: n.Group, Name: n.Name, Train: n.Train, New: "added"})
			continue
		}
		list = append(list, figures(o, n)...)
	}
	for i := range old {
		o := &old[i]
		if !is[key{o.Group, o.Name}] {
			list = append(list, Change{Group: o.Group, Name: o.Name, Train: o.Train, Old: "removed"})
		}
	}
	slices.SortStableFunc(list, func(a, b Change) int {
		return slices.Index(Groups, a.Group) - slices.Index(Groups, b.Group)
	})
	return list
}

func figures(o, n *Subject) []Change {
	var list []Change
	find := func(s *Subject, what string) *Figure {
		for i := range s.Figures {
			if s.Figures[i].What == what {
				return &s.Figures[i]
			}
		}
		return nil
	}
	for _, f := range n.Figures {
		before := find(o, f.What)
		switch {
		case before == nil:
			list = append(list, of(n, &f).now(&f))
		case before.Exact != f.Exact:
			list = append(list, of(n, &f).before(before).now(&f))
		}
	}
	for _, f := range o.Figures {
		if find(n, f.What) == nil {
			list = append(list, of(n, &f).before(&f))
		}
	}
	return list
}

func of(s *Subject, f *Figure) Change {
	return Change{Group: s.Group, Name: s.Name, Train: s.Train, What: f.What, Unit: f.Unit}
}

func (c Change) before(f *Figure) Change {
	c.Old = f.Value
	if f.Exact != f.Value {
		c.OldExact = f.Exact
	}
	return c
}

func (c Change) now(f *Figure) Change {
	c.New = f.Value
	if f.Exact != f.Value {
		c.NewExact = f.Exact
	}
	return c
}
