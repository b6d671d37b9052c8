package main

import (
	"context"
	"flag"
	"math"
	"os"
	"runtime/debug"
	"time"

	"wheelwork/cmd/wheelwork/internal/editor"
)

func editorVerb() *verb {
	return &verb{
		name: "editor",
		does: "serves an editor: the language server, on standard input and output",
		help: `
An editor starts this by itself and talks to it in the Language Server Protocol
(LSP 3.17). Findings appear as the text is typed, over all files of a design,
with remedies to apply; names are completed, followed and renamed over files,
in HCL and TOML alike.

The server reads files and never writes one: what changes, the editor changes.
It links the page of a rule to its findings where the pages lie beside the
program, or where --pages says; else hovering over a finding shows the rule.

An editor may set the same in its initialization options, or under "wheelwork"
in its configuration: {"pauseMilliseconds": 150, "rulePages": "https://..."}.

Exit code: 0 after shutdown and exit, 1 where the editor left without them.
`,
		examples: []example{
			{"wheelwork editor", "is what an editor is told to start"},
			{"wheelwork editor --pause 500ms", "adds findings when the text has rested for half a second"},
		},
		options: func(set *flag.FlagSet) run {
			pause := set.Duration("pause", 150*time.Millisecond, "how `LONG` the text must rest before findings are added")
			pages := set.String("pages", "", "the `FOLDER` or URI that holds the rules' pages as NAME.md")
			return func(c *Command, v *verb, args []string) int {
				switch {
				case len(args) > 0:
					return c.misuse(v, "it takes no argument")
				case *pause < 0:
					return c.misuse(v, "--pause must not be negative")
				}
				collectSteadily()
				o := editor.Options{Pause: *pause, Pages: *pages, Version: version(), Log: c.Stderr}
				if o.Pages == "" {
					if program, err := os.Executable(); err == nil {
						o.Pages = editor.PagesBeside(program)
					}
				}
				return editor.Serve(context.Background(), c.Stdin, c.Stdout, o)
			}
		},
		offers: func() []string { return []string{} },
	}
}

// collectSteadily suits the collector to a process that lives for hours.
func collectSteadily() {
	if os.Getenv("GOGC") == "" && os.Getenv("GOMEMLIMIT") == "" {
		debug.SetGCPercent(100)
		debug.SetMemoryLimit(math.MaxInt64)
	}
}
