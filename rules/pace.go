package rules

import (
	"fmt"

	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "pace",
		Group:    Motion,
		Severity: Warning,
		Checks:   "at full speed the model runs through its time as fast as the clock's pace asks",
		Why:      "the pace decides what a visitor sees: a day in two seconds shows a year in twelve minutes, a day in ten seconds loses the room before the seasons turn",
		Formula:  "time by the watch for one period of the clock = 1 / its rate with the drive at full speed; error = reached / wanted - 1",
		Source:   "rate of the clock's arbor for one rpm of the drives, exact; the allowance is common practice for motors under load",
		Thresholds: []Threshold{
			{Name: "percent", Dimension: quantity.Plain, Default: "5", Doc: "what the pace may be off by, in percent"},
		},
		Breaks: func() string { return paceExample("15 rpm") },
		Keeps:  func() string { return paceExample("30 rpm") },
		Run:    pace,
	})
}

func paceExample(speed string) string {
	return fmt.Sprintf(`
design { title = "Earth that turns in two seconds" }
arbor "earth" {}
drive "motor" {
  on    = "earth"
  speed = "%s"
}
clock {
  on     = "earth"
  period = "solar day"
  pace   = "2 s"
}
`, speed)
}

func pace(p *Pass) {
	c := p.Design.Clock
	if c == nil || !c.Pace.Set() {
		return
	}
	speed, ok := p.Train.Speed()
	if !ok {
		why := "the clock does not turn with the drives"
		if len(p.Design.Drives) == 0 {
			why = "no drive says how fast the model runs"
		}
		p.StandAside("%s", why)
		return
	}
	reached := c.Period.Days.Quo(speed)
	wanted := c.Pace.Exact
	off := reached.Quo(wanted).Sub(exact.Int(1)).Mul(exact.Int(100))
	if off.Abs().Cmp(p.Bound("percent")) <= 0 {
		return
	}
	year := quantity.TropicalYear.Quo(speed)
	f := p.Found(&c.Part, c.Pace.Place(), "one turn of the clock takes %s at full speed, wanted %s: off by %s %%; a year takes %s", watch(reached.Float()), watch(wanted.Float()), signed(off.Float()), watch(year.Float()))
	for _, v := range p.Design.Drives {
		f.See(v.Speed.Place(), "%s runs at %s rpm", v.Title(), fig(v.Speed.Exact.Float()))
	}
	if len(p.Design.Drives) == 1 {
		v := p.Design.Drives[0]
		rpm := roundTo(v.Speed.Exact.Mul(reached).Quo(wanted), 4)
		if edit, ok := Figure(v.Speed.At, rpm, "rpm"); ok {
			f.Mend(fmt.Sprintf("run %s at %s rpm", v.Title(), fig(rpm.Float())), edit)
		}
	}
	p.Report(f)
}
