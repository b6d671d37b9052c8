package rules

import (
	"fmt"
	"math"
	"strings"
	"sync"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "doubtful-target",
		Group:    Motion,
		Severity: Warning,
		Checks:   "a quoted period near one of the sky's is that period to the digits quoted, a hand named after a cycle has that cycle, and eclipses are not made to return with the node or with the phases",
		Why:      "a train cut to a slip of the pen keeps it to the last decimal: it agrees with its spec and disagrees with the sky for good",
		Formula:  "quoted is right where it is the catalogue's period rounded or cut off at its last digit; it is doubted where it is neither and differs by beyond to near ppm. A fraction such as 59/2 d says of itself that it is a choice, and whole numbers of months (Saros, Metonic cycle) lie near too many others to be guessed",
		Source:   "periods of the catalogue, each with its own source; the return of eclipses is 223 synodic months or 18.03 yr, the node's round 18.61 yr and the Metonic cycle 19.00 yr, which eclipses do not follow",
		Thresholds: []Threshold{
			{Name: "near", Dimension: quantity.Plain, Default: "1000", Doc: "ppm from a catalogue entry beyond which another period is meant: a unit in the fourth digit"},
			{Name: "beyond", Dimension: quantity.Plain, Default: "200", Doc: "ppm within which a period quoted to many digits is a train's own and not a slip"},
			{Name: "outer", Dimension: quantity.Plain, Default: "500", Doc: "the same for Jupiter to Pluto, whose published periods differ that much from theory to theory"},
		},
		Breaks: func() string { return doubtfulExample("27.53 d") },
		Keeps:  func() string { return doubtfulExample("27.55 d") },
		Run:    doubtfulTarget,
	})
}

func doubtfulExample(period string) string {
	return fmt.Sprintf(`
design { title = "Near and far Moon" }
arbor "moon" {}
clock {
  on     = "moon"
  period = "anomalistic month"
}
hand "anomaly" {
  on     = "moon"
  period = "%s"
}
`, period)
}

func doubtfulTarget(p *Pass) {
	d := p.Design
	bounds := [...]exact.Rat{p.Bound("beyond"), p.Bound("outer"), p.Bound("near")}
	marked := marks(d)
	for _, h := range d.Hands {
		if nodeForEclipses(p, h, marked[h]) || misnamed(p, h, bounds[2]) {
			continue
		}
		doubt(p, &h.Part, h.Shows, bounds)
		doubt(p, &h.Part, h.Period, bounds)
	}
	if c := d.Clock; c != nil {
		doubt(p, &c.Part, c.Period, bounds)
	}
}

// A cycle is one entry of the catalogue, its length and rate ready to compare.
type cycle struct {
	sky.Period
	days  exact.Rat
	about float64 // the same, to pick out what is near
	outer bool    // whether theories differ about it
}

// cycles lists the catalogue without the whole numbers of months.
var cycles = sync.OnceValue(func() []cycle {
	month := exact.FromBig(sky.SynodicMonth())
	var list []cycle
	for _, e := range sky.Periods() {
		days := exact.FromBig(e.Days)
		if n := days.Quo(month); n.IsInt() && n.Cmp(exact.Int(1)) > 0 {
			continue
		}
		planet, what, _ := strings.Cut(e.Name, " ")
		outer := what != "rotation" && (planet == "Jupiter" || planet == "Saturn" || planet == "Uranus" || planet == "Neptune" || planet == "Pluto")
		list = append(list, cycle{e, days, days.Float(), outer})
	}
	return list
})

// doubt reports a quoted period that is near an entry and is not it.
func doubt(p *Pass, part *spec.Part, quoted spec.Period, bounds [3]exact.Rat) {
	unit, ok := lastDigit(quoted)
	if !ok {
		return
	}
	var nearest *cycle
	var least exact.Rat
	list := cycles()
	figure, window := quoted.Days.Float(), 3e-6*bounds[2].Float()
	for i := range list {
		c := &list[i]
		if math.Abs(figure-c.about) > window*c.about {
			continue // too far for its digits to matter
		}
		if says(quoted.Days, c.days, unit) {
			return
		}
		off := quoted.Days.Quo(c.days).Sub(exact.Int(1)).Abs()
		if nearest == nil || off.Cmp(least) < 0 {
			nearest, least = c, off
		}
	}
	if nearest == nil {
		return
	}
	beyond := bounds[0]
	if nearest.outer {
		beyond = bounds[1]
	}
	million := exact.Int(1_000_000)
	if off := least.Mul(million); off.Cmp(beyond) <= 0 || off.Cmp(bounds[2]) > 0 {
		return
	}
	off := quoted.Days.Quo(nearest.days).Sub(exact.Int(1)).Mul(million).Float()
	f := p.Found(part, quoted.Place(), "%s quotes %s, near the %s of %s but neither that rounded nor cut off there: off by %s", part.Title(), quotation(quoted), nearest.Name, days(nearest.days.Float()), ppm(off))
	quote(f, quoted, nearest, unit)
	p.Report(f)
}

// quotation is what is quoted, with the unit a bare number has.
func quotation(p spec.Period) string {
	s := strings.Trim(p.Quoted, `"'`)
	if _, unit := lastFigure(s); unit == "" {
		s += " d"
	}
	return s
}

// quote adds the remedies: the entry to as many digits, or its name.
func quote(f *Finding, quoted spec.Period, to *cycle, unit exact.Rat) {
	old := quoted.Place().Text()
	if figure, name := lastFigure(quoted.Quoted); strings.Contains(old, figure+name) && strings.Trim(old, `"' `) == figure+name {
		scale, err := quantity.Parse("1"+name, quantity.Time)
		places := 0
		if _, after, ok := strings.Cut(figure, "."); ok {
			places = len(after)
		}
		if err == nil {
			right := to.days.Quo(scale).Big().FloatString(places)
			if edit, ok := Replace(quoted.At, strings.Replace(old, figure, right, 1)); ok {
				f.Mend(fmt.Sprintf("quote the %s, %s%s", to.Name, right, name), edit)
			}
		}
	}
	show(f, quoted.At, to.Name)
}

// show adds the remedy that names the catalogue's entry.
func show(f *Finding, at spec.At, entry string) {
	name, ok := Replace(at, `"`+entry+`"`)
	if !ok {
		return
	}
	edits := []Edit{name}
	if key := at.KeyPlace(); key.Text() == "period" && f.Part != "clock" {
		edits = append(edits, Edit{Place: key, Text: "shows"})
	}
	f.Mend("show the "+entry+" of the catalogue", edits...)
}
