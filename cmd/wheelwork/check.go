package main

import (
	"flag"

	"wheelwork/cmd/wheelwork/internal/inspect"
	"wheelwork/cmd/wheelwork/internal/report"
	"wheelwork/rules"
)

func checkVerb() *verb {
	return &verb{
		name: "check",
		args: "[PATH...]",
		does: "checks designs and says what does not hold, where, and by how much",
		help: `
A PATH is a spec file or a folder, whose designs are all checked: every .hcl or
.toml file in it or below it that has a design block. Without a PATH it is the
current folder.

Each finding names its file, line and column, the rule, and what would mend it.
"wheelwork rules NAME" is the page of a rule: what it checks, why, the formula
and its source. A rule that lacks the facts it needs stands aside, and the end
of the report says for want of what.

Exit code: 0 if nothing was found at or above the threshold of --fail-on,
1 if something was, 2 if a text could not be read.
`,
		examples: []example{
			{"wheelwork check", "checks every design in the current folder and below it"},
			{"wheelwork check moon.hcl --fail-on error", "lets warnings pass"},
			{"wheelwork check --only period-error,drift", "looks at the periods alone"},
			{"wheelwork check --format json designs > report.json", "writes one JSON document for a program to read"},
		},
		options: func(set *flag.FlagSet) run {
			format := oneOf(set, "format", "how the report is written", report.Formats...)
			failOn := oneOf(set, "fail-on", "the severity from which on a finding makes the exit code 1", "warning", "error", "note")
			var only ruleList
			set.Var(&only, "only", "report only these `RULES`, names with commas between")
			aside := oneOf(set, "aside", "how much to say of rules that stood aside", "brief", "full", "off")
			colour := colourOption(set)
			return func(c *Command, _ *verb, args []string) int {
				if len(args) == 0 {
					args = []string{"."}
				}
				designs := inspect.Find(args)
				inspect.Check(designs)
				r := report.New(designs)
				r.Only(only)
				threshold, _ := rules.ParseSeverity(failOn.word)
				r.Write(c.out, format.word, report.Style{
					Colour:    c.coloured(c.Stdout, colour),
					Aside:     aside.word,
					Threshold: threshold,
					Version:   version(),
				})
				return verdict(r, threshold)
			}
		},
	}
}

// verdict is the exit code of a report.
func verdict(r *report.Report, threshold rules.Severity) int {
	switch {
	case len(r.Problems) > 0:
		return unusable
	case r.Worst() >= threshold:
		return found
	}
	return clean
}
