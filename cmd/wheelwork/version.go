package main

import (
	"fmt"
	"runtime"
	"runtime/debug"
)

func versionVerb() *verb {
	return &verb{
		name: "version",
		does: "says which version this is",
		options: noOptions(func(c *Command, v *verb, args []string) int {
			if len(args) > 0 {
				return c.misuse(v, "takes no argument")
			}
			fmt.Fprintf(c.out, "wheelwork %s, %s %s/%s\n", version(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
			return clean
		}),
		offers: func() []string { return []string{} },
	}
}

// version is the module's version, or the revision it was built from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown version"
	}
	version, changed := info.Main.Version, ""
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			if version == "" || version == "(devel)" {
				version = s.Value[:min(12, len(s.Value))]
			}
		case "vcs.modified":
			if s.Value == "true" {
				changed = ", changed"
			}
		}
	}
	return version + changed
}
