package main

import (
	"flag"

	"wheelwork/rules/foretell"
)

func almanacVerb() *verb {
	return &verb{
		name: "almanac",
		args: "[PATH]",
		does: "sets the sky's eclipses beside those a model foretells, year by year",
		help: `
The model is set right on its epoch, or on the date of --set, and runs on at its
own rates: new and full moon come by the hand that shows the synodic month, or
by the Moon's hand and the Sun's; where the Sun is then nearer to the node than
a marker's arc reaches, the model foretells the marker's eclipse. The distance
from the node comes from the marker's hand and those that go with it, total or
annular from the anomalistic month. What the model has no hands or markers for
is said. All motions are taken in the mean.

It is followed over the design's horizon, or from --from to --to, both days
included. Dates before 1582-10-15 are of the Julian calendar; the year 0 is
1 BC. The sky's eclipses are known for the years -1999 to 3000, and other years
are refused.

An eclipse counts as foretold where the model's new or full moon falls within
--days of the greatest eclipse. A model whose Moon has drifted further shows it
on a wrong day: it misses the eclipse, and calls another in vain.

The PATH is a spec file, or a folder that holds one design; without it, it is
the current folder.
`,
		examples: []example{
			{"wheelwork almanac designs/table", "the horizon of the design, from its epoch on"},
			{"wheelwork almanac --from 2030-01-01 --to 2039-12-31 table.hcl", "ten years"},
			{"wheelwork almanac --set 1950-01-01 --to 2050-12-31 --csv table.hcl", "as if set in 1950, for a spreadsheet"},
		},
		options: func(set *flag.FlagSet) run {
			var o almanacOptions
			set.Var(&o.from, "from", "the first `DATE`, such as 2027-01-01; the setting unless said")
			set.Var(&o.to, "to", "the last `DATE`; the end of the horizon unless said")
			set.Var(&o.set, "set", "the `DATE` on which the model is set right; the design's epoch, or --from, unless said")
			o.days = foretell.Days
			set.Var(&o.days, "days", "how many `DAYS` a call may lie from its eclipse (1.5 unless said)")
			set.Var(&o.node, "node-off", "as if on setting the Sun stood so many `DEGREES` too far past the node (0 unless said)")
			asJSON := set.Bool("json", false, "write JSON")
			asCSV := set.Bool("csv", false, "write comma-separated values")
			colour := colourOption(set)
			return func(c *Command, v *verb, args []string) int {
				if *asJSON && *asCSV {
					return c.misuse(v, "--json and --csv exclude one another")
				}
				d, code := c.one(v, args, colour)
				if d == nil {
					return code
				}
				a, why := o.almanac(d.Facts.Design, foretell.Of(d.Facts.Train), c.Stderr)
				if why != "" {
					return c.misuse(v, "%s", why)
				}
				switch {
				case *asJSON:
					a.JSON(c.out)
				case *asCSV:
					a.CSV(c.out)
				default:
					a.Text(c.out)
				}
				return clean
			}
		},
	}
}
