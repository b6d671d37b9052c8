package rules

import (
	"fmt"
	"strings"
)

// lack gathers what a rule cannot judge for want of facts, so that it says one
// sentence a reason, however many parts there are.
type lack struct {
	reasons []string
	named   [][]string
	more    []int
}

// of notes that something cannot be judged for a reason.
func (l *lack) of(reason, name string) {
	const few = 3
	for i, r := range l.reasons {
		if r != reason {
			continue
		}
		if len(l.named[i]) < few {
			l.named[i] = append(l.named[i], name)
		} else {
			l.more[i]++
		}
		return
	}
	l.reasons = append(l.reasons, reason)
	l.named = append(l.named, []string{name})
	l.more = append(l.more, 0)
}

// tell makes the rule stand aside for each reason.
func (l *lack) tell(p *Pass) {
	for i, r := range l.reasons {
		names := listed(l.named[i])
		if l.more[i] > 0 {
			names = fmt.Sprintf("%s and %d more", strings.Join(l.named[i], ", "), l.more[i])
		}
		p.StandAside("%s: %s", r, names)
	}
}

// listed is "a", "a and b", "a, b and c".
func listed(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}
