package rules

import (
	"fmt"
	"strings"
)

// chainExample is a design of one chain, for a rule's page.
type chainExample struct {
	small, large int
	distance     string // of the sprockets, "" where it does not matter
	chain        string
}

func (e chainExample) text() string {
	var s strings.Builder
	s.WriteString("\ndesign { title = \"One chain\" }\n")
	at := func(x string) string {
		if e.distance == "" {
			return ""
		}
		return "at = [" + x + ", 0]"
	}
	block(&s, `arbor "motor"`, at("0"))
	block(&s, `arbor "year"`, at(e.distance))
	block(&s, `sprocket "motor"`, fmt.Sprintf(`on = "motor"; teeth = %d`, e.small))
	block(&s, `sprocket "year"`, fmt.Sprintf(`on = "year"; teeth = %d`, e.large))
	block(&s, "chain", `sprockets = ["motor", "year"]; `+e.chain)
	return s.String()
}
