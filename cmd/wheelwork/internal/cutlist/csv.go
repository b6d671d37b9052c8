package cutlist

import (
	"encoding/csv"
	"io"
	"strings"

	"wheelwork/rules/cutting"
	"wheelwork/rules/tooth"
)

// csvColumns are the columns of the CSV, those of every kind of row: the first
// says what a row is. Lengths are in mm, angles in degrees.
var csvColumns = []string{
	"row", "name", "on", "kind", "form", "pressure_angle", "teeth", "module", "shift", "blank", "depth", "cutter", "at_hand", "number",
	"turns", "holes", "circle", "bore", "face", "material", "size", "pitch", "pitch_circle", "outside_least", "outside", "root", "width",
	"links", "length", "sprockets", "wheels", "blanks", "least", "most", "plate_cm2", "strands", "note",
}

// record is a row by its columns.
type record map[string]string

// CSV writes a list as comma-separated values (RFC 4180), one head and all rows
// under it: wheels, sprockets, chains, totals, notes and cautions.
func CSV(w io.Writer, l *cutting.List) error {
	out := csv.NewWriter(w)
	out.Write(csvColumns)
	write := func(r record) {
		row := make([]string, len(csvColumns))
		for i, c := range csvColumns {
			row[i] = harmless(r[c])
		}
		out.Write(row)
	}
	for i := range l.Wheels {
		write(wheelRecord(&l.Wheels[i]))
	}
	for i := range l.Sprockets {
		p := &l.Sprockets[i]
		r := record{
			"row": "sprocket", "name": p.Name, "on": p.On, "teeth": count(p.Teeth), "size": p.Size, "pitch": figure(p.Pitch),
			"pitch_circle": fixed(p.Diameter, 3), "outside_least": fixed(p.Least, 3), "outside": fixed(p.Outside, 3),
			"root": fixed(p.Root, 3), "width": fixed(p.Width, 3), "bore": figure(p.Bore),
		}
		r.index(p.Index)
		write(r)
	}
	for _, c := range l.Chains {
		write(record{
			"row": "chain", "name": c.Name, "size": c.Size, "pitch": figure(c.Pitch), "links": count(c.Links), "length": fixed(c.Length, 3),
			"sprockets": strings.Join(c.Sprockets, " "), "note": c.Note,
		})
	}
	for _, t := range l.Cutters {
		have := ""
		if t.AtHand {
			have = "yes"
		}
		write(record{"row": "total by cutter", "cutter": t.Cutter, "at_hand": have, "wheels": count(int64(t.Wheels)), "teeth": count(t.Teeth)})
	}
	for i := range l.Stock {
		t := &l.Stock[i]
		write(record{
			"row": "total by stock", "material": t.Material, "face": figure(t.Face), "blanks": count(int64(t.Blanks)),
			"least": fixed(t.Least, 3), "most": fixed(t.Most, 3), "plate_cm2": fixed(t.Plate, 1),
		})
	}
	for _, t := range l.Strands {
		write(record{"row": "total of chain", "size": t.Size, "strands": count(int64(t.Strands)), "links": count(t.Links), "length": fixed(t.Length, 3)})
	}
	for _, n := range l.Notes {
		write(record{"row": "note", "note": n})
	}
	for _, n := range l.Cautions {
		write(record{"row": "caution", "note": n})
	}
	out.Flush()
	return out.Error()
}

func wheelRecord(w *cutting.Wheel) record {
	r := record{
		"row": "wheel", "name": w.Name, "on": w.On, "kind": w.Kind, "form": w.Form, "pressure_angle": figure(w.Pressure), "teeth": count(w.Teeth),
		"module": figure(w.Module), "shift": figure(w.Shift), "blank": fixed(w.Blank, 3), "depth": fixed(w.Depth, 3),
		"cutter": w.Cutter, "at_hand": atHand(w), "number": w.Number,
		"bore": figure(w.Bore), "face": figure(w.Face), "material": w.Material, "note": w.Note,
	}
	r.index(w.Index)
	return r
}

// index says how the dividing head is turned; what cannot be indexed has no turns
// and no holes.
func (r record) index(x tooth.Indexing) {
	r["turns"], r["holes"], r["circle"] = count(int64(x.Turns)), count(int64(x.Holes)), count(int64(x.Circle))
}

// harmless keeps spreadsheets from taking text for a formula. Figures stay as
// they are.
func harmless(s string) string {
	if s == "" || !strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return s
	}
	if strings.Trim(s[1:], "0123456789.") == "" && s[0] == '-' {
		return s
	}
	return "'" + s
}
