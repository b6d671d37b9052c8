package editor

import (
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/text"
)

// hints writes beside each hand what it does, and beside each mesh how far
// apart its centres are. Text that has problems has none: they would be those
// of another text.
func hints(q *inquiry, p *lsp.RangeParams) (any, error) {
	list := []lsp.InlayHint{}
	for _, c := range q.of {
		m := c.now
		m.mu.Lock()
		m.reach(solved)
		if in := m.at(q.doc.path); in != nil && m.facts != nil && m.fits(q.docs) {
			h := hinting{m: m, in: in, wanted: p.Range, list: list}
			h.hands()
			h.meshes()
			list = h.list
			m.mu.Unlock()
			break
		}
		m.mu.Unlock()
	}
	return list, nil
}

type hinting struct {
	m      *model
	in     *file
	wanted lsp.Range
	list   []lsp.InlayHint
}

// beside adds a hint behind a place, if it lies in the file and range.
func (h *hinting) beside(at text.Place, label, tooltip string) {
	if label == "" || h.m.of(at) != h.in {
		return
	}
	p := h.m.view.Position(h.in.text, at.End)
	if p.Before(h.wanted.Start) || h.wanted.End.Before(p) {
		return
	}
	h.list = append(h.list, lsp.InlayHint{Position: p, Label: label, Tooltip: tooltip, PaddingLeft: true})
}

func (h *hinting) hands() {
	for _, x := range h.m.design.Hands {
		r := h.m.facts.Train.Read(x)
		if !r.Known {
			continue
		}
		label := "stands still"
		if period, ok := r.Period(); ok {
			days := period.Float()
			label = figure.Days(&days)
		}
		if r.HasError {
			ppm := r.PPM()
			label += ", " + figure.PPM(&ppm)
		}
		h.beside(target(x), label, turning(r.Rate)+", against "+x.Against.Or(spec.Frame))
	}
}

// target is where a hand says what it should do, or its name.
func target(x *spec.Hand) text.Place {
	for _, at := range []spec.At{x.Shows.At, x.Period.At, x.Ratio.At} {
		if at.Set() {
			return at.Place()
		}
	}
	return x.Head
}

func (h *hinting) meshes() {
	list := rules.Gearings(h.m.facts)
	for i := range list {
		g := &list[i]
		switch at := g.Mesh.Wheels.Place(); {
		case g.Placed:
			tooltip := ""
			if g.Wanted > 0 {
				tooltip = "wanted " + mm(g.Wanted)
			}
			h.beside(at, "centres "+mm(g.Distance), tooltip)
		case g.Known && g.Fault == nil && g.Wanted > 0:
			h.beside(at, "centres "+mm(g.Wanted)+" wanted", "the axes are not placed yet")
		}
	}
}
