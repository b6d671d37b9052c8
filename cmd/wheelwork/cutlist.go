package main

import (
	"flag"

	"wheelwork/cmd/wheelwork/internal/cutlist"
	"wheelwork/rules/cutting"
)

func cutlistVerb() *verb {
	return &verb{
		name: "cutlist",
		args: "[PATH]",
		does: "lists what to cut: blanks, depths, cutters, indexing, chains",
		help: `
For each wheel: the diameter of the blank, the depth of cut, face and bore, the
cutter at hand or else that of the usual sets, and how the dividing head is
turned from tooth to tooth. For each chain its links and sprockets. Then totals
by cutter and by stock, and the cautions of the workshop.

The PATH is a spec file, or a folder that holds one design; without it, it is
the current folder. What the spec leaves open is left out, never guessed. Check
the design first: the list does not say whether the wheels mesh.
`,
		examples: []example{
			{"wheelwork cutlist designs/table", "writes the list for people"},
			{"wheelwork cutlist --format csv table.hcl > table.csv", "writes one table for a spreadsheet"},
		},
		options: func(set *flag.FlagSet) run {
			format := oneOf(set, "format", "how the list is written", cutlist.Formats...)
			colour := colourOption(set)
			return func(c *Command, v *verb, args []string) int {
				d, code := c.one(v, args, colour)
				if d == nil {
					return code
				}
				list := cutting.Of(d.Facts)
				cutlist.Write(c.out, d.Facts.Design.Head.Title.Text, &list, format.word)
				return clean
			}
		},
	}
}
