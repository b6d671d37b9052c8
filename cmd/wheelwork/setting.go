package main

import (
	"errors"
	"flag"
	"io"
	"math"
	"strconv"
	"strings"

	"wheelwork/cmd/wheelwork/internal/setting"
	onDate "wheelwork/rules/setting"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

func settingVerb() *verb {
	return &verb{
		name: "setting",
		args: "[PATH]",
		does: "says at which angle each hand stands on a date, and how it is set there",
		help: `
For each hand: the angle from its zero mark on the date, in the sense in which it
turns, by the mean longitudes and arguments of the sky; a period that is not of
the sky is counted from the design's epoch, a ratio from the hand it refers to.
Zero is where the sky's angle is: the equinox, new moon, perigee, the ascending
node, midnight or the Moon's transit at Greenwich.

Then the order in which the hands are set, from the drive outwards: by running
the drive, by a coupling or a hand that slips, or by lifting teeth out and letting
them in where the hand stands nearest, with what that leaves. It begins with every
hand on its zero mark, as the model is put together.

With --to it says instead how the drives turn from one date to another: turns of
the crank, minutes of the motor, exactly, and which way.

Dates are days of Universal Time, those before 1582-10-15 of the Julian calendar;
the year 0 is 1 BC. The sky is known for the years -1999 to 3000, and other years
are refused. The PATH is a spec file, or a folder that holds one design; without
it, it is the current folder.
`,
		examples: []example{
			{"wheelwork setting --date 2027-03-20 --time 20:25 designs/table", "sets it to a moment"},
			{"wheelwork setting table.hcl", "sets it to the design's epoch"},
			{"wheelwork setting --from 2027-01-01 --to 2027-08-02 table.hcl", "how long the motor runs to an eclipse"},
		},
		options: func(set *flag.FlagSet) run {
			var o settingOptions
			set.Var(&o.date, "date", "the `DATE`, such as 2027-01-01; the design's epoch unless said")
			set.Var(&o.time, "time", "the `TIME` of the day in UT, such as 18:30; 0 h, or the epoch's, unless said")
			set.Var(&o.from, "from", "the `DATE` from which the drives run; the design's epoch unless said")
			set.Var(&o.to, "to", "the `DATE` to which they run")
			asJSON := set.Bool("json", false, "write JSON")
			colour := colourOption(set)
			return func(c *Command, v *verb, args []string) int {
				if o.to.given && (o.date.given || o.time.given) {
					return c.misuse(v, "--to goes with --from, not with --date and --time")
				}
				if o.from.given && !o.to.given {
					return c.misuse(v, "--from wants --to DATE, up to which the drives run")
				}
				d, code := c.one(v, args, colour)
				if d == nil {
					return code
				}
				w, why := o.of(d.Facts.Train)
				if why != "" {
					return c.misuse(v, "%s", why)
				}
				if *asJSON {
					w.JSON(c.out)
				} else {
					w.Text(c.out)
				}
				return clean
			}
		},
	}
}

// settingOptions say to what a model is set.
type settingOptions struct {
	date, from, to dateOption
	time           timeOption
}

// of is what is to be written, or why there is nothing.
func (o *settingOptions) of(t *train.Train) (w writer, why string) {
	if o.to.given {
		from, why := o.start(t.Design, &o.from, "--from DATE, on which the drives begin")
		if why != "" {
			return nil, why
		}
		return setting.BetweenDays(t, from, halves(o.to.jd)), ""
	}
	day, why := o.start(t.Design, &o.date, "--date DATE, to which it is set")
	if why != "" {
		return nil, why
	}
	s, err := onDate.On(t, day)
	if err != nil {
		return nil, err.Error()
	}
	return setting.Of(t.Design, s), ""
}

// writer is what both kinds of report are.
type writer interface {
	Text(io.Writer) error
	JSON(io.Writer) error
}

// start is the day that is asked for, or the design's epoch, at the time.
func (o *settingOptions) start(d *spec.Design, date *dateOption, say string) (exact.Rat, string) {
	day := halves(date.jd)
	if !date.given {
		epoch, ok := onDate.EpochOf(d)
		if !ok {
			return day, "the design states no epoch: say " + say
		}
		if e := epoch.Float(); e < sky.FirstDay || e >= sky.EndDay {
			return day, outside("the epoch", e) + ": say " + say
		}
		if day = epoch; o.time.given {
			day = halves(math.Floor(epoch.Float()-0.5) + 0.5)
		}
	}
	return day.Add(o.time.part), ""
}

// halves is a Julian day at 0 h as an exact number.
func halves(jd float64) exact.Rat { return exact.Frac(int64(2*jd), 2) }

// timeOption is an option that takes a time of day.
type timeOption struct {
	given bool
	part  exact.Rat // of the day
	text  string
}

func (o *timeOption) String() string { return o.text }

// Set reads a time.
func (o *timeOption) Set(text string) error {
	seconds, most := int64(0), [...]int64{24, 60, 60}
	parts := strings.Split(text, ":")
	ok := len(parts) == 2 || len(parts) == 3
	for i := 0; ok && i < 3; i++ {
		n := int64(0)
		if i < len(parts) {
			var err error
			n, err = strconv.ParseInt(parts[i], 10, 8)
			ok = err == nil && len(parts[i]) == 2 && n >= 0 && n < most[i]
		}
		seconds = seconds*60 + n
	}
	if !ok {
		return errors.New("no time such as 18:30 or 18:30:15")
	}
	*o = timeOption{true, exact.Frac(seconds, 86400), text}
	return nil
}
