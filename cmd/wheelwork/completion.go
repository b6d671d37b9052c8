package main

import (
	"flag"
	"fmt"
	"io"
	"strings"

	"wheelwork/cmd/wheelwork/internal/completion"
)

func completionVerb() *verb {
	return &verb{
		name: "completion",
		args: strings.Join(completion.Shells, "|"),
		does: "writes the script that teaches a shell to complete command lines",
		examples: []example{
			{"source <(wheelwork completion bash)", "in ~/.bashrc"},
			{"source <(wheelwork completion zsh)", "in ~/.zshrc, after compinit"},
			{"wheelwork completion fish | source", "in ~/.config/fish/config.fish"},
		},
		options: noOptions(func(c *Command, v *verb, args []string) int {
			if len(args) != 1 {
				return c.misuse(v, "name one shell: %s", strings.Join(completion.Shells, ", "))
			}
			script := completion.Script(args[0])
			if script == "" {
				return c.misuse(v, "%q is none of %s%s", args[0], strings.Join(completion.Shells, ", "), near(args[0], completion.Shells))
			}
			fmt.Fprint(c.out, script)
			return clean
		}),
		offers: func() []string { return completion.Shells },
	}
}

// completeVerb answers the scripts; people have no use for it.
func completeVerb() *verb {
	return &verb{
		name:   "complete",
		args:   "-- WORD...",
		does:   "says what the last word of a command line may be",
		hidden: true,
		options: noOptions(func(c *Command, _ *verb, args []string) int {
			for _, line := range completions(args) {
				fmt.Fprintln(c.out, line)
			}
			return clean
		}),
	}
}

// completions lists what the last of the words may be, each with its meaning.
func completions(words []string) []string {
	if len(words) == 0 {
		words = []string{""}
	}
	last := words[len(words)-1]
	if len(words) == 1 {
		var list []string
		for _, v := range verbs() {
			if !v.hidden {
				list = offer(list, last, v.name, v.does)
			}
		}
		return list
	}
	v := verbNamed(words[0])
	if v == nil {
		return nil
	}
	set := flag.NewFlagSet(v.name, flag.ContinueOnError)
	set.SetOutput(io.Discard)
	v.options(set)
	if f := valueOf(set, words[len(words)-2]); f != nil {
		return values(f, last, "")
	}
	if name, value, ok := strings.Cut(last, "="); ok {
		if f := valueOf(set, name); f != nil {
			return values(f, value, name+"=")
		}
	}
	if strings.HasPrefix(last, "-") {
		var list []string
		set.VisitAll(func(f *flag.Flag) { list = offer(list, last, "--"+f.Name, f.Usage) })
		return list
	}
	if v.offers == nil {
		return []string{completion.Files}
	}
	var list []string
	for _, word := range v.offers() {
		list = offer(list, last, word, "")
	}
	return list
}

// values lists what the value of an option may be, each with what stands
// before it in the same word.
func values(f *flag.Flag, value, before string) []string {
	var words []string
	switch v := f.Value.(type) {
	case *choice:
		words = v.words
	case *ruleList:
		words = ruleNames()
		if i := strings.LastIndexByte(value, ','); i >= 0 {
			value, before = value[i+1:], before+value[:i+1]
		}
	default:
		return []string{completion.Files}
	}
	var list []string
	for _, word := range words {
		list = offer(list, before+value, before+word, "")
	}
	return list
}

// offer adds a word that begins as the last word of the line does.
func offer(list []string, last, word, meaning string) []string {
	if !strings.HasPrefix(word, last) {
		return list
	}
	if meaning != "" {
		word += "\t" + meaning
	}
	return append(list, word)
}

// valueOf is the option whose value the next word is, nil if the word is no
// option that takes one.
func valueOf(set *flag.FlagSet, word string) *flag.Flag {
	name, ok := strings.CutPrefix(word, "-")
	if !ok {
		return nil
	}
	f := set.Lookup(strings.TrimPrefix(name, "-"))
	if f == nil {
		return nil
	}
	if b, ok := f.Value.(interface{ IsBoolFlag() bool }); ok && b.IsBoolFlag() {
		return nil
	}
	return f
}
