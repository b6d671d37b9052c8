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
		args: "[COMMAND|TOPIC]",
		does: "tells how a command is used, or about the spec language",
		examples: []example{
			{"wheelwork help check", "tells how check is used"},
			{"wheelwork help language", "lists the blocks of the spec language"},
			{"wheelwork help language wheel", "tells what a wheel block may hold"},
			{"wheelwork help periods", "lists the periods of the sky that a hand may show"},
		},
		options: noOptions((*Command).help),
		offers:  func() []string { return append(verbNames(), topicNames()...) },
	}
}

func (c *Command) help(v *verb, args []string) int {
	if len(args) == 0 {
		c.overview(c.out)
		return clean
	}
	if of := verbNamed(args[0]); of != nil {
		if len(args) > 1 {
			return c.misuse(v, "one command at a time, not %d", len(args))
		}
		c.explain(of)
		return clean
	}
	for _, t := range topics() {
		if t.name == args[0] {
			return t.tell(c, v, args[1:])
		}
	}
	return c.misuse(v, "there is no command or topic %q%s", args[0], near(args[0], append(verbNames(), topicNames()...)))
}

const begin = `wheelwork checks the specs of geared models: it reads a design, works out
what every hand and arbor does, exactly, and says at which line what does not
hold, why, by how much, and what would mend it.

A small design, moon.hcl, whose hand is to show the Moon's phases:

  design { title = "Moon's age" }
  arbor "day" {}
  arbor "lay" {}
  arbor "moon" {}
  wheel "day_pinion" {
    on    = "day"
    teeth = 24
  }
  wheel "lay_wheel" {
    on    = "lay"
    teeth = 105
  }
  wheel "lay_pinion" {
    on    = "lay"
    teeth = 20
  }
  wheel "moon_wheel" {
    on    = "moon"
    teeth = 135
  }
  mesh { wheels = ["day_pinion", "lay_wheel"] }
  mesh { wheels = ["lay_pinion", "moon_wheel"] }
  clock {
    on     = "day"
    period = "solar day"
  }
  hand "age" {
    on     = "moon"
    shows  = "synodic month"
    within = "30 ppm"
  }

  wheelwork check moon.hcl
  wheelwork motion moon.hcl

`

// overview tells what the program is for and what there is.
func (c *Command) overview(w io.Writer) {
	fmt.Fprint(w, begin, "Commands:\n")
	for _, v := range verbs() {
		if !v.hidden {
			fmt.Fprintf(w, "  %-11s %s\n", v.name, v.does)
		}
	}
	fmt.Fprint(w, "\nTopics of help:\n")
	for _, t := range topics() {
		fmt.Fprintf(w, "  %-11s %s\n", t.name, t.about)
	}
	fmt.Fprint(w, "\nwheelwork help COMMAND or TOPIC tells more.\n")
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
	name, usage := "--"+f.Name, f.Usage
	if c, ok := f.Value.(*choice); ok {
		name += " " + strings.Join(c.words, "|")
	} else {
		var value string
		if value, usage = flag.UnquoteUsage(f); value != "" {
			name += " " + value
		}
	}
	if f.DefValue != "" && f.DefValue != "false" {
		usage += " (" + f.DefValue + " unless said)"
	}
	return fmt.Sprintf("  %s\n      %s\n", name, usage)
}
