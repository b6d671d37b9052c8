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
	f, ok := w.(*os.File)
	return ok && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb" && isatty.IsTerminal(f.Fd())
}
