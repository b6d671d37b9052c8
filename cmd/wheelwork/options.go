package main

import (
	"flag"
	"fmt"
	"slices"
	"strings"

	"wheelwork/rules"
)

// parse reads options before, between and after the arguments, and returns
// the arguments. What follows "--" is an argument whatever it looks like.
func parse(set *flag.FlagSet, args []string) ([]string, error) {
	var after []string
	if i := slices.Index(args, "--"); i >= 0 {
		args, after = args[:i], args[i+1:]
	}
	var rest []string
	for len(args) > 0 {
		if err := set.Parse(args); err != nil {
			return nil, err
		}
		if args = set.Args(); len(args) > 0 {
			rest, args = append(rest, args[0]), args[1:]
		}
	}
	return append(rest, after...), nil
}

// reworded is an error of the flag package in the words of this one, with the
// nearest option offered.
func reworded(set *flag.FlagSet, err error) string {
	message := err.Error()
	if name, ok := strings.CutPrefix(message, "flag provided but not defined: -"); ok {
		var names []string
		set.VisitAll(func(f *flag.Flag) { names = append(names, "--"+f.Name) })
		return fmt.Sprintf("there is no option --%s%s", name, near("--"+name, names))
	}
	if name, ok := strings.CutPrefix(message, "flag needs an argument: -"); ok {
		return fmt.Sprintf("option --%s needs a value", name)
	}
	if rest, ok := strings.CutPrefix(message, "invalid value "); ok {
		value, rest, _ := strings.Cut(rest, " for flag -")
		name, why, _ := strings.Cut(rest, ": ")
		return fmt.Sprintf("option --%s: %s is %s", name, value, why)
	}
	if rest, ok := strings.CutPrefix(message, "invalid boolean value "); ok {
		value, rest, _ := strings.Cut(rest, " for -")
		name, _, _ := strings.Cut(rest, ": ")
		return fmt.Sprintf("option --%s: %s is neither true nor false", name, value)
	}
	return message
}

// ruleList is an option that takes names of rules, with commas between.
type ruleList []string

func (l *ruleList) String() string { return strings.Join(*l, ",") }

// Set adds the rules named.
func (l *ruleList) Set(text string) error {
	for name := range strings.SplitSeq(text, ",") {
		name = strings.TrimSpace(name)
		if rules.Named(name) == nil {
			return fmt.Errorf("no list of rules: there is none named %q%s", name, near(name, ruleNames()))
		}
		*l = append(*l, name)
	}
	return nil
}

// choice is an option that takes one of a few words.
type choice struct {
	word  string
	words []string
}

// oneOf declares an option that takes one of the words, the first unless said.
func oneOf(set *flag.FlagSet, name, usage string, words ...string) *choice {
	c := &choice{word: words[0], words: words}
	set.Var(c, name, usage)
	return c
}

func (c *choice) String() string { return c.word }

// Set takes a word that is among the choices.
func (c *choice) Set(word string) error {
	if !slices.Contains(c.words, word) {
		return fmt.Errorf("none of %s%s", strings.Join(c.words, ", "), near(word, c.words))
	}
	c.word = word
	return nil
}
