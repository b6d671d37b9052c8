package spec

import (
	"strconv"
	"strings"
)

// Title is how messages name the part: `wheel "idler"`.
func (p *Part) Title() string {
	if p.Name.Text == "" {
		return p.Kind
	}
	return p.Kind + " " + strconv.Quote(clip(p.Name.Text))
}

// Label is how the mesh is called: its name, or its wheels.
func (m *Mesh) Label() string { return label(m.Named, m.Wheels) }

// Label is how the chain is called: its name, or its sprockets.
func (c *Chain) Label() string { return label(c.Named, c.Sprockets) }

func label(name Name, of Names) string {
	if name.Set() {
		return name.Text
	}
	list := make([]string, len(of.List))
	for i, n := range of.List {
		list[i] = n.Text
	}
	return strings.Join(list, "/")
}
