package main

import (
	"flag"
	"io"
	"os"

	"github.com/mattn/go-isatty"
)

// colourOption declares the option that says whether to use colours.
func colourOption(set *flag.FlagSet) *choice {
	return oneOf(set, "colour", "whether to use colours; auto uses them on a terminal, unless NO_COLOR is set", "auto", "always", "never")
}

func (c *Command) coloured(w io.Writer, option *choice) bool {
	switch option.word {
	case "always":
		return true
	case "never":
		return false
	}
	return onTerminal(w) && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
}

// onTerminal reports whether what is written there is shown on a terminal.
func onTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && isatty.IsTerminal(f.Fd())
}
