package rules

import (
	"fmt"
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "parallel-axis",
		Group:    Motion,
		Severity: Error,
		Checks:   "an axis that leans keeps its direction while the arm that carries it goes round",
		Why:      "the Earth's axis points to one star the whole year, which is what makes the seasons; carried round by its arm, or by a pillar a tooth out, it tells a visitor that it is always summer in one half",
		Formula:  "the rate against the frame of what carries the leaning axis is exactly 0; degrees a year = rate x 365.2422 x 360. The train from a wheel on the frame to a pillar on the arm must give exactly 1 against the arm",
		Source:   "the parallel motion of J. Ferguson's paradox, Select Mechanical Exercises, London 1773; precession, 50 arc seconds a year, is left out by common practice",
		Thresholds: []Threshold{
			{Name: "lean", Dimension: quantity.Angle, Default: "45 deg", Doc: "an axis without hand and teeth is taken for the axis of a ball up to this lean, and for a shaft laid down beyond it"},
		},
		Breaks: func() string { return parallelExample(29) },
		Keeps:  func() string { return parallelExample(30) },
		Run:    parallelAxis,
	})
}

func parallelExample(teeth int) string {
	return fmt.Sprintf(`
design { title = "The Earth's axis" }
stud "post" { at = [0, 0] }
arbor "year" { at = [0, 0] }
arm   "year" { on = "year" }
stud "idler" {
  carried_by = "year"
  at         = [31, 0]
}
arbor "loose" {
  carried_by = "year"
  at         = [31, 0]
}
arbor "pillar" {
  carried_by = "year"
  at         = [62, 0]
}
arm "head" { on = "pillar" }
arbor "earth" {
  carried_by = "head"
  tilt       = 23.44
}
wheel "fixed" {
  on    = "post"
  teeth = 30
}
wheel "idler" {
  on    = "loose"
  teeth = 31
}
wheel "pillar" {
  on    = "pillar"
  teeth = %d
}
mesh { wheels = ["fixed", "idler"] }
mesh { wheels = ["idler", "pillar"] }
hand "earth" {
  on    = "earth"
  shows = "sidereal day"
}
clock {
  on     = "year"
  period = "tropical year"
}
`, teeth)
}

func parallelAxis(p *Pass) {
	var missing lack
	var toothed []bool
	for _, a := range p.Design.Arbors {
		if !a.Tilt.Set() || a.Tilt.Exact.IsZero() || a.Carrier == nil {
			continue
		}
		body := p.Train.Carrier(a)
		if body.Arbor == nil {
			continue // a bracket on the frame
		}
		rate, ok := p.Train.Rate(body)
		if ok && rate.IsZero() {
			continue
		}
		hand := ballOn(p.Design, a)
		if hand == nil {
			if toothed == nil {
				toothed = toothedArbors(p.Design)
			}
			if toothed[a.Index] || a.Tilt.Exact.Abs().Cmp(p.Bound("lean")) > 0 {
				continue
			}
		}
		if !ok || !p.Train.Timed() {
			missing.of("it is not known whether what carries it turns", a.Title())
			continue
		}
		f := turningAxis(p, a, body, rate)
		if hand == nil {
			f.Weigh(Warning)
		} else {
			f.See(hand.Head, "%s is on it", hand.Title())
		}
		p.Report(f)
	}
	missing.tell(p)
}

// ballOn is what shows that an arbor is a ball's axis: the clock or a hand of a
// day or a rotation; nil if there is none.
func ballOn(d *spec.Design, a *spec.Arbor) *spec.Part {
	for _, h := range d.Hands {
		if h.Arbor == a && (rotation(h.Shows) || rotation(h.Period)) {
			return &h.Part
		}
	}
	if c := d.Clock; c != nil && c.Arbor == a {
		return &c.Part
	}
	return nil
}

// rotation reports whether a period is a body's turn about itself: by its name,
// or a day to a hundredth.
func rotation(p spec.Period) bool {
	return p.Set() && (strings.Contains(p.Entry, "rotation") || p.Days.Sub(exact.Int(1)).Abs().Cmp(exact.Frac(1, 100)) <= 0)
}

func toothedArbors(d *spec.Design) []bool {
	toothed := make([]bool, len(d.Arbors))
	for _, w := range d.Wheels {
		if w.Arbor != nil {
			toothed[w.Arbor.Index] = true
		}
	}
	for _, s := range d.Sprockets {
		if s.Arbor != nil {
			toothed[s.Arbor.Index] = true
		}
	}
	return toothed
}

func turningAxis(p *Pass, a *spec.Arbor, body spec.Body, rate exact.Rat) *Finding {
	year := rate.Mul(quantity.TropicalYear).Mul(exact.Int(360)).Float()
	f := p.Found(&a.Part, a.Tilt.Place(), "%s leans by %s deg and its direction turns by %s deg a year with %s that carries it, wanted 0", a.Title(), fig(a.Tilt.Exact.Float()), signed(year), a.Carrier.Title())
	f.See(carriedAt(a), "%s turns once in %s", a.Carrier.Title(), days(rate.Abs().Inv().Float()))
	up := p.Train.Carrier(body.Arbor)
	goes, ok := p.Train.Rate(up)
	if up.Arbor == nil || !ok || goes.IsZero() {
		return f
	}
	value := exact.Int(1).Sub(rate.Quo(goes))
	if value.Sub(exact.Int(1)).Abs().Cmp(exact.Frac(1, 2)) > 0 {
		return f // no train that was meant to give 1
	}
	f.Message += fmt.Sprintf("; its train gives %s against %s, wanted 1", value, carrierName(body.Arbor))
	for _, j := range p.Train.Path(body.Arbor, spec.Body{}) {
		if j.A == nil || j.Carrier != up {
			continue
		}
		f.See(jointAt(j), "through %s, ratio %s", j.Name(), j.Ratio)
		straighten(p, f, j, body, value)
	}
	return f
}

// straighten adds the remedies that make the train's value 1 by the count of
// its first wheel, on the frame, or of its last, on the pillar.
func straighten(p *Pass, f *Finding, j *train.Joint, body spec.Body, value exact.Rat) {
	if j.Mesh == nil {
		return
	}
	for _, w := range [...]*spec.Wheel{j.Mesh.A, j.Mesh.B} {
		teeth := exact.Int(w.Teeth.N)
		switch {
		case p.Train.SameBody(w.Arbor, body.Arbor):
			teeth = teeth.Mul(value)
		case w.Arbor.Stud && p.Train.Carrier(w.Arbor).Arbor == nil:
			teeth = teeth.Quo(value)
		default:
			continue
		}
		n, whole := teeth.Int64()
		edit, ok := Replace(w.Teeth.At, teeth.String())
		if whole && ok && n >= 3 && n <= spec.MostTeeth && used(p.Facts).meshes[w.Index] == 1 {
			f.Mend(fmt.Sprintf("give %s %d teeth", w.Title(), n), edit)
		}
	}
}
