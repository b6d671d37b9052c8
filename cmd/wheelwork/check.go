package main

import (
	"flag"
	"fmt"

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

With --touched the PATHs are files that changed, and what is checked is every
design of their repository that they belong to, each once; files that belong to
none are passed over.

A record holds findings by rule and part, not by line. With --known, findings
that it holds are let pass and counted, and its entries that no longer match are
told: record anew when they are mended.

Exit code: 0 if nothing was found at or above the threshold of --fail-on,
1 if something was, 2 if a text could not be read.
`,
		examples: []example{
			{"wheelwork check", "checks every design in the current folder and below it"},
			{"wheelwork check moon.hcl --fail-on error", "lets warnings pass"},
			{"wheelwork check --only period-error,drift", "looks at the periods alone"},
			{"wheelwork check --format json designs > report.json", "writes one JSON document for a program to read"},
			{"wheelwork check --touched moon.hcl stock.toml", "checks the designs these files belong to, as a hook does"},
			{"wheelwork check --record known.json", "notes what is found, so that check --known known.json stops at new findings only"},
			{"wheelwork check --watch", "checks again whenever a file is saved"},
		},
		options: func(set *flag.FlagSet) run {
			var o checkOptions
			o.format = oneOf(set, "format", "how the report is written", report.Formats...)
			o.failOn = oneOf(set, "fail-on", "the severity from which on a finding makes the exit code 1", "warning", "error", "note")
			set.Var(&o.only, "only", "report only these `RULES`, names with commas between")
			o.aside = oneOf(set, "aside", "how much to say of rules that stood aside", "brief", "full", "off")
			set.BoolVar(&o.touched, "touched", false, "the PATHs are files that changed: check each design they belong to, once")
			set.StringVar(&o.known, "known", "", "let findings pass that the record in `FILE` knows")
			set.StringVar(&o.record, "record", "", "write what is found into a record, `FILE`, for --known")
			set.BoolVar(&o.watch, "watch", false, "check again whenever a file is saved, until interrupted")
			o.colour = colourOption(set)
			return func(c *Command, v *verb, args []string) int {
				switch {
				case o.watch && o.record != "":
					return c.misuse(v, "--watch writes no record")
				case o.touched && len(args) == 0:
					return clean // no file changed
				case len(args) == 0:
					args = []string{"."}
				}
				if o.watch {
					return c.watch(&o, args)
				}
				return c.check(&o, args, nil)
			}
		},
	}
}

// checkOptions are the options of check.
type checkOptions struct {
	format, failOn, aside, colour *choice
	only                          ruleList
	touched, watch                bool
	known, record                 string
}

// check checks once and writes the report. Where files is not nil, it gets the
// files that were read.
func (c *Command) check(o *checkOptions, args []string, files *[]string) int {
	find := inspect.Find
	if o.touched {
		find = inspect.Touched
	}
	designs := find(args)
	inspect.Check(designs)
	if files != nil {
		*files = inspect.Files(designs)
	}
	r := report.New(designs)
	r.Only(o.only)
	if o.record != "" {
		if len(r.Problems) == 0 {
			if err := report.WriteRecord(o.record, r.Record(o.record)); err != nil {
				fmt.Fprintf(c.Stderr, "wheelwork check: %s: %v\n", o.record, err)
				return unusable
			}
			fmt.Fprintf(c.Stderr, "findings recorded in %s: %d\n", o.record, len(r.Findings))
			return clean
		}
	}
	if o.known != "" {
		record, err := report.ReadRecord(o.known)
		if err != nil {
			fmt.Fprintf(c.Stderr, "wheelwork check: %s: %v\n", o.known, err)
			return unusable
		}
		r.Less(o.known, record)
	}
	threshold, _ := rules.ParseSeverity(o.failOn.word)
	r.Write(c.out, o.format.word, report.Style{
		Colour:    c.coloured(c.Stdout, o.colour),
		Aside:     o.aside.word,
		Threshold: threshold,
		Version:   version(),
	})
	return verdict(r, threshold)
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
