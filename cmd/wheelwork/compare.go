package main

import (
	"flag"
	"fmt"
	"os"
	"strings"

	"wheelwork/cmd/wheelwork/internal/compare"
	"wheelwork/rules"
)

func compareVerb() *verb {
	return &verb{
		name: "compare",
		args: "OLD NEW | --rev REVISION [PATH]",
		does: "says what a change of a design changes: rates, errors, geometry, findings",
		help: `
OLD and NEW are two spec files, or two folders whose designs are matched by
their paths. With --rev, the PATH in the working tree (the current folder unless
said) is compared with what it was in a git revision; --rev OLD..NEW compares
two revisions.

For each design it tells, by hand and train, which rates, errors and drifts,
diameters, centre distances, chains and eclipse records changed, and which
findings are gone, new or kept. Findings are matched by rule and part, not by
line, so that a change can be judged without mending old faults first.

Exit code: 0 if no new finding reaches the threshold of --fail-on, 1 if one
does, 2 if the new version could not be read.
`,
		examples: []example{
			{"wheelwork compare table-1.hcl table-2.hcl", "compares two files"},
			{"wheelwork compare --rev main designs", "compares the working tree with the branch main"},
			{"wheelwork compare --json --rev v1..v2 designs", "compares two revisions, as JSON"},
		},
		options: func(set *flag.FlagSet) run {
			rev := set.String("rev", "", "compare with the git `REVISION`, or two as OLD..NEW")
			asJSON := set.Bool("json", false, "write JSON")
			failOn := oneOf(set, "fail-on", "the severity from which on a new finding makes the exit code 1", "warning", "error", "note")
			return func(c *Command, v *verb, args []string) int {
				var laid []string // the folders of revisions, removed in the end
				defer func() {
					for _, dir := range laid {
						os.RemoveAll(dir)
					}
				}()
				old, new, code := c.versions(v, *rev, args, &laid)
				if code != clean {
					return code
				}
				pairs, err := compare.Find(old, new)
				if err != nil {
					fmt.Fprintf(c.Stderr, "wheelwork compare: %v\n", err)
					return unusable
				}
				threshold, _ := rules.ParseSeverity(failOn.word)
				code = clean
				for i := range pairs {
					p := &pairs[i]
					p.Check()
					for _, f := range p.Fresh {
						if f.Severity >= threshold {
							code = max(code, found)
						}
					}
					if p.Problems() > 0 {
						code = unusable
					}
				}
				if *asJSON {
					compare.JSON(c.out, pairs, laid)
				} else {
					compare.Text(c.out, pairs, laid)
				}
				return code
			}
		},
	}
}

// versions finds where both versions lie; a revision is laid into a folder of
// its own, which is added to laid.
func (c *Command) versions(v *verb, rev string, args []string, laid *[]string) (old, new string, code int) {
	if rev == "" {
		if len(args) != 2 {
			return "", "", c.misuse(v, "name the old and the new version, or --rev")
		}
		return args[0], args[1], clean
	}
	if len(args) > 1 {
		return "", "", c.misuse(v, "one path with --rev, not %d", len(args))
	}
	path := "."
	if len(args) == 1 {
		path = args[0]
	}
	lay := func(rev string) (string, bool) {
		dir, there, err := compare.Revision(rev, path)
		if dir != "" {
			*laid = append(*laid, dir)
		}
		if err == nil {
			if _, err = os.Stat(there); err != nil {
				err = fmt.Errorf("revision %s has no %s", rev, path)
			}
		}
		if err != nil {
			fmt.Fprintf(c.Stderr, "wheelwork compare: %v\n", err)
		}
		return there, err == nil
	}
	before, after, two := strings.Cut(rev, "..")
	old, ok := lay(before)
	if !ok {
		return "", "", unusable
	}
	if new = path; two {
		if new, ok = lay(after); !ok {
			return "", "", unusable
		}
	}
	return old, new, clean
}
