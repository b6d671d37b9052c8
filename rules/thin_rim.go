package rules

import (
	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "thin-rim",
		Group:    Fit,
		Severity: Warning,
		Checks:   "between the roots of a wheel's teeth and its bore there is metal enough",
		Why:      "a pinion bored too wide splits through a tooth gap when it is pressed on, and one whose teeth reach its bore falls apart in the cutter",
		Formula: "rim = (root diameter - bore)/2, in whole depths of the teeth; where the spec gives no bore, wheel and arbor are taken to be of one piece, and the roots must not lie within the arbor. " +
			"No rim left is an error, and a rim below full strength a note",
		Source: "AGMA 2001-D04, rim thickness factor, from memory: full strength from 1.2 whole depths on, no figure below 0.5",
		Thresholds: []Threshold{
			{Name: "least", Dimension: quantity.Plain, Default: "0.5", Doc: "less rim than so many whole depths is a warning"},
			{Name: "full", Dimension: quantity.Plain, Default: "1.2", Doc: "less rim than so many whole depths is a note"},
		},
		Breaks: func() string { return rimExample("7.8") },
		Keeps:  func() string { return rimExample("4") },
		Run:    thinRim,
	})
}

func rimExample(bore string) string {
	return `
design { title = "Pinion on a pipe" }
arbor "pipe" { diameter = ` + bore + ` }
wheel "pinion" {
  on     = "pipe"
  teeth  = 20
  module = 0.5
  bore   = ` + bore + `
}
`
}

func thinRim(p *Pass) {
	var wants lack
	least, full := p.Limit("least"), p.Limit("full")
	for _, w := range p.Design.Wheels {
		if w.Is("ring") || w.Is("crown") {
			continue
		}
		hole, ok := w.Bore, w.Bore.Set()
		if !ok && w.Arbor != nil {
			hole, ok = w.Arbor.Diameter, w.Arbor.Diameter.Set()
		}
		if !ok {
			wants.of("these have no bore, nor their arbors a diameter", w.Title())
			continue
		}
		size, ok := SizeOf(p.Facts, w)
		if !ok {
			wants.of("the diameters of these are not known", w.Title())
			continue
		}
		rim, depth := (size.Root-hole.Exact.Float())/2, (size.Tip-size.Root)/2
		if rim >= full*depth-1e-9 {
			continue
		}
		switch {
		case w.Bore.Set():
			thinBored(p, w, size.Root, rim, depth, least)
		case rim < -1e-9:
			p.Report(p.Found(&w.Part, w.Teeth.Place(), "%s is cut into its arbor: its roots lie at %s, the arbor has %s", w.Title(), mm(size.Root), measure(w.Arbor.Diameter)).
				See(w.Arbor.Diameter.Place(), "the arbor's diameter"))
		}
	}
	wants.tell(p)
}

// thinBored reports a wheel whose bore leaves it less than its full strength.
func thinBored(p *Pass, w *spec.Wheel, root, rim, depth, least float64) {
	var f *Finding
	if rim <= 0 {
		f = p.Found(&w.Part, w.Bore.Place(), "%s has no rim: its bore of %s reaches the roots of its teeth at %s", w.Title(), measure(w.Bore), mm(root)).Weigh(Error)
	} else {
		f = p.Found(&w.Part, w.Bore.Place(), "%s has a rim of %s between its roots at %s and its bore of %s: %s whole depths", w.Title(), mm(rim), mm(root), measure(w.Bore), figures(rim/depth, 3))
		if rim >= least*depth-1e-9 {
			f.Message += ", full strength takes " + figures(p.Limit("full"), 3)
			f.Weigh(Note)
		} else {
			f.Message += ", " + figures(least, 3) + " are wanted"
		}
	}
	p.Report(f.See(w.Teeth.Place(), "the teeth"))
}
