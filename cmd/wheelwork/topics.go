package main

import (
	"fmt"

	"wheelwork/cmd/wheelwork/internal/manual"
	"wheelwork/spec"
)

// topic is something that help tells about beside the commands.
type topic struct {
	name, about string
	tell        func(c *Command, v *verb, args []string) int
}

func topics() []topic {
	return []topic{
		{"language", "the blocks of the spec language, or one of them: help language wheel", tellLanguage},
		{"periods", "the periods of the sky that a hand may show", tellPeriods},
		{"bounds", "how a design sets the severity and thresholds of rules", page(boundsPage)},
		{"waivers", "how a design lets a single finding stand", page(waiversPage)},
	}
}

func topicNames() []string {
	var names []string
	for _, t := range topics() {
		names = append(names, t.name)
	}
	return names
}

func tellLanguage(c *Command, v *verb, args []string) int {
	if len(args) == 0 {
		manual.LanguageText(c.out)
		fmt.Fprintln(c.out, "\nwheelwork help language BLOCK tells what a block may hold")
		return clean
	}
	for i, name := range args {
		k := spec.KindOf(name)
		if k == nil {
			var kinds []string
			for _, k := range spec.Language() {
				kinds = append(kinds, k.Kind)
			}
			return c.misuse(v, "there is no block %q%s", name, near(name, kinds))
		}
		if i > 0 {
			fmt.Fprintln(c.out)
		}
		manual.BlockText(c.out, k)
	}
	return clean
}

func tellPeriods(c *Command, v *verb, args []string) int {
	if len(args) > 0 {
		return c.misuse(v, "periods takes no argument")
	}
	manual.PeriodsText(c.out)
	return clean
}

// page tells a page of text.
func page(text string) func(c *Command, v *verb, args []string) int {
	return func(c *Command, _ *verb, _ []string) int {
		fmt.Fprint(c.out, text)
		return clean
	}
}

const boundsPage = `A bounds block holds a block for each rule it speaks of: the severity (error,
warning, note, or off) and the thresholds that the rule's page names.

  bounds {
    hunting-tooth {
      severity = "off"
    }
  }

In TOML:

  [bounds.hunting-tooth]
  severity = "off"

It may stand in the design or in a file that it uses, so that several designs
share one. What the design itself says comes first.
`

const waiversPage = `A comment lets a single finding stand. It names the rule and gives the reason:

  mesh {
    wheels = ["first", "second"] # waive hunting-tooth: turned by hand, on show days
  }

It holds for the line it stands on, or for the next one; and where a block
begins there, for the whole block. A waiver without a reason does not hold, and
one that waives nothing any more is itself reported, by stale-waiver.
`
