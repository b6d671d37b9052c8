package main

import (
	"flag"
	"fmt"
	"path/filepath"
	"strings"

	"wheelwork/cmd/wheelwork/internal/drift"
	"wheelwork/cmd/wheelwork/internal/inspect"
	"wheelwork/cmd/wheelwork/internal/motion"
	"wheelwork/cmd/wheelwork/internal/report"
)

func motionVerb() *verb {
	return &verb{
		name: "motion",
		args: "[PATH]",
		does: "says what every hand and arbor of a design does",
		help: `
For each hand: how long a turn takes and which way it goes, seen from above;
what it shows and how far it is off that; how much it drifts in a year, how many
years it takes until that makes a day or a degree, and what it comes to over the
design's horizon. For each arbor and stud its rate against the frame. All rates
are exact.

With --plot it also draws the error of each hand over the horizon, or 100 years,
with the band of its tolerance: a panel a hand, each to a scale of its own.

The PATH is a spec file, or a folder that holds one design; without it, it is
the current folder. What the spec leaves open is left out, never guessed.
`,
		examples: []example{
			{"wheelwork motion designs/table", "writes the tables"},
			{"wheelwork motion --json table.hcl", "writes one JSON document, rates as fractions"},
			{"wheelwork motion --plot drift.svg table.hcl", "draws what each hand is off over the years"},
		},
		options: func(set *flag.FlagSet) run {
			asJSON := set.Bool("json", false, "write JSON")
			plot := set.String("plot", "", "draw the errors over the years into `FILE.svg` too")
			colour := colourOption(set)
			return func(c *Command, v *verb, args []string) int {
				if *plot != "" && !strings.EqualFold(filepath.Ext(*plot), ".svg") {
					return c.misuse(v, "--plot draws SVG: the file is to be named FILE.svg, not %s", *plot)
				}
				d, code := c.one(v, args, colour)
				if d == nil {
					return code
				}
				if *plot != "" {
					if err := drift.Of(d.Facts.Train).Write(*plot); err != nil {
						fmt.Fprintf(c.Stderr, "wheelwork motion: cannot draw %s: %v\n", *plot, err)
						return unusable
					}
				}
				m := motion.Of(d.Facts.Train)
				if *asJSON {
					m.JSON(c.out)
				} else {
					m.Text(c.out)
				}
				return clean
			}
		},
	}
}

// one reads the one design that the arguments name. Where there is none, it
// says why and returns nil with the exit code.
func (c *Command) one(v *verb, args []string, colour *choice) (*inspect.Design, int) {
	switch len(args) {
	case 0:
		args = []string{"."}
	case 1:
	default:
		return nil, c.misuse(v, "one design at a time, not %d", len(args))
	}
	list := inspect.Find(args)
	if len(list) > 1 {
		fmt.Fprintf(c.Stderr, "wheelwork %s: %s holds %d designs; name one of them:\n", v.name, args[0], len(list))
		for _, d := range list {
			fmt.Fprintf(c.Stderr, "  %s\n", d.Name)
		}
		return nil, unusable
	}
	d := &list[0]
	d.Read()
	if len(d.Problems) > 0 {
		report.New(list).Text(c.Stderr, report.Style{Colour: c.coloured(c.Stderr, colour), Aside: "off"})
		return nil, unusable
	}
	return d, clean
}
