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
For each wheel the diameter to turn its blank to, the depth of cut, the cutter
with the teeth it serves and its number in the usual sets, how the dividing head
is turned from tooth to tooth, bore, face and material. For each chain its links
and sprockets. Totals by cutter and by stock, and the cautions of the cutlist.

Cutters come from the stock block and indexing from the dividing block, where
the design has them; "wheelwork rules no-cutter" and "wheelwork rules
not-divisible" tell how they are looked up. Lengths are in mm.

The PATH is a spec file, or a folder that holds one design; without it, it is
the current folder. What the spec leaves open is left out, never guessed.

The list gives figures. It never certifies that something is safe to make or to
run; local rules and licensed practice come first.
`,
		examples: []example{
			{"wheelwork cutlist designs/table", "writes the tables"},
			{"wheelwork cutlist --format markdown table.hcl", "writes a page to print"},
			{"wheelwork cutlist --format csv table.hcl", "writes rows for a spreadsheet"},
		},
		options: func(set *flag.FlagSet) run {
			format := oneOf(set, "format", "how the list is written", "text", "csv", "markdown")
			colour := colourOption(set)
			return func(c *Command, v *verb, args []string) int {
				d, code := c.one(v, args, colour)
				if d == nil {
					return code
				}
				l := cutting.Of(d.Facts)
				switch format.word {
				case "csv":
					cutlist.CSV(c.out, l)
				case "markdown":
					cutlist.Markdown(c.out, l)
				default:
					cutlist.Text(c.out, l)
				}
				return clean
			}
		},
	}
}
