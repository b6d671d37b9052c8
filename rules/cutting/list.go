// Package cutting works out what there is to cut for a design: each wheel's
// blank, cutter and indexing, each chain with its sprockets, and what that comes
// to by cutter and by stock.
package cutting

import (
	"wheelwork/rules"
	"wheelwork/spec"
)

// List is what to cut. Lengths are mm, angles degrees; a figure that the spec does
// not give, or that does not follow from it, is 0 and left out.
type List struct {
	Design    string // its title
	Head      string // the dividing head in words, "" where the design gives none
	Wheels    []Wheel
	Sprockets []Sprocket
	Chains    []Chain

	Cutters []CutterTotal
	Stock   []StockTotal
	Strands []ChainTotal
	// Notes are on the figures, Cautions on the work.
	Notes, Cautions []string
}

// Of works out the list of a design, in the order of its text.
func Of(f *rules.Facts) *List {
	l := &List{Design: f.Design.Head.Title.Text, Head: head(f.Design), Cautions: cautions}
	cut := workshop{f: f}
	cut.divide, cut.dividing = rules.HeadOf(f.Design)
	cut.index()
	for _, w := range f.Design.Wheels {
		l.Wheels = append(l.Wheels, cut.wheel(w))
	}
	l.chains(f, &cut)
	l.total()
	l.notes(cut.dividing)
	return l
}

// head says the dividing head in words.
func head(d *spec.Design) string {
	if d.Dividing == nil {
		return ""
	}
	ratio, ok := rules.Decimal(d.Dividing.Ratio.Exact)
	if !ok {
		ratio = d.Dividing.Ratio.Exact.String()
	}
	s := ratio + " to 1"
	for i, r := range d.Dividing.Circles.List {
		if i == 0 {
			s += ", circles "
		} else {
			s += " "
		}
		s += span(r.From, r.To)
	}
	return s
}
