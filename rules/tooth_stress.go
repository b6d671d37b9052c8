package rules

import (
	"fmt"
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

func init() {
	register(&Rule{
		Name:     "tooth-stress",
		Group:    Load,
		Severity: Warning,
		Checks:   "the teeth of every wheel bear what the drive puts on them when something holds the train fast and the drive stalls",
		Why:      "a small motor behind a great reduction is strong: a hand caught in the scenery, or a pin left in a hole, and the slowest wheels lose their teeth long before the motor feels it; a coupling that slips in time saves them",
		Formula:  "stress = F/(b m Y), F = 2 T/d, over the narrower face of the pair; T of the stalled drive by the exact ratio of rates, times the efficiency of each mesh before (where small differences send power round in circles, less what that rubs away), no more than couplings and hands let pass that slip. A bevel is taken in the middle of its face, a helical wheel by its virtual teeth, a ring or crown wheel as a rack, a worm's wheel like a helical one. Each hand, arm and last arbor is held in turn; of planets that are alike each is taken to carry all, since play decides which does",
		Source:   "Lewis: Shigley eq 14-2 and Table 14-2, for 20 degrees and from 12 teeth on (from memory); cycloidal teeth are judged by the same factors, which is rough. Efficiencies: handbooks (from memory), the better end; a worm at rest with a friction of 0.1. Stress allowed: a third of the tensile strength, as is common with the formula; strengths of usual grades (from memory). From three times on, the strength itself, it is an error",

		Thresholds: materialStresses,
		Breaks:     func() string { return stressExample("300 N mm") },
		Keeps:      func() string { return stressExample("200 N mm") },
		Run:        toothStress,
	})
}

func stressExample(torque string) string {
	return fmt.Sprintf(`
design { title = "One mesh behind a motor" }
arbor "motor" {}
arbor "hand" {}
wheel "pinion" {
  on       = "motor"
  teeth    = 20
  module   = 0.5
  face     = 2
  material = "steel"
}
wheel "wheel" {
  on       = "hand"
  teeth    = 101
  module   = 0.5
  face     = 2
  material = "brass"
}
mesh { wheels = ["pinion", "wheel"] }
drive "motor" {
  on     = "motor"
  speed  = "30 rpm"
  torque = "%s"
}
`, torque)
}

// bending is what a wheel's teeth bear in one of its meshes.
type bending struct {
	stress, force, face float64 // MPa, N, mm
	gearing             *Gearing
	load                *JointLoad
}

func toothStress(p *Pass) {
	if len(p.Design.Meshes) == 0 {
		return
	}
	loads := LoadsOf(p.Facts)
	if loads.Lacks != "" {
		p.StandAside("%s", loads.Lacks)
		return
	}
	var want lack
	of := jointGearings(p.Facts)
	worst := make([]bending, len(p.Design.Wheels))
	for i, g := range of {
		load := loads.Of(i)
		switch {
		case g == nil || load == nil || g.Fault != nil:
			continue
		case load.Lacks != "":
			want.of(load.Lacks, g.Mesh.Label())
			continue
		}
		for _, w := range [...]*spec.Wheel{g.A, g.B} {
			if w.Is("worm") {
				continue
			}
			b, lacks := p.bend(g, w, load)
			if lacks != "" {
				want.of(lacks, w.Name.Text)
			} else if b.stress > worst[w.Index].stress {
				worst[w.Index] = b
			}
		}
	}
	bears := map[string]bearable{} // by how specs name the material
	for _, w := range p.Design.Wheels {
		b := &worst[w.Index]
		if b.stress <= 0 {
			continue
		}
		m, met := bears[w.Material.Text]
		if !met {
			m = p.bearableOf(w.Material.Text)
			bears[w.Material.Text] = m
		}
		switch {
		case !w.Material.Set():
			want.of("a wheel does not say its material", w.Name.Text)
		case m.name == "":
			want.of(fmt.Sprintf("what %q bears is not known", w.Material.Text), w.Name.Text)
		case b.stress > m.stress:
			p.bends(w, b, m)
		}
	}
	want.tell(p)
}

// bearable is a material with the stress in MPa that it is to bear.
type bearable struct {
	name   string // "" where it is not known
	stress float64
}

func (p *Pass) bearableOf(material string) bearable {
	name, ok := materialOf(material)
	if !ok {
		return bearable{}
	}
	return bearable{name, p.Limit(name)}
}

func (p *Pass) bends(w *spec.Wheel, b *bending, m bearable) {
	held := b.load.Held
	f := p.Found(&w.Part, w.Face.Place(), "%s bears %s MPa at the roots of its teeth with %s held fast until %s, more than the %s MPa of %s: %s N on %s of face, where %s would do",
		w.Title(), figures(b.stress, 3), held.Part.Title(), gives(held.Limit), fig(m.stress), m.name, figures(b.force, 3), mm(b.face), mm(math.Ceil(b.face*b.stress/m.stress*100)/100))
	if b.stress >= 3*m.stress {
		f.Weigh(Error)
	}
	f.See(w.Material.Place(), "its material")
	f.See(b.gearing.Mesh.Head, "mesh %s", b.gearing.Mesh.Label())
	f.See(held.At.Place(), "the torque at which %s", gives(held.Limit))
	p.Report(f)
}

// gives says how a part gives way.
func gives(part *spec.Part) string {
	if part.Kind == "drive" {
		return part.Title() + " stalls"
	}
	return part.Title() + " slips"
}

// bend is what the teeth of a wheel bear in a mesh, or for want of what that is
// not known.
func (p *Pass) bend(g *Gearing, w *spec.Wheel, load *JointLoad) (b bending, lacks string) {
	module, ok := ModuleOf(w)
	switch {
	case !ok:
		return b, "a wheel gives no module"
	case !w.Face.Set():
		return b, "a wheel does not say its face"
	case w.PressureAngle.Or(20) < 20:
		return b, "no form factor is at hand for a pressure angle below 20 deg"
	}
	mate := g.A
	if mate == w {
		mate = g.B
	}
	b.gearing, b.load, b.face = g, load, w.Face.Exact.Float()
	if mate.Face.Set() && !mate.Is("worm") {
		b.face = min(b.face, mate.Face.Exact.Float())
	}
	torque := load.Torque
	if g.Mesh.A == w {
		torque *= math.Abs(exactRatio(g.Mesh.A, g.Mesh.B).Float())
	}
	if mate.Is("worm") {
		torque *= wormPasses(g, mate.Arbor)
	}
	z := float64(w.Teeth.N)
	diameter, teeth := module*z, z
	switch {
	case w.Is("ring"), w.Is("crown"):
		teeth = spec.MostTeeth
	case w.Is("bevel"):
		cone, ok := coneOf(p.Facts, w)
		if !ok {
			return b, "the cone of a bevel is not known"
		}
		// In the middle of the face tooth and circle are smaller than at the
		// large end.
		sin, cos := math.Sincos(cone * math.Pi / 180)
		middle := 1 - b.face*sin/diameter
		if middle <= 0 {
			return b, "the face of a bevel reaches past its apex"
		}
		module, diameter, teeth = module*middle, diameter*middle, z/math.Max(cos, 1e-6)
	case w.Helix.Set():
		gear := GearOf(w)
		cos := math.Cos(gear.Helix * math.Pi / 180)
		if v, err := gear.VirtualTeeth(); err == nil {
			diameter, teeth = diameter/cos, v
		}
	}
	factor, err := tooth.LewisFactor(min(teeth, spec.MostTeeth))
	if err != nil {
		return b, "no form factor is published for fewer than 12 teeth"
	}
	if b.force, err = tooth.TangentialForce(torque, diameter); err != nil {
		return b, "a torque is beyond all measure"
	}
	if b.stress, err = tooth.LewisStress(b.force, b.face, module, factor); err != nil {
		return b, "a stress is beyond all measure"
	}
	return b, ""
}
