package main

import (
	"fmt"

	"wheelwork/cmd/wheelwork/internal/manual"
	"wheelwork/rules"
)

func rulesVerb() *verb {
	return &verb{
		name: "rules",
		args: "[NAME...]",
		does: "lists the rules, or shows the page of one",
		help: `
The page of a rule says what it checks, why it matters, the formula and where
it is published, its thresholds and how a design sets them, and a design that
breaks it beside one that keeps it.
`,
		examples: []example{
			{"wheelwork rules", "lists all rules in their groups"},
			{"wheelwork rules period-error", "shows the page of one"},
		},
		options: noOptions(func(c *Command, v *verb, args []string) int {
			if len(args) == 0 {
				manual.RuleList(c.out, rules.All())
				fmt.Fprintln(c.out, "wheelwork rules NAME shows the page of one")
				return clean
			}
			for i, name := range args {
				r := rules.Named(name)
				if r == nil {
					return c.misuse(v, "no rule is named %q%s", name, near(name, ruleNames()))
				}
				if i > 0 {
					fmt.Fprintln(c.out)
				}
				manual.RuleText(c.out, r)
			}
			return clean
		}),
		offers: ruleNames,
	}
}

func ruleNames() []string {
	var names []string
	for _, r := range rules.All() {
		names = append(names, r.Name)
	}
	return names
}
