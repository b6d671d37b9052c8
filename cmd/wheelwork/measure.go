package main

import (
	"flag"

	"wheelwork/cmd/wheelwork/internal/measure"
)

func measureVerb() *verb {
	return &verb{
		name: "measure",
		args: "[PATH]",
		does: "measures every mesh and chain of a design",
		help: `
For each mesh: the distance of its axes and the one its teeth ask for, working
pressure angle, contact ratio, backlash and when the same two teeth meet again;
for each of its wheels the diameters, the tooth's width at its tip and its play.
For each chain: the links there are and those that lie taut, wrap, spans and
sag. For each hand the play of its whole train. Lengths are in mm, angles in
degrees.

The PATH is a spec file, or a folder that holds one design; without it, it is
the current folder. What the spec leaves open is left out, never guessed.
`,
		examples: []example{
			{"wheelwork measure designs/table", "writes the tables"},
			{"wheelwork measure --json table.hcl", "writes one JSON document"},
		},
		options: func(set *flag.FlagSet) run {
			asJSON := set.Bool("json", false, "write JSON")
			colour := colourOption(set)
			return func(c *Command, v *verb, args []string) int {
				d, code := c.one(v, args, colour)
				if d == nil {
					return code
				}
				m := measure.Of(d.Facts)
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
