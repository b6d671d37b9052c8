package rules

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// Cutter is a form cutter at hand: "involute 0.5 17-20" is of module 0.5 and
// serves 17 to 20 teeth.
type Cutter struct {
	Name     spec.Name // as the stock has it
	Form     string
	Module   float64 // mm
	From, To int64
}

// cutterForms are the forms that a cutter may have, those of wheels.
var cutterForms = []string{"involute", "cycloidal"}

// rackWord stands for the rack, the wheel of endless teeth, as a range's end.
const rackWord = "rack"

type cuttersKey struct{}

// Cutters returns the cutters at hand, those that cannot be read left out.
func Cutters(f *Facts) []Cutter {
	return Shared(f, cuttersKey{}, func(f *Facts) []Cutter {
		if f.Design.Stock == nil {
			return nil
		}
		var list []Cutter
		for _, n := range f.Design.Stock.Cutters.List {
			if c, fault := readCutter(n); fault == "" {
				list = append(list, c)
			}
		}
		return list
	})
}

// readCutter reads a cutter's form, module and teeth, or says what is wrong.
func readCutter(n spec.Name) (c Cutter, fault string) {
	c.Name = n
	words := strings.Fields(n.Text)
	if len(words) != 3 {
		return c, "it takes a form, a module and teeth"
	}
	c.Form = words[0]
	if c.Form != cutterForms[0] && c.Form != cutterForms[1] {
		return c, fmt.Sprintf("%q is no form of teeth: it is %s", c.Form, strings.Join(cutterForms, " or "))
	}
	module, err := exact.Parse(words[1])
	if err != nil || module.Sign() <= 0 {
		return c, fmt.Sprintf("%q is no module in mm", words[1])
	}
	c.Module = module.Float()
	from, to, ranged := strings.Cut(words[2], "-")
	if !ranged {
		to = from
	}
	c.From, err = strconv.ParseInt(from, 10, 64)
	if to == rackWord {
		c.To = math.MaxInt64
	} else if err == nil {
		c.To, err = strconv.ParseInt(to, 10, 64)
	}
	if err != nil || c.From < 1 || c.To < c.From {
		return c, fmt.Sprintf("%q is no range of teeth", words[2])
	}
	return c, ""
}

// Range is the teeth the cutter serves, as a spec writes them.
func (c *Cutter) Range() string {
	switch {
	case c.To == math.MaxInt64:
		return fmt.Sprintf("%d-%s", c.From, rackWord)
	case c.From == c.To:
		return strconv.FormatInt(c.From, 10)
	}
	return fmt.Sprintf("%d-%d", c.From, c.To)
}

// serves reports whether the cutter is of the form and module.
func (c *Cutter) serves(form string, module float64) bool {
	return c.Form == form && sameFigure(c.Module, module)
}

// Cut is what a wheel's teeth ask of a form cutter.
type Cut struct {
	Form   string
	Module float64 // mm, normal to the tooth
	// Teeth is the count by which the cutter is chosen: of a helical wheel or a
	// bevel that of the spur wheel its teeth look like.
	Teeth int64
}

// CutOf returns what a wheel asks of a cutter. by is false for what form
// cutters do not cut: rings, which are shaped, crown wheels and worms. lacks says
// for want of what it is not known.
func CutOf(f *Facts, w *spec.Wheel) (cut Cut, by bool, lacks string) {
	if w.Is("ring") || w.Is("crown") || w.Is("worm") {
		return Cut{}, false, ""
	}
	module, ok := ModuleOf(w)
	if !ok {
		return Cut{}, true, "a wheel gives no module"
	}
	cut = Cut{w.Form.Or(cutterForms[0]), module, w.Teeth.N}
	switch {
	case w.Is("bevel"):
		cone, ok := coneOf(f, w)
		if !ok {
			return Cut{}, true, "the cone of a bevel is not known"
		}
		cut.Teeth = virtualCount(float64(w.Teeth.N) / math.Cos(cone*math.Pi/180))
	case w.Helix.Set() && !isCycloidal(w):
		if z, err := GearOf(w).VirtualTeeth(); err == nil {
			cut.Teeth = virtualCount(z)
		}
	}
	return cut, true, ""
}

// virtualCount is a count that need not be whole, rounded; a rack's is without end.
func virtualCount(z float64) int64 {
	const endless = 1e9
	if !(math.Abs(z) < endless) {
		return math.MaxInt64
	}
	return int64(math.Round(z))
}

// CutterFor is the first cutter at hand that serves; nil if none does.
func CutterFor(f *Facts, cut Cut) *Cutter {
	list := Cutters(f)
	for i := range list {
		if c := &list[i]; c.serves(cut.Form, cut.Module) && c.From <= cut.Teeth && cut.Teeth <= c.To {
			return c
		}
	}
	return nil
}

// StandardCutter is the cutter of the usual sets for so many teeth: of involute
// ones that of eight, of cycloidal ones that of twenty-four. metric is its number
// where sets are numbered the other way. found is false where there is none.
func StandardCutter(cut Cut) (c tooth.Cutter, metric string, found bool) {
	set := tooth.EightCutters
	if cut.Form == "cycloidal" {
		set = tooth.LetterCutters
	}
	z := int(min(cut.Teeth, spec.MostTeeth))
	c, found, err := set.For(z)
	if err != nil || !found {
		return tooth.Cutter{}, "", false
	}
	if set == tooth.EightCutters {
		if m, ok, err := tooth.EightMetric.For(z); ok && err == nil {
			metric = m.Name
		}
	}
	return c, metric, true
}

type conesKey struct{}

// coneOf is the half angle in degrees of a bevel's pitch cone.
func coneOf(f *Facts, w *spec.Wheel) (degrees float64, ok bool) {
	cones := Shared(f, conesKey{}, func(f *Facts) map[*spec.Wheel]float64 {
		var of map[*spec.Wheel]float64
		list := Gearings(f)
		for i := range list {
			if c, ok := list[i].Cones(); ok {
				if of == nil {
					of = map[*spec.Wheel]float64{}
				}
				of[list[i].A], of[list[i].B] = c.PinionAngle, c.WheelAngle
			}
		}
		return of
	})
	degrees, ok = cones[w]
	return degrees, ok
}
