package rules

import "wheelwork/spec"

// A bought is a part that is not made for itself, and how messages name it.
type bought struct {
	part *spec.Part
	name string
}

// missingKinds reports parts that no stage puts in though stages put in others
// of their sort: what joins arbors, such as chains and couplings, and what
// drives or shows, such as drives and hands. Designs whose stages name none of
// them put them in along with their arbors.
func (s steps) missingKinds(p *Pass) {
	d := p.Design
	var join, show []bought
	for _, c := range d.Chains {
		join = append(join, bought{&c.Part, "chain " + c.Label()})
	}
	for _, o := range d.Slots {
		join = append(join, bought{&o.Part, o.Title()})
	}
	for _, c := range d.Counters {
		join = append(join, bought{&c.Part, c.Title()})
	}
	for _, c := range d.Couples {
		join = append(join, bought{&c.Part, c.Title()})
	}
	for _, v := range d.Drives {
		show = append(show, bought{&v.Part, v.Title()})
	}
	for _, t := range d.Tracks {
		show = append(show, bought{&t.Part, t.Title()})
	}
	for _, h := range d.Hands {
		show = append(show, bought{&h.Part, h.Title()})
	}
	for _, m := range d.Markers {
		show = append(show, bought{&m.Part, m.Title()})
	}
	s.leftOut(p, join)
	s.leftOut(p, show)
}

// leftOut reports those that no stage puts in, unless that is so of all.
func (s steps) leftOut(p *Pass, list []bought) {
	var put *step
	for _, b := range list {
		if first, ok := s[b.part]; ok {
			put = &first
			break
		}
	}
	if put == nil {
		return
	}
	for _, b := range list {
		if s.has(b.part) {
			continue
		}
		f := p.Found(b.part, b.part.Head, "no stage puts in %s", b.name).Weigh(Warning)
		f.Part = b.name
		p.Report(f.See(put.name.Place(), "such as %s is put in", put.name.Text))
	}
}
