package rules

import (
	"fmt"
	"math"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "tilt",
		Group:    Eclipses,
		Severity: Warning,
		Checks:   "the Moon's track and the axes of Earth and planets lean as they do in the sky, and the Moon's rise and fall can be seen",
		Why:      "the track's lean is what makes the Moon pass above and below most eclipses, the axis's what makes the seasons; a track twice as steep for show puts the Moon out of the shadow where she should be in it",
		Formula:  "lean of the track less 5.145 deg, which sways from 4.98 to 5.30; lean of the Earth's axis less 23.44 deg; others by their planet. The Moon rises and falls to either side by radius x tan(tilt)",
		Source:   "inclination of the Moon's orbit and obliquity of the ecliptic (IAU 1980, Meeus), from memory; inclinations of the planets: elements in Meeus, Astronomical Algorithms, table 31.A; tilts of their axes from memory; the allowances are common practice",
		Thresholds: []Threshold{
			{Name: "track", Dimension: quantity.Angle, Default: "0.2 deg", Doc: "what a track's lean may be off by: the Moon's own sways by 0.16"},
			{Name: "axis", Dimension: quantity.Angle, Default: "0.5 deg", Doc: "what an axis's lean may be off by"},
			{Name: "lean", Dimension: quantity.Angle, Default: "45 deg", Doc: "a day's axis that leans by more is taken for a shaft laid down, behind a dial"},
			{Name: "rise", Dimension: quantity.Length, Default: "1 mm", Doc: "a Moon that rises less than this to either side is noted: it is not seen"},
		},
		Breaks: func() string { return tiltExample("7") },
		Keeps:  func() string { return tiltExample("5.14") },
		Run:    tilt,
	})
}

func tiltExample(tilt string) string {
	return fmt.Sprintf(`
design { title = "The Moon's track" }
arbor "node_tube" {}
track "moon" {
  on     = "node_tube"
  tilt   = %s
  radius = 55
}
hand "node" {
  on    = "node_tube"
  shows = "lunar node"
}
`, tilt)
}

func tilt(p *Pass) {
	var missing lack
	for _, t := range p.Design.Tracks {
		body, lean := orbitOf(p, t)
		switch {
		case !t.Tilt.Set():
			missing.of("it states no tilt", t.Title())
		case body == "":
			missing.of("no hand says whose orbit it is: none on it shows a node or a planet, and none is read against it", t.Title())
		default:
			steep(p, t, body, lean)
		}
	}
	for _, a := range p.Design.Arbors {
		if !a.Tilt.Set() || a.Tilt.Exact.IsZero() {
			continue
		}
		body, lean := axisOf(p.Design, a)
		switch {
		case body == "" || body == "Earth" && a.Tilt.Exact.Abs().Cmp(p.Bound("lean")) > 0:
		case carriedLeaning(a):
			missing.of("what carries it leans itself", a.Title())
		default:
			offAxis(p, a, body, lean)
		}
	}
	missing.tell(p)
}

// steep reports a track.
func steep(p *Pass, t *spec.Track, body string, wanted exact.Rat) {
	stated := t.Tilt.Exact.Abs()
	radius := t.Radius.Or(0)
	rise := func(deg exact.Rat) float64 { return radius * math.Tan(deg.Float()*math.Pi/180) }
	if off := stated.Sub(wanted); off.Abs().Cmp(p.Bound("track")) > 0 {
		sways, who := "", "it"
		if body == "Moon" {
			sways = fmt.Sprintf(" (%s to %s as it sways)", fig(sky.MoonInclinationMin), fig(sky.MoonInclinationMax))
			who = "she"
		}
		f := p.Found(&t.Part, t.Tilt.Place(), "%s leans by %s deg, wanted %s deg, the orbit of %s%s: off by %s deg", t.Title(), fig(stated.Float()), fig(wanted.Float()), theBody(body), sways, signed(off.Float()))
		if t.Radius.Set() {
			f.Message += fmt.Sprintf("; at radius %s %s rises and falls by %s mm to either side, wanted %s mm", mm(radius), who, figures(rise(stated), 4), figures(rise(wanted), 4))
			f.See(t.Radius.Place(), "the radius")
		}
		p.Report(lean(f, t.Tilt.At, wanted))
		return
	}
	if r := rise(stated); body == "Moon" && t.Radius.Set() && r < p.Limit("rise") {
		f := p.Found(&t.Part, t.Radius.Place(), "%s: at radius %s the Moon rises and falls by %s mm to either side, %s x tan %s, less than %s: it is not seen", t.Title(), mm(radius), figures(r, 4), fig(radius), fig(stated.Float()), mm(p.Limit("rise")))
		p.Report(f.See(t.Tilt.Place(), "the tilt").Weigh(Note))
	}
}

// offAxis reports an axis. An axis may be given by its northern end or by that
// about which the body turns counter-clockwise.
func offAxis(p *Pass, a *spec.Arbor, body string, wanted exact.Rat) {
	stated := a.Tilt.Exact.Abs()
	if other := exact.Int(180).Sub(wanted); stated.Sub(other).Abs().Cmp(stated.Sub(wanted).Abs()) < 0 {
		wanted = other
	}
	if off := stated.Sub(wanted); off.Abs().Cmp(p.Bound("axis")) > 0 {
		f := p.Found(&a.Part, a.Tilt.Place(), "%s leans by %s deg, wanted %s deg, the axis of %s: off by %s deg", a.Title(), fig(stated.Float()), fig(wanted.Float()), theBody(body), signed(off.Float()))
		p.Report(lean(f, a.Tilt.At, wanted))
	}
}

// lean adds the remedy that leans a part as wanted.
func lean(f *Finding, at spec.At, wanted exact.Rat) *Finding {
	if edit, ok := Figure(at, wanted, "deg"); ok {
		f.Mend(fmt.Sprintf("lean it by %s deg", fig(wanted.Float())), edit)
	}
	return f
}
