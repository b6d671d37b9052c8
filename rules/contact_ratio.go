package rules

import (
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "contact-ratio",
		Group:    Teeth,
		Severity: Error,
		Checks:   "a pair of involute wheels has the next teeth in contact before the last ones part",
		Why:      "below 1 the drive is lost between one tooth and the next: the mate falls back and is struck; below 1.4 it is rough, and dirt or a centre out of place brings it below 1",
		Formula:  "eps = (sqrt(ra1^2 - rb1^2) + sqrt(ra2^2 - rb2^2) - a sin(aw)) / (pi m cos(a)), each root cut off at a sin(aw), where the mate's involute ends; a helix adds face sin(helix)/(pi m)",
		Source:   "ISO 21771; least of 1.2: SDP/SI D785 section 3.2.1 and Shigley section 13-6 (from memory); 1.4 for smooth running: Dudley and Norton (from memory)",
		Thresholds: []Threshold{
			{Name: "lost", Dimension: quantity.Plain, Default: "1", Doc: "below this it is an error"},
			{Name: "least", Dimension: quantity.Plain, Default: "1.2", Doc: "below this it is a warning"},
			{Name: "smooth", Dimension: quantity.Plain, Default: "1.4", Doc: "below this it is a note"},
		},
		Breaks: func() string {
			return pairExample{distance: 20.75, pinion: "teeth = 20; module = 1", wheel: "teeth = 20; module = 1"}.text()
		},
		Keeps: func() string {
			return pairExample{distance: 20.06, pinion: "teeth = 20; module = 1", wheel: "teeth = 20; module = 1"}.text()
		},
		Run: contactRatio,
	})
}

func contactRatio(p *Pass) {
	lost, least, smooth := p.Limit("lost"), p.Limit("least"), p.Limit("smooth")
	list := Gearings(p.Facts)
	for i := range list {
		g := &list[i]
		if !g.HasFit {
			continue
		}
		ratio := g.TotalContactRatio()
		if ratio >= max(lost, least, smooth) {
			continue
		}
		weight, bound := Note, smooth
		switch {
		case ratio < lost:
			weight, bound = Error, lost
		case ratio < least:
			weight, bound = Warning, least
		case ratio >= smooth:
			continue
		}
		m := g.Mesh
		pinion, wheel := m.A, m.B
		if wheel.Teeth.N < pinion.Teeth.N {
			pinion, wheel = wheel, pinion
		}
		f := p.foundMesh(m, m.Wheels.Place(), "mesh %s has a contact ratio of %s, less than %s", m.Label(), figures(ratio, 4), fig(bound)).Weigh(weight)
		if g.AtDistance() {
			f.Message += " at a centre distance of " + mm(g.Distance)
			f.See(placeOf(m.A.Arbor), "%s", m.A.Arbor.Title())
			f.See(placeOf(m.B.Arbor), "%s", m.B.Arbor.Title())
		}
		if g.Fit.UnclampedRatio > g.Fit.ContactRatio+1e-9 {
			f.Message += "; a tip runs past the mate's involute, without that it would be " + figures(ratio+g.Fit.UnclampedRatio-g.Fit.ContactRatio, 4)
		}
		f.See(pinion.Teeth.Place(), "the fewer teeth")
		f.See(wheel.Teeth.Place(), "the more teeth")
		p.Report(f)
	}
	gearingsAside(p, list)
}

// TotalContactRatio is the contact ratio of the fit, with the share of a helix
// as far as the narrower face is known; 0 without a fit.
func (g *Gearing) TotalContactRatio() float64 {
	ratio := g.Fit.ContactRatio
	if g.Pair.A.Helix == 0 || !g.A.Face.Set() || !g.B.Face.Set() {
		return ratio
	}
	face := min(g.A.Face.Or(0), g.B.Face.Or(0))
	if overlap, err := g.Pair.A.OverlapRatio(face); err == nil {
		ratio += max(overlap, -overlap)
	}
	return ratio
}
