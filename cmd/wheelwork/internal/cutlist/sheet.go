// Package cutlist writes cut lists: as tables for people, as Markdown and as
// CSV.
package cutlist

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"wheelwork/rules/cutting"
)

// sheet is one table of a list.
type sheet struct {
	title   string
	columns []column
	rows    [][]string
}

type column struct {
	head  string
	right bool
}

func columns(heads ...string) []column {
	list := make([]column, len(heads))
	for i, h := range heads {
		list[i].head, list[i].right = strings.CutPrefix(h, ">")
	}
	return list
}

func (s *sheet) row(cells ...string) { s.rows = append(s.rows, cells) }

// sheets lays a list out. A figure of 0 is not known and written as nothing.
func sheets(l *cutting.List) []sheet {
	all := []sheet{wheels(l), sprockets(l), chains(l), cutters(l), stock(l), strands(l)}
	kept := all[:0]
	for _, s := range all {
		if len(s.rows) > 0 {
			kept = append(kept, s)
		}
	}
	return kept
}

func wheels(l *cutting.List) sheet {
	s := sheet{title: "Wheels, lengths in mm", columns: columns("wheel", "on", ">teeth", ">module", ">shift", "kind", ">blank", ">depth", "cutter", "at hand", "number", "indexing", ">bore", ">face", "material", "note")}
	if l.Head != "" {
		s.title += "; indexing on a head of " + l.Head
	}
	for i := range l.Wheels {
		w := &l.Wheels[i]
		s.row(w.Name, w.On, count(w.Teeth), figure(w.Module), figure(w.Shift), described(w), fixed(w.Blank, 2), fixed(w.Depth, 3),
			w.Cutter, atHand(w), w.Number, w.Indexing(), figure(w.Bore), figure(w.Face), w.Material, w.Note)
	}
	return s
}

// described is the kind of a wheel, with its form where that is no involute of 20
// degrees.
func described(w *cutting.Wheel) string {
	switch {
	case w.Form != "involute":
		return w.Form + " " + w.Kind
	case w.Pressure != 20:
		return w.Kind + ", " + figure(w.Pressure) + " deg"
	}
	return w.Kind
}

func atHand(w *cutting.Wheel) string {
	switch {
	case !w.ByCutter || w.Cutter == "":
		return ""
	case w.AtHand:
		return "yes"
	}
	return "no"
}

func sprockets(l *cutting.List) sheet {
	s := sheet{title: "Sprockets, lengths in mm", columns: columns("sprocket", "on", ">teeth", "chain", ">pitch", ">pitch circle", ">outside, least", ">most", ">root", ">width", ">bore", "indexing")}
	for i := range l.Sprockets {
		p := &l.Sprockets[i]
		s.row(p.Name, p.On, count(p.Teeth), p.Size, figure(p.Pitch), fixed(p.Diameter, 2), fixed(p.Least, 2), fixed(p.Outside, 2), fixed(p.Root, 2), fixed(p.Width, 2), figure(p.Bore), p.Indexing())
	}
	return s
}

func chains(l *cutting.List) sheet {
	s := sheet{title: "Chains, lengths in mm", columns: columns("chain", "size", ">pitch", ">links", ">length", "sprockets", "note")}
	for _, c := range l.Chains {
		s.row(c.Name, c.Size, figure(c.Pitch), count(c.Links), fixed(c.Length, 1), strings.Join(c.Sprockets, ", "), c.Note)
	}
	return s
}

func cutters(l *cutting.List) sheet {
	s := sheet{title: "Totals by cutter", columns: columns("cutter", "at hand", ">wheels", ">teeth")}
	for _, t := range l.Cutters {
		have := ""
		if t.AtHand {
			have = "yes"
		}
		s.row(t.Cutter, have, count(int64(t.Wheels)), count(t.Teeth))
	}
	return s
}

func stock(l *cutting.List) sheet {
	s := sheet{title: "Totals by stock, lengths in mm; the plate is that of the squares about the blanks", columns: columns("material", ">face", ">blanks", "diameters", ">plate, cm2", "note")}
	for i := range l.Stock {
		t := &l.Stock[i]
		material := t.Material
		if material == "" {
			material = "not said"
		}
		note := ""
		if t.Undimensioned > 0 {
			note = fmt.Sprintf("%d of no known diameter", t.Undimensioned)
		}
		s.row(material, figure(t.Face), count(int64(t.Blanks)), between(t.Least, t.Most), fixed(t.Plate, 0), note)
	}
	return s
}

func between(least, most float64) string {
	if least == most {
		return fixed(most, 2)
	}
	return fixed(least, 2) + " to " + fixed(most, 2)
}

func strands(l *cutting.List) sheet {
	s := sheet{title: "Totals of chain", columns: columns("size", ">strands", ">links", ">length")}
	for _, t := range l.Strands {
		s.row(t.Size, count(int64(t.Strands)), count(t.Links), fixed(t.Length, 1))
	}
	return s
}

func count(n int64) string {
	if n == 0 {
		return ""
	}
	return strconv.FormatInt(n, 10)
}

// figure is a figure as short as it is, to a micrometre.
func figure(x float64) string {
	if x == 0 {
		return ""
	}
	return strconv.FormatFloat(math.Round(x*1000)/1000, 'f', -1, 64)
}

// fixed is a figure to so many places.
func fixed(x float64, places int) string {
	if x == 0 {
		return ""
	}
	step := math.Pow10(places)
	return strconv.FormatFloat(math.Round(x*step)/step, 'f', places, 64)
}
