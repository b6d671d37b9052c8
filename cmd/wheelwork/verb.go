package main

import "flag"

// verb is one command of the command line.
type verb struct {
	name     string
	args     string // how its arguments are written: "[PATH...]"
	does     string // one line
	help     string // what there is to know, in paragraphs
	examples []example
	hidden   bool // from help and completion

	// options declares the options and returns what runs with them.
	options func(*flag.FlagSet) run
	// offers lists what an argument may be, for completion; nil stands for files.
	offers func() []string
}

// run does the work of a command with its arguments and returns the exit code.
type run func(c *Command, v *verb, args []string) int

// example is a command line and what it does.
type example struct{ line, does string }

// verbs lists the commands in the order in which help tells them. Only what is
// asked for is built further: each costs a design of 60 wheels its share of
// the start.
func verbs() []*verb {
	return []*verb{
		checkVerb(),
		motionVerb(),
		measureVerb(),
		almanacVerb(),
		settingVerb(),
		cutlistVerb(),
		compareVerb(),
		editorVerb(),
		rulesVerb(),
		versionVerb(),
		helpVerb(),
		completionVerb(),
		completeVerb(),
	}
}

func verbNamed(name string) *verb {
	for _, v := range verbs() {
		if v.name == name {
			return v
		}
	}
	return nil
}

func verbNames() []string {
	var names []string
	for _, v := range verbs() {
		if !v.hidden {
			names = append(names, v.name)
		}
	}
	return names
}

// noOptions is for a command that takes none.
func noOptions(do run) func(*flag.FlagSet) run {
	return func(*flag.FlagSet) run { return do }
}
