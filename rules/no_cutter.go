package rules

import (
	"fmt"
	"math"
	"strings"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

func init() {
	register(&Rule{
		Name:     "no-cutter",
		Group:    Making,
		Severity: Warning,
		Checks:   "a cutter at hand serves the form, module and tooth count of every wheel, and every cutter is written so that it can be read",
		Why:      "a form cutter is right for a few counts only: with its neighbour in the set the flanks come out too full or too hollow, and a cutter of another module is scrap",
		Formula:  "helical wheels are looked up by z/cos3(helix), bevels by z/cos(cone angle), rounded",
		Source:   "sets of eight involute cutters (Rose, Modern Machine-Shop Practice), of which none serves fewer than 12 teeth; the ranges hold, since makers number their sets in opposite directions. Rings are shaped, crown wheels and worms cut otherwise: they are not looked up. A cutter is written as form, module and teeth: \"involute 0.5 17-20\", \"cycloidal 0.4 8\", \"involute 1 135-rack\"",
		Breaks:   func() string { return cutterExample(36) },
		Keeps:    func() string { return cutterExample(32) },
		Run:      noCutter,
	})
}

func cutterExample(teeth int) string {
	return fmt.Sprintf(`
design { title = "One wheel" }
stock {
  cutters = [
    "involute 0.5 21-25",
    "involute 0.5 26-34",
  ]
}
arbor "hand" {}
wheel "hand" {
  on     = "hand"
  teeth  = %d
  module = 0.5
}
`, teeth)
}

func noCutter(p *Pass) {
	s := p.Design.Stock
	switch {
	case s == nil:
		p.StandAside("the design lists no stock")
		return
	case !s.Cutters.Set():
		p.StandAside("the stock lists no cutters")
		return
	}
	for _, n := range s.Cutters.List {
		if _, fault := readCutter(n); fault != "" {
			p.faultyCutter(n, fault)
		}
	}
	var want lack
	for _, w := range p.Design.Wheels {
		cut, by, lacks := CutOf(p.Facts, w)
		switch {
		case !by:
			continue
		case lacks != "":
			want.of(lacks, w.Name.Text)
			continue
		case CutterFor(p.Facts, cut) != nil:
			continue
		}
		f := p.Found(&w.Part, w.Teeth.Place(), "no cutter at hand serves %s, %s: %s", w.Title(), asked(w, cut), p.cuttersOf(cut))
		switch c, metric, found := StandardCutter(cut); {
		case found:
			f.Message += "; of the usual set it is " + CutterNumber(c, metric)
		case cut.Form == "involute":
			f.Message += "; no standard involute cutter is made for fewer than 12 teeth"
		}
		p.Report(f.See(s.Cutters.KeyPlace(), "the cutters at hand"))
	}
	want.tell(p)
}

func (p *Pass) faultyCutter(n spec.Name, fault string) {
	f := p.Found(&p.Design.Stock.Part, n.Place(), "cutter %q cannot be read: %s; write \"involute 0.5 17-20\"", n.Text, fault)
	if words := strings.Fields(n.Text); len(words) > 0 {
		if near := spec.Nearest(words[0], cutterForms); near != "" && near != words[0] {
			if edit, ok := Replace(n.At, `"`+strings.Join(append([]string{near}, words[1:]...), " ")+`"`); ok {
				f.Mend("write "+near, edit)
			}
		}
	}
	p.Report(f)
}

// asked says what a wheel asks of a cutter.
func asked(w *spec.Wheel, cut Cut) string {
	s := fmt.Sprintf("%d %s teeth of module %s", w.Teeth.N, cut.Form, mm(cut.Module))
	if cut.Teeth != w.Teeth.N && cut.Teeth < math.MaxInt64 {
		s += fmt.Sprintf(", cut as %d", cut.Teeth)
	}
	return s
}

// cuttersOf says what cutters of the form and module there are.
func (p *Pass) cuttersOf(cut Cut) string {
	var ranges []string
	list := Cutters(p.Facts)
	for i := range list {
		if c := &list[i]; c.serves(cut.Form, cut.Module) {
			ranges = append(ranges, c.Range())
		}
	}
	switch len(ranges) {
	case 0:
		return "there is none of that form and module"
	case 1:
		return "the only one of that form and module is for " + ranges[0]
	}
	return "there are those for " + listed(ranges)
}

// CutterNumber says the number of a cutter in its set and what it serves.
func CutterNumber(c tooth.Cutter, metric string) string {
	s := "letter " + c.Name
	if metric != "" {
		s = "number " + c.Name + " of eight (" + metric + " in metric sets)"
	}
	switch {
	case c.To == tooth.RackTeeth:
		return s + fmt.Sprintf(", for %d to the rack", c.From)
	case c.From == c.To:
		return s + fmt.Sprintf(", for %d", c.From)
	}
	return s + fmt.Sprintf(", for %d to %d", c.From, c.To)
}
