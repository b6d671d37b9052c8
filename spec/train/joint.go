package train

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// Joint is one linear relation between the rates of bodies.
type Joint struct {
	// Part is the mesh, chain, slot, counter, coupling or drive it comes from.
	Part  *spec.Part
	Mesh  *spec.Mesh  // nil if it is none
	Chain *spec.Chain // nil if it is none
	// A and B are the arbors it joins, the driver first; A is nil for a drive.
	A, B *spec.Arbor
	// Carrier is the body on which both axes stand still.
	Carrier spec.Body
	// Ratio is the rate of B for one turn of A, both against the carrier.
	Ratio exact.Rat
	// Wanders is true if the axes do not keep their distance: the joint is
	// left out of the motion.
	Wanders bool
}

// joints lists every joint of the design in the order of the text.
func (t *Train) joints() {
	d := t.Design
	for _, m := range d.Meshes {
		if m.A == nil || m.B == nil || m.A.Arbor == nil || m.B.Arbor == nil || !m.A.Teeth.Set() || !m.B.Teeth.Set() {
			continue
		}
		ratio := exact.Frac(m.A.Teeth.N, m.B.Teeth.N)
		if !SameSense(m) {
			ratio = ratio.Neg()
		}
		t.join(Joint{Part: &m.Part, Mesh: m, A: m.A.Arbor, B: m.B.Arbor, Ratio: ratio}, true)
	}
	for _, c := range d.Chains {
		for i := 1; i < len(c.Over); i++ {
			a, b := c.Over[i-1], c.Over[i]
			if a.Arbor == nil || b.Arbor == nil || !a.Teeth.Set() || !b.Teeth.Set() {
				continue
			}
			ratio := exact.Frac(a.Teeth.N, b.Teeth.N)
			if c.Crossed.On {
				ratio = ratio.Neg()
			}
			t.join(Joint{Part: &c.Part, Chain: c, A: a.Arbor, B: b.Arbor, Ratio: ratio}, true)
		}
	}
	for _, s := range d.Slots {
		if s.Pin != nil && s.Slotted != nil {
			t.join(Joint{Part: &s.Part, A: s.Pin, B: s.Slotted, Ratio: exact.Int(1)}, true)
		}
	}
	for _, c := range d.Counters {
		if c.Driver != nil && c.Driven != nil && c.Steps.Set() {
			ratio := exact.Frac(1, c.Steps.N)
			if c.Sense.Text == "opposite" {
				ratio = ratio.Neg()
			}
			t.join(Joint{Part: &c.Part, A: c.Driver, B: c.Driven, Ratio: ratio}, true)
		}
	}
	for _, c := range d.Couples {
		if c.A != nil && c.B != nil {
			// A coupling may join shafts on different carriers: both turn as one.
			t.join(Joint{Part: &c.Part, A: c.A, B: c.B, Ratio: exact.Int(1)}, false)
		}
	}
}

// SameSense reports whether both wheels of the mesh turn the same way.
func SameSense(m *spec.Mesh) bool {
	if m.Sense.Set() {
		return m.Sense.Text == "same"
	}
	return m.A.Is("ring") || m.B.Is("ring")
}

// join adds the joint and its equation (wb - wc) = ratio (wa - wc).
func (t *Train) join(j Joint, axes bool) {
	carrier := t.carrier(j.A)
	if axes {
		var ok bool
		if carrier, ok = t.between(j.A, j.B); !ok {
			j.Wanders = true
			t.Joints = append(t.Joints, j)
			return
		}
	}
	j.Carrier = spec.Body{Arbor: t.arborOf[carrier]}
	a, b := t.bodyOf[j.A.Index], t.bodyOf[j.B.Index]
	one := exact.Int(1)
	t.equate(a, j.Ratio, b, one.Neg(), carrier, one.Sub(j.Ratio), len(t.Joints))
	t.Joints = append(t.Joints, j)
}

// equate adds an equation of up to three terms, those of one body together.
func (t *Train) equate(a int, ka exact.Rat, b int, kb exact.Rat, c int, kc exact.Rat, joint int) {
	given := [3]term{{a, ka}, {b, kb}, {c, kc}}
	terms := make([]term, 0, 3)
	for _, g := range given {
		if g.body == frame || g.k.IsZero() {
			continue
		}
		merged := false
		for i := range terms {
			if terms[i].body == g.body {
				terms[i].k = terms[i].k.Add(g.k)
				merged = true
			}
		}
		if !merged {
			terms = append(terms, g)
		}
	}
	kept := terms[:0]
	for _, g := range terms {
		if !g.k.IsZero() {
			kept = append(kept, g)
		}
	}
	if len(kept) > 0 {
		t.equations = append(t.equations, equation{terms: kept, joint: joint})
	}
}
