package main

import (
	"flag"
	"fmt"
	"io"
	"strings"
)

func helpVerb() *verb {
	return &verb{
		name: "help",
		args: "[COMMAND]",
		does: "tells how a command is used",
		options: noOptions(func(c *Command, v *verb, args []string) int {
			if len(args) == 0 {
				c.overview(c.out)
				return clean
			}
			of := verbNamed(args[0])
			if of == nil {
				return c.misuse(v, "there is no command %q%s", args[0], near(args[0], verbNames()))
			}
			c.explain(of)
			return clean
		}),
		offers: verbNames,
	}
}

// overview tells what there is.
func (c *Command) overview(w io.Writer) {
	fmt.Fprint(w, "wheelwork checks the specs of geared astronomical models.\n\nCommands:\n")
	for _, v := range verbs() {
		fmt.Fprintf(w, "  %-11s %s\n", v.name, v.does)
	}
	fmt.Fprint(w, "\nStart with `wheelwork check PATH`; `wheelwork help COMMAND` tells more of each.\n")
}

// explain tells how a command is used.
func (c *Command) explain(v *verb) {
	w := c.out
	fmt.Fprintf(w, "wheelwork %s", v.name)
	set := flag.NewFlagSet(v.name, flag.ContinueOnError)
	v.options(set)
	var options []string
	set.VisitAll(func(f *flag.Flag) { options = append(options, option(f)) })
	if len(options) > 0 {
		fmt.Fprint(w, " [OPTION...]")
	}
	if v.args != "" {
		fmt.Fprint(w, " "+v.args)
	}
	fmt.Fprintf(w, "\n\n%s.\n", strings.ToUpper(v.does[:1])+v.does[1:])
	if v.help != "" {
		fmt.Fprintf(w, "\n%s\n", strings.TrimSpace(v.help))
	}
	if len(options) > 0 {
		fmt.Fprint(w, "\nOptions:\n", strings.Join(options, ""))
	}
	if len(v.examples) > 0 {
		fmt.Fprint(w, "\nExamples:\n")
		for _, e := range v.examples {
			fmt.Fprintf(w, "  %s\n      %s\n", e.line, e.does)
		}
	}
}

// option tells an option in two lines.
func option(f *flag.Flag) string {
	name := "--" + f.Name
	if c, ok := f.Value.(*choice); ok {
		name += " " + strings.Join(c.words, "|")
	} else if value, usage := flag.UnquoteUsage(f); value != "" {
		return fmt.Sprintf("  %s %s\n      %s\n", name, value, usage)
	}
	usage := f.Usage
	if f.DefValue != "" && f.DefValue != "false" {
		usage += " (" + f.DefValue + " unless said)"
	}
	return fmt.Sprintf("  %s\n      %s\n", name, usage)
}
