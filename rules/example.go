package rules

import (
	"fmt"
	"strings"
)

// A pairExample is a design of one mesh, for a rule's page. Attributes are
// written "teeth = 12; module = 1".
type pairExample struct {
	distance      float64 // of the axes, 0 where positions do not matter
	pinion, wheel string
	mesh          string
	wheelArbor    string // further attributes of it
}

func (e pairExample) text() string {
	var s strings.Builder
	s.WriteString("\ndesign { title = \"One mesh\" }\n")
	at := func(x float64) string {
		if e.distance == 0 {
			return ""
		}
		return fmt.Sprintf("at = [%v, 0]; ", x)
	}
	block(&s, `arbor "lay"`, at(0))
	block(&s, `arbor "hand"`, at(e.distance)+e.wheelArbor)
	block(&s, `wheel "pinion"`, `on = "lay"; `+e.pinion)
	block(&s, `wheel "wheel"`, `on = "hand"; `+e.wheel)
	block(&s, "mesh", `wheels = ["pinion", "wheel"]; `+e.mesh)
	return s.String()
}

// block writes a block with its equal signs in a column.
func block(s *strings.Builder, head, attributes string) {
	var keys, values []string
	width := 0
	for _, a := range strings.Split(attributes, ";") {
		if key, value, ok := strings.Cut(strings.TrimSpace(a), " = "); ok {
			keys, values = append(keys, key), append(values, value)
			width = max(width, len(key))
		}
	}
	switch len(keys) {
	case 0:
		fmt.Fprintf(s, "%s {}\n", head)
		return
	case 1:
		fmt.Fprintf(s, "%s { %s = %s }\n", head, keys[0], values[0])
		return
	}
	fmt.Fprintf(s, "%s {\n", head)
	for i := range keys {
		fmt.Fprintf(s, "  %-*s = %s\n", width, keys[i], values[i])
	}
	s.WriteString("}\n")
}
