package measure

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/cmd/wheelwork/internal/terminal"
)

// Text writes the measures as tables for people.
func (m *Measure) Text(w io.Writer) error {
	fmt.Fprintf(w, "%s\n", terminal.Printable(m.Design))
	for _, part := range []struct {
		head string
		rows int
		make func() *table.Table
	}{
		{"Meshes, lengths in mm, angles in degrees", len(m.Meshes), m.meshes},
		{"Wheels in their meshes, lengths in mm, angles in degrees; of a ring, the tip is the bore of its teeth", len(m.Meshes), m.wheels},
		{"Chains, lengths in mm, wrap in degrees", len(m.Chains), m.chains},
		{"Play of the whole train at the hands, in degrees", len(m.Hands), m.hands},
	} {
		if part.rows == 0 {
			continue
		}
		fmt.Fprintf(w, "\n%s\n", part.head)
		if err := part.make().Write(w); err != nil {
			return err
		}
	}
	if len(m.Meshes)+len(m.Chains) == 0 {
		fmt.Fprint(w, "\nThe design has neither meshes nor chains.\n")
	}
	return nil
}

func (m *Measure) meshes() *table.Table {
	t := table.New(
		table.Column{Head: "mesh"}, table.Column{Head: "kind"},
		table.Column{Head: "centres", Right: true}, table.Column{Head: "wanted", Right: true},
		table.Column{Head: "angle", Right: true}, table.Column{Head: "contact ratio", Right: true},
		table.Column{Head: "backlash", Right: true}, table.Column{Head: "lead", Right: true},
		table.Column{Head: "same teeth meet after"}, table.Column{Head: "not measured"},
	)
	for i := range m.Meshes {
		x := &m.Meshes[i]
		again := ""
		if h := x.Hunting; h != nil {
			again = fmt.Sprintf("%d and %d turns", h.Turns, h.TurnsSecond)
		}
		t.Row(x.Name, x.Kind, length(x.Centre), length(x.Wanted), degrees(x.WorkingAngle), digits(x.ContactRatio, 4),
			length(x.Backlash), degrees(x.LeadAngle), again, x.CannotMeasured)
	}
	return t
}

func (m *Measure) wheels() *table.Table {
	t := table.New(
		table.Column{Head: "mesh"}, table.Column{Head: "wheel"}, table.Column{Head: "teeth", Right: true},
		table.Column{Head: "module", Right: true}, table.Column{Head: "reference", Right: true},
		table.Column{Head: "tip", Right: true}, table.Column{Head: "root", Right: true},
		table.Column{Head: "top land", Right: true}, table.Column{Head: "cone", Right: true}, table.Column{Head: "play", Right: true},
	)
	for i := range m.Meshes {
		x := &m.Meshes[i]
		for j, name := range x.Wheels {
			mesh := x.Name
			if j > 0 {
				mesh = ""
			}
			t.Row(mesh, name, fmt.Sprint(x.Teeth[j]), length(at(x.Modules, j)), length(at(x.References, j)), length(at(x.Tips, j)),
				length(at(x.Roots, j)), length(at(x.TopLands, j)), degrees(at(x.Cones, j)), degrees(at(x.Play, j)))
		}
	}
	return t
}

func (m *Measure) chains() *table.Table {
	t := table.New(
		table.Column{Head: "chain"}, table.Column{Head: "size"}, table.Column{Head: "pitch", Right: true},
		table.Column{Head: "teeth"}, table.Column{Head: "links", Right: true}, table.Column{Head: "taut", Right: true},
		table.Column{Head: "centres", Right: true}, table.Column{Head: "wrap"}, table.Column{Head: "spans"},
		table.Column{Head: "sag", Right: true}, table.Column{Head: "not measured"},
	)
	for i := range m.Chains {
		x := &m.Chains[i]
		var teeth []string
		for _, z := range x.Teeth {
			teeth = append(teeth, fmt.Sprint(z))
		}
		links := ""
		if x.Links != nil {
			links = fmt.Sprint(*x.Links)
		}
		t.Row(x.Name, x.Size, length(x.Pitch), strings.Join(teeth, ", "), links, digits(x.Exact, 6), length(x.Centre),
			joined(x.Wrap, degrees), joined(x.Spans, length), length(x.Sag), x.CannotMeasured)
	}
	return t
}

func (m *Measure) hands() *table.Table {
	t := table.New(table.Column{Head: "hand"}, table.Column{Head: "play", Right: true}, table.Column{Head: "without that of"})
	for i := range m.Hands {
		h := &m.Hands[i]
		t.Row(h.Name, degrees(&h.Play), strings.Join(h.Without, ", "))
	}
	return t
}

// at is one of a list of figures, nil where the list is not known.
func at(list []float64, i int) *float64 {
	if i >= len(list) {
		return nil
	}
	return &list[i]
}

func joined(list []float64, say func(*float64) string) string {
	var s []string
	for i := range list {
		s = append(s, say(&list[i]))
	}
	return strings.Join(s, ", ")
}

func digits(x *float64, n int) string {
	if x == nil {
		return ""
	}
	return figure.Significant(*x, n)
}

// length is a length to a micrometre.
func length(x *float64) string {
	if x == nil {
		return ""
	}
	return strconv.FormatFloat(*x, 'f', 3, 64)
}

// degrees is an angle to a hundredth.
func degrees(x *float64) string {
	if x == nil {
		return ""
	}
	return strconv.FormatFloat(*x, 'f', 2, 64)
}
