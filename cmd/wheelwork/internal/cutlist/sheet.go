// Package cutlist writes what there is to cut: as text, CSV and Markdown.
package cutlist

import (
	"math"
	"strconv"
	"strings"

	"wheelwork/rules/cutting"
)

// A sheet is one table of the list, in cells for people.
type sheet struct {
	title   string
	kind    string // of a row, for CSV
	columns []column
	rows    [][]string
}

type column struct {
	head string
	// key is the column's name in CSV, where all sheets share one set.
	key   string
	right bool
}

func sheets(l *cutting.List) []sheet {
	return []sheet{wheels(l), sprockets(l), chains(l), cutters(l), stock(l)}
}

func wheels(l *cutting.List) sheet {
	s := sheet{title: "Wheels", kind: "wheel", columns: []column{
		{"wheel", "name", false}, {"shape", "shape", false}, {"teeth", "teeth", true}, {"module", "module_mm", true},
		{"blank", "blank_mm", true}, {"depth", "depth_mm", true}, {"face", "face_mm", true}, {"bore", "bore_mm", true},
		{"material", "material", false}, {"cutter", "cutter", false}, {"indexing", "indexing", false}, {"remark", "remark", false},
	}}
	for _, w := range l.Wheels {
		remark := w.Remark
		if w.Cutter != "" && !w.AtHand {
			remark = strings.TrimPrefix(remark+"; cutter not at hand", "; ")
		}
		shape := w.Shape
		if w.Form == "cycloidal" {
			shape = "cycloidal " + shape
		}
		s.rows = append(s.rows, []string{w.Name, shape, count(w.Teeth), figure(w.Module, 6), figure(w.Blank, 3), figure(w.Depth, 3), figure(w.Face, 3), figure(w.Bore, 3), w.Material, w.Cutter, w.Indexing, remark})
	}
	return s
}

func sprockets(l *cutting.List) sheet {
	s := sheet{title: "Sprockets", kind: "sprocket", columns: []column{
		{"sprocket", "name", false}, {"chain", "chain", false}, {"teeth", "teeth", true}, {"pitch", "pitch_mm", true},
		{"pins' circle", "reference_mm", true}, {"outside, least", "blank_least_mm", true}, {"most", "blank_mm", true}, {"root", "root_mm", true},
		{"tooth width", "face_mm", true}, {"bore", "bore_mm", true}, {"indexing", "indexing", false},
	}}
	for _, p := range l.Sprockets {
		s.rows = append(s.rows, []string{p.Name, p.Chain, count(p.Teeth), figure(p.Pitch, 4), figure(p.Reference, 3), figure(p.TipLeast, 3), figure(p.TipMost, 3), figure(p.Root, 3), figure(p.Width, 3), figure(p.Bore, 3), p.Indexing})
	}
	return s
}

func chains(l *cutting.List) sheet {
	s := sheet{title: "Chains", kind: "chain", columns: []column{
		{"chain", "name", false}, {"size", "size", false}, {"pitch", "pitch_mm", true}, {"links", "links", true}, {"length", "length_mm", true}, {"over", "sprockets", false},
	}}
	for _, c := range l.Chains {
		s.rows = append(s.rows, []string{c.Name, c.Size, figure(c.Pitch, 4), count(c.Links), figure(c.Length, 3), strings.Join(c.Sprockets, ", ")})
	}
	return s
}

func cutters(l *cutting.List) sheet {
	s := sheet{title: "By cutter", kind: "cutter", columns: []column{
		{"cutter", "name", false}, {"at hand", "at_hand", false}, {"wheels", "count", true}, {"gaps", "gaps", true},
	}}
	for _, c := range l.Cutters {
		s.rows = append(s.rows, []string{c.Name, map[bool]string{true: "yes", false: "no"}[c.AtHand], count(c.Wheels), count(c.Gaps)})
	}
	return s
}

func stock(l *cutting.List) sheet {
	s := sheet{title: "By stock", kind: "stock", columns: []column{
		{"material", "material", false}, {"thickness", "face_mm", true}, {"blanks", "count", true}, {"largest", "blank_mm", true},
	}}
	for _, b := range l.Stock {
		material := b.Material
		if material == "" {
			material = "not said"
		}
		s.rows = append(s.rows, []string{material, figure(b.Face, 3), count(b.Blanks), figure(b.Largest, 3)})
	}
	return s
}

// figure is a length to so many decimals, "" where it is not known.
func figure(x float64, decimals int) string {
	if math.IsNaN(x) {
		return ""
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

func count(n int64) string {
	if n == 0 {
		return ""
	}
	return strconv.FormatInt(n, 10)
}
