package cutting

import (
	"fmt"
	"math"
	"strconv"

	"wheelwork/rules"
	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

// Wheel is how one wheel is made.
type Wheel struct {
	Name, On string
	Kind     string // spur, helical, ring, bevel, crown or worm
	Form     string // of its teeth
	Teeth    int64
	Module   float64 // normal to the tooth
	Pressure float64 // pressure angle
	Shift    float64 // in modules

	// Blank is the diameter to turn: outside, of a bevel at its large end, of a
	// ring the bore of its teeth. Depth is the whole depth of cut.
	Blank, Depth float64
	// Outside is what a ring is at least outside: the bottom of its teeth.
	Outside float64

	// Cutter is the one at hand, as the stock names it; Number is the one of the
	// usual sets, AtHand whether there is one.
	Cutter, Number string
	AtHand         bool
	ByCutter       bool // whether a form cutter cuts it

	// Index is how the dividing head is turned from tooth to tooth, if Indexed.
	Index   tooth.Indexing
	Indexed bool

	Bore, Face float64
	Material   string
	Note       string // what else there is to know
}

// workshop is what the wheels of a design have in common.
type workshop struct {
	f        *rules.Facts
	divide   rules.Head
	dividing bool
	gearing  map[*spec.Wheel]*rules.Gearing // the first that says most of a wheel
}

// index finds the meshes that wheels take their shape from.
func (c *workshop) index() {
	c.gearing = map[*spec.Wheel]*rules.Gearing{}
	list := rules.Gearings(c.f)
	for i := range list {
		for _, w := range [...]*spec.Wheel{list[i].A, list[i].B} {
			if c.gearing[w] == nil || list[i].Pairing == rules.WormPair {
				c.gearing[w] = &list[i]
			}
		}
	}
}

func (c *workshop) wheel(w *spec.Wheel) Wheel {
	one := Wheel{
		Name: w.Name.Text, On: w.On.Text, Kind: kind(w), Form: w.Form.Or("involute"), Teeth: w.Teeth.N,
		Pressure: w.PressureAngle.Or(20), Shift: w.Shift.Or(0),
		Bore: bore(w), Face: w.Face.Or(0), Material: w.Material.Text,
	}
	one.Module, _ = rules.ModuleOf(w)
	if one.Form == "cycloidal" {
		one.Pressure = 0
	}
	c.size(w, &one)
	c.cutter(w, &one)
	c.indexing(w, &one)
	return one
}

func kind(w *spec.Wheel) string {
	if w.Is("spur") && w.Helix.Set() && !w.Helix.Exact.IsZero() {
		return "helical"
	}
	return w.Shape.Or("spur")
}

// note adds to what there is to know.
func (w *Wheel) note(format string, args ...any) {
	if w.Note != "" {
		w.Note += "; "
	}
	w.Note += fmt.Sprintf(format, args...)
}

// size finds the blank and the depth of cut.
func (c *workshop) size(w *spec.Wheel, one *Wheel) {
	size, ok := rules.SizeOf(c.f, w)
	g := c.gearing[w]
	switch {
	case one.Module == 0:
		one.note("the spec gives no module")
		return
	case w.Is("crown"):
		c.crown(w, g, one)
		return
	case !ok:
		one.note("its size follows from a mesh that the spec does not give in full")
		return
	}
	one.Blank, one.Depth = size.Tip, math.Abs(size.Tip-size.Root)/2
	switch one.Kind {
	case "ring":
		one.Outside = size.Root
		one.note("bored to the blank's diameter, shaped inside, outside more than %s", millimetres(size.Root))
	case "helical":
		one.note("helix %s deg, %s hand", degrees(w.Helix.Exact.Float()), w.HandOf.Or("right"))
		if g != nil && g.Pairing == rules.WormPair {
			one.note("mates a worm: gash it and finish it with a hob of the worm's size")
		}
	case "worm":
		one.note("%s, turned or milled", starts(w.Teeth.N))
		if g != nil {
			if s, ok := g.Worm(); ok {
				one.note("lead %s at %s deg, %s hand", millimetres(s.Lead), degrees(s.LeadAngle), w.HandOf.Or("right"))
			}
		}
	case "bevel":
		if cones, ok := g.Cones(); ok {
			cone := cones.PinionAngle
			if g.B == w {
				cone = cones.WheelAngle
			}
			// The blank tapers: depth is square to the cone.
			one.Depth /= math.Max(math.Cos(cone*math.Pi/180), 1e-6)
			one.note("pitch cone %s deg, distance to its apex %s", degrees(cone), millimetres(cones.Distance))
		}
	}
}

// crown is a crown wheel's blank: out to where its face usually ends.
func (c *workshop) crown(w *spec.Wheel, g *rules.Gearing, one *Wheel) {
	one.Depth = one.Module * (w.Addendum.Or(1) + w.Dedendum.Or(1.25))
	if g == nil || g.Pairing != rules.CrownPair {
		one.note("its size follows from a pinion that the spec does not give")
		return
	}
	_, outer, err := tooth.Crown{Teeth: int(w.Teeth.N), Pinion: int(g.A.Teeth.N), Module: one.Module, PressureAngle: one.Pressure}.UsualFace()
	if err == nil {
		one.Blank = 2 * outer
		one.note("teeth stand on its face")
	}
}

// cutter finds the form cutter.
func (c *workshop) cutter(w *spec.Wheel, one *Wheel) {
	cut, by, lacks := rules.CutOf(c.f, w)
	if !by || lacks != "" {
		one.ByCutter = by
		return
	}
	one.ByCutter = true
	if cut.Teeth != w.Teeth.N && cut.Teeth < math.MaxInt64 {
		one.note("cut as %d teeth", cut.Teeth)
	}
	standard, metric, found := rules.StandardCutter(cut)
	if found {
		one.Number = standard.Name
		if metric != "" {
			one.Number += " (metric " + metric + ")"
		}
	}
	if have := rules.CutterFor(c.f, cut); have != nil {
		one.Cutter, one.AtHand = have.Name.Text, true
		return
	}
	one.Cutter = one.Form + " " + strconv.FormatFloat(one.Module, 'g', 6, 64)
	switch {
	case found && standard.To == tooth.RackTeeth:
		one.Cutter += fmt.Sprintf(" %d-rack", standard.From)
	case found:
		one.Cutter += " " + span(int64(standard.From), int64(standard.To))
	default:
		one.Cutter += fmt.Sprintf(" %d", cut.Teeth)
		one.note("no standard cutter is made for it")
	}
}

// indexing finds how the dividing head is turned.
func (c *workshop) indexing(w *spec.Wheel, one *Wheel) {
	if w.Is("worm") || !c.dividing {
		return
	}
	if one.Index, one.Indexed = c.divide.Index(w.Teeth.N); !one.Indexed {
		one.note("the dividing head cannot index %d", w.Teeth.N)
	}
}

// Indexing is how the dividing head is turned from tooth to tooth, in words.
func (w *Wheel) Indexing() string { return indexing(w.Index, w.Indexed) }

// bore is the wheel's bore, or where it says none the diameter of its arbor; a
// ring has none.
func bore(w *spec.Wheel) float64 {
	if !w.Bore.Set() && w.Arbor != nil && !w.Is("ring") {
		return w.Arbor.Diameter.Or(0)
	}
	return w.Bore.Or(0)
}

func starts(n int64) string {
	if n == 1 {
		return "1 start"
	}
	return fmt.Sprintf("%d starts", n)
}

// span is a range of counts as a spec writes it.
func span(from, to int64) string {
	if from == to {
		return strconv.FormatInt(from, 10)
	}
	return fmt.Sprintf("%d-%d", from, to)
}

func millimetres(x float64) string {
	return strconv.FormatFloat(math.Round(x*1000)/1000, 'f', -1, 64) + " mm"
}

func degrees(x float64) string { return strconv.FormatFloat(math.Round(x*1000)/1000, 'f', -1, 64) }
