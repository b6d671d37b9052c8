package main

import (
	"flag"
	"fmt"

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
what it shows and how far it is off that; how much it drifts in a year, and
how many years it takes until that makes a day or a degree. For each arbor and
stud its rate against the frame. All rates are exact.

The PATH is a spec file, or a folder that holds one design; without it, it is
the current folder. What the spec leaves open is left out, never guessed.
`,
		examples: []example{
			{"wheelwork motion designs/table", "writes the tables"},
			{"wheelwork motion --json table.hcl", "writes one JSON document, rates as fractions"},
		},
		options: func(set *flag.FlagSet) run {
			asJSON := set.Bool("json", false, "write JSON")
			colour := colourOption(set)
			return func(c *Command, v *verb, args []string) int {
				d, code := c.one(v, args, colour)
				if d == nil {
					return code
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
