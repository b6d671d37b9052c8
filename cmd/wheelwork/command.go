package main

import (
	"bufio"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"wheelwork/spec"
)

// The exit codes.
const (
	clean    = 0 // nothing at or above the threshold
	found    = 1 // findings at or above the threshold
	unusable = 2 // text that could not be read, or misuse
)

// Command is the command line as a value: a test runs it without a process.
type Command struct {
	Stdin          io.Reader
	Stdout, Stderr io.Writer

	out  *bufio.Writer    // Stdout
	stop <-chan os.Signal // ends what goes on until interrupted; nil stands for the process's signals
}

// Main runs the command line, without the program's name, and returns the
// exit code.
func (c *Command) Main(args []string) int {
	c.out = bufio.NewWriterSize(c.Stdout, 32<<10)
	code := c.dispatch(args)
	if err := c.out.Flush(); err != nil {
		fmt.Fprintf(c.Stderr, "wheelwork: cannot write: %v\n", err)
		return unusable
	}
	return code
}

func (c *Command) dispatch(args []string) int {
	if len(args) == 0 {
		c.overview(c.Stderr)
		return unusable
	}
	switch args[0] {
	case "-h", "-help", "--help":
		args[0] = "help"
	case "--version":
		args[0] = "version"
	}
	v := verbNamed(args[0])
	if v == nil {
		fmt.Fprintf(c.Stderr, "wheelwork: there is no command %q%s\nwheelwork help lists them\n", args[0], near(args[0], verbNames()))
		return unusable
	}
	set := flag.NewFlagSet(v.name, flag.ContinueOnError)
	set.SetOutput(io.Discard)
	do := v.options(set)
	rest, err := parse(set, args[1:])
	switch {
	case errors.Is(err, flag.ErrHelp):
		c.explain(v)
		return clean
	case err != nil:
		return c.misuse(v, "%s", reworded(set, err))
	}
	return do(c, v, rest)
}

// misuse says what is wrong with the command line.
func (c *Command) misuse(v *verb, message string, args ...any) int {
	fmt.Fprintf(c.Stderr, "wheelwork %s: %s\nwheelwork help %s tells how it is used\n", v.name, fmt.Sprintf(message, args...), v.name)
	return unusable
}

// near offers the candidate that was most likely meant.
func near(word string, candidates []string) string {
	if n := spec.Nearest(word, candidates); n != "" {
		return fmt.Sprintf("; did you mean %q?", n)
	}
	return ""
}
