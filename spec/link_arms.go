package spec

import (
	"strconv"
	"strings"

	"wheelwork/spec/text"
)

// circles tells arms that carry each other in a ring, and cuts the ring so
// that later steps end.
func (l *linking) circles() {
	if len(l.design.Arms) == 0 {
		return
	}
	const open, done = 1, 2
	state := make(map[*Arm]int, len(l.design.Arms))
	var path []*Arm
	for _, start := range l.design.Arms {
		path = path[:0]
		for a := start; a != nil && state[a] != done; a = a.Arbor.Carrier {
			if state[a] == open {
				for path[0] != a {
					state[path[0]] = done
					path = path[1:]
				}
				l.ring(path)
				a.Arbor.Carrier = nil
				break
			}
			state[a] = open
			path = append(path, a)
			if a.Arbor == nil {
				break
			}
		}
		for _, a := range path {
			state[a] = done
		}
	}
}

// ring tells arms of which each is carried by the next, and the last by the first.
func (l *linking) ring(arms []*Arm) {
	if len(arms) == 1 {
		a := arms[0]
		l.tell(a.Arbor.CarriedBy.Place(), "", "arm %q carries itself", clip(a.Name.Text)).Related = see(a.Head, "the arm")
		return
	}
	var path []string
	var related []text.Related
	for i, a := range arms {
		if i == 8 {
			path = append(path, "...")
			break
		}
		path = append(path, strconv.Quote(clip(a.Name.Text)))
		related = append(related, see(a.Head, "an arm of the ring")...)
	}
	path = append(path, path[0])
	l.tell(arms[0].Arbor.CarriedBy.Place(), "one of them needs the frame or another arm", "arms carry each other in a ring: %s", strings.Join(path, " on ")).Related = related
}
