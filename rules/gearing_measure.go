package rules

import (
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

// Measures is what can be measured of a mesh: mm and degrees, of its two wheels
// in the order of the mesh. What cannot be computed is NaN.
type Measures struct {
	Centre        float64 // distance of the axes as placed
	Wanted        float64 // that the pair asks for
	WorkingAngle  float64 // working pressure angle
	ContactRatio  float64
	Backlash      float64 // along the working circles, as placed or as stated
	Tip, Root     [2]float64
	Hunt          tooth.Hunt
	Diameter      [2]float64 // reference circles
	Cone          [2]float64 // half angles of pitch cones
	LeadAngle     float64    // of a worm
	ConeDistance  float64    // from the apex to the large end
	Interfering   [2]bool    // whether its tip digs into the mate's flank
	TopLand, Play [2]float64 // arc in mm at the tip; backlash as degrees of its own turn
}

// Measure returns what can be measured of the mesh.
func (g *Gearing) Measure() Measures {
	nan := math.NaN()
	both := [2]float64{nan, nan}
	m := Measures{Centre: nan, Wanted: nan, WorkingAngle: nan, ContactRatio: nan, Backlash: nan, LeadAngle: nan, ConeDistance: nan,
		Tip: both, Root: both, Diameter: both, Cone: both, TopLand: both, Play: both}
	m.Hunt, _ = tooth.NewHunt(int(g.Mesh.A.Teeth.N), int(g.Mesh.B.Teeth.N))
	if g.Placed {
		m.Centre = g.Distance
	}
	if !g.Known || g.Fault != nil {
		return m
	}
	switch {
	case g.HasFit:
		g.measureFit(&m)
	case g.Pairing == ClockPair:
		if s, err := g.Clock.Sizes(); err == nil {
			m.Wanted = s.Centre
			m.Diameter = [2]float64{s.WheelPitch, s.PinionPitch}
			m.Tip = [2]float64{s.WheelTip, s.PinionTip}
			m.Root = [2]float64{s.WheelRoot, s.PinionRoot}
		}
	case g.Pairing == BevelPair:
		g.measureCones(&m)
	case g.Pairing == WormPair:
		if s, ok := g.Worm(); ok {
			m.Wanted, m.LeadAngle = s.Centre, s.LeadAngle
			module := s.WheelDiameter / float64(g.B.Teeth.N)
			m.Diameter = [2]float64{s.WormTip - 2*module, s.WheelDiameter}
			for i, w := range [...]*spec.Wheel{g.A, g.B} {
				m.Tip[i] = m.Diameter[i] + 2*w.Addendum.Or(1)*module
				m.Root[i] = m.Diameter[i] - 2*w.Dedendum.Or(1.25)*module
			}
		}
	}
	if play, ok := g.Backlash(); ok {
		m.Backlash = play
		if !g.HasFit {
			for i := range m.Play {
				m.Play[i] = 2 * play / m.Diameter[i] * 180 / math.Pi
			}
		}
	}
	if g.Flipped {
		for _, pair := range []*[2]float64{&m.Tip, &m.Root, &m.Diameter, &m.Cone, &m.TopLand, &m.Play} {
			pair[0], pair[1] = pair[1], pair[0]
		}
		m.Interfering[0], m.Interfering[1] = m.Interfering[1], m.Interfering[0]
	}
	return m
}

func (g *Gearing) measureFit(m *Measures) {
	f := &g.Fit
	m.Wanted, m.WorkingAngle, m.ContactRatio = g.Wanted, f.WorkingAngle, f.ContactRatio
	if _, ok := g.Backlash(); ok {
		m.Play = [2]float64{f.A.Play, f.B.Play}
	}
	m.Tip = [2]float64{f.A.Tip, f.B.Tip}
	m.Root = [2]float64{f.A.Root, f.B.Root}
	m.Diameter = [2]float64{f.A.Reference, f.B.Reference}
	m.TopLand = [2]float64{f.A.TopLand, f.B.TopLand}
	m.Interfering = [2]bool{f.A.Interferes, f.B.Interferes}
}

func (g *Gearing) measureCones(m *Measures) {
	c, ok := g.Cones()
	if !ok {
		return
	}
	module, _ := ModuleOf(g.A)
	m.ConeDistance = c.Distance
	m.Cone = [2]float64{c.PinionAngle, c.WheelAngle}
	for i, w := range [...]*spec.Wheel{g.A, g.B} {
		d := module * float64(w.Teeth.N)
		lean := math.Cos(m.Cone[i] * math.Pi / 180)
		m.Diameter[i] = d
		m.Tip[i] = d + 2*w.Addendum.Or(1)*module*lean
		m.Root[i] = d - 2*w.Dedendum.Or(1.25)*module*lean
	}
}

// Backlash is the play in mm along the working circles, as the axes are placed
// or, where that does not say it, as the mesh states; ok is false where neither
// does. Cycloidal teeth have the play of their form instead.
func (g *Gearing) Backlash() (mm float64, ok bool) {
	switch {
	case g.involute():
		if g.HasFit && (g.AtDistance() || !g.Placed && g.Mesh.Backlash.Set()) {
			return g.Fit.Backlash, true
		}
		return 0, false
	case g.Pairing == ClockPair:
		return 0, false
	}
	// A worm's thread is cut thinner for its play, so that what is stated holds;
	// else it is a rack drawn out of its wheel.
	s, stated := g.statedWorm()
	if g.Mesh.Backlash.Set() || !stated || !g.Placed {
		return g.Mesh.Backlash.Or(0), g.Mesh.Backlash.Set()
	}
	return 2 * (g.Distance - s.Centre) * math.Tan(g.A.PressureAngle.Or(20)*math.Pi/180), true
}

// statedWorm is the sizes of a worm pair whose lead the spec gives.
func (g *Gearing) statedWorm() (tooth.WormSizes, bool) {
	if g.Pairing != WormPair {
		return tooth.WormSizes{}, false
	}
	if _, ok := g.statedLead(); !ok {
		return tooth.WormSizes{}, false
	}
	return g.Worm()
}

// Cones is the pitch cones of a bevel pair, A's as the pinion's; ok is false
// where the shafts' angle or a module is not known, or no cones fit. Axes point
// from the cones' apex to the wheels; with the sense of the mesh they say which
// of the two angles between the axes is meant.
func (g *Gearing) Cones() (tooth.Cones, bool) {
	module, ok := ModuleOf(g.A)
	if g.Pairing != BevelPair || !ok || !g.crossingStated() {
		return tooth.Cones{}, false
	}
	c, err := g.bevel(module).Cones()
	return c, err == nil
}

func (g *Gearing) bevel(module float64) tooth.Bevel {
	angle := g.Crossing
	if g.Mesh.Sense.Text == "same" {
		angle = 180 - angle
	}
	return tooth.Bevel{Pinion: int(g.A.Teeth.N), Wheel: int(g.B.Teeth.N), Module: module, ShaftAngle: angle}
}

// Worm is the sizes of a worm pair; the module of both is the worm's axial
// one. The worm's diameter follows from its helix
// angle (90 degrees less the lead angle), or from the helix of its wheel (the
// lead angle), or where neither is given from the distance of the axes; ok is
// false where none says it.
func (g *Gearing) Worm() (tooth.WormSizes, bool) {
	module, ok := ModuleOf(g.B)
	if g.Pairing != WormPair || !ok {
		return tooth.WormSizes{}, false
	}
	w := tooth.Worm{Starts: int(g.A.Teeth.N), Teeth: int(g.B.Teeth.N), Module: module, Shift: g.B.Shift.Or(0)}
	lead, stated := g.statedLead()
	switch {
	case stated:
		w.Diameter = module * float64(w.Starts) / math.Tan(lead*math.Pi/180)
	case g.Placed:
		w.Diameter = 2*(g.Distance-w.Shift*module) - module*float64(w.Teeth)
	}
	if w.Diameter <= 0 {
		return tooth.WormSizes{}, false
	}
	s, err := w.Sizes()
	return s, err == nil
}

// statedLead is the lead angle in degrees that the spec gives.
func (g *Gearing) statedLead() (degrees float64, ok bool) {
	switch {
	case g.A.Helix.Set():
		degrees = 90 - g.A.Helix.Exact.Float()
	case g.B.Helix.Set():
		degrees = g.B.Helix.Exact.Float()
	}
	return degrees, degrees > 0 && degrees < 90
}
