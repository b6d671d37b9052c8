package sample

import (
	"fmt"
	"strings"
)

// writer writes blocks in either notation, as people lay them out.
type writer struct {
	strings.Builder
	toml bool
}

// block writes a block of keys and values in turn; both notations write the
// values of a sample alike.
func (w *writer) block(kind, name string, attributes ...string) {
	if w.toml {
		w.table(kind, name)
	} else {
		w.WriteString(kind)
		if name != "" {
			fmt.Fprintf(w, " %q", name)
		}
		w.WriteString(" {\n")
	}
	longest := 0
	for i := 0; i < len(attributes); i += 2 {
		longest = max(longest, len(attributes[i]))
	}
	for i := 0; i < len(attributes); i += 2 {
		if w.toml {
			fmt.Fprintf(w, "%s = %s\n", attributes[i], attributes[i+1])
		} else {
			fmt.Fprintf(w, "  %-*s = %s\n", longest, attributes[i], attributes[i+1])
		}
	}
	if w.toml {
		w.WriteString("\n")
	} else {
		w.WriteString("}\n")
	}
}

func (w *writer) table(kind, name string) {
	switch {
	case name != "":
		fmt.Fprintf(w, "[%s.%s]\n", kind, name)
	case kind == "mesh":
		fmt.Fprintf(w, "[[%s]]\n", kind)
	default:
		fmt.Fprintf(w, "[%s]\n", kind)
	}
}
