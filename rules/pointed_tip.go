package rules

import (
	"fmt"
	"math"
	"strings"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "pointed-tip",
		Group:    Teeth,
		Severity: Warning,
		Checks:   "the teeth of an involute wheel are of some width at the tip, and leave a root to stand on",
		Why:      "a tooth shifted far outward runs to a point: a thin edge bends, burrs and wears, and a blank of the full diameter cannot be cut to it at all",
		Formula:  "sa = da (pi/(2z) + 2x tan(a)/z + inv a - inv aa), cos(aa) = db/da",
		Source:   "DIN 3960 and KHK (from memory): 0.2 m for soft wheels, 0.4 m for hardened ones",
		Thresholds: []Threshold{
			{Name: "land", Dimension: quantity.Plain, Default: "0.2", Doc: "least width of a tip in modules"},
		},
		Breaks: func() string {
			return pairExample{pinion: "teeth = 10; module = 1; shift = 0.6", wheel: "teeth = 40; module = 1"}.text()
		},
		Keeps: func() string {
			return pairExample{pinion: "teeth = 10; module = 1; shift = 0.45", wheel: "teeth = 40; module = 1"}.text()
		},
		Run: pointedTip,
	})
}

func pointedTip(p *Pass) {
	least := p.Limit("land")
	short := gearingOf(p.Facts).short
	var want lack
	for _, w := range p.Design.Wheels {
		if !w.Is("spur") && !w.Is("ring") || isCycloidal(w) {
			continue
		}
		if !w.Module.Set() && !w.Pitch.Set() {
			if w.Shift.Set() || w.Addendum.Set() {
				want.of("a wheel gives no module", w.Name.Text)
			}
			continue
		}
		if !w.Is("ring") && plainWheel(w) {
			continue
		}
		gear := GearOf(w)
		gear.Shortening = short[w]
		p.pointedWheel(w, gear, least)
	}
	want.tell(p)
}

func (p *Pass) pointedWheel(w *spec.Wheel, gear tooth.Gear, least float64) {
	if gear.PressureAngle < 5 || gear.PressureAngle > 45 {
		return // unequal-pressure-angle speaks
	}
	blank, err := gear.Blank()
	if err != nil {
		p.Report(p.Found(&w.Part, tipPlace(w), "%s cannot be cut: %s", w.Title(), strings.TrimPrefix(err.Error(), tooth.ErrRange.Error()+": ")).Weigh(Error))
		return
	}
	land := blank.TopLand / gear.Module
	if land >= least-1e-9 {
		return
	}
	f := p.Found(&w.Part, tipPlace(w), "the teeth of %s are %s wide at the tip, less than %s", w.Title(), mm(blank.TopLand), mm(least*gear.Module))
	if land <= 0 {
		f.Weigh(Error)
		f.Message = fmt.Sprintf("the teeth of %s come to a point", w.Title())
		if at, err := gear.TipDiameterFor(0); err == nil {
			f.Message += fmt.Sprintf(" at %s across, before their tip at %s", mm(at), mm(blank.Tip))
		}
	}
	if tip, err := gear.TipDiameterFor(least * gear.Module); err == nil {
		addendum := (tip-blank.Reference)/(2*gear.Module) - gear.Shift
		if addendum = math.Floor(addendum*100) / 100; addendum >= 0.5 {
			if edit, ok := Assign(w.Addendum.At, w.Teeth.At, "addendum", fig(addendum)); ok {
				f.Mend("turn the blank of "+w.Title()+" down to an addendum of "+fig(addendum), edit)
			}
		}
	}
	p.Report(f)
}
