package rules

import (
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/text"
)

// marks finds the first marker of each hand.
func marks(d *spec.Design) map[*spec.Hand]*spec.Marker {
	if len(d.Markers) == 0 {
		return nil
	}
	marked := make(map[*spec.Hand]*spec.Marker, len(d.Markers))
	for _, m := range d.Markers {
		if m.Hand != nil && marked[m.Hand] == nil {
			marked[m.Hand] = m
		}
	}
	return marked
}

// nodeForEclipses reports a hand that is named or marked for eclipses and whose
// period is the node's round. A hand that names the node in its own name or
// shows the catalogue's entry under a marker means it.
func nodeForEclipses(p *Pass, h *spec.Hand, marker *spec.Marker) bool {
	name := strings.ToLower(h.Name.Text)
	named := strings.Contains(name, "eclipse") || strings.Contains(name, "saros")
	if strings.Contains(name, "node") || !named && marker == nil {
		return false
	}
	if !named && h.Shows.Entry+h.Period.Entry != "" {
		return false
	}
	r := p.Train.Read(h)
	if !r.HasWanted || !nodes(r.Wanted) {
		return false
	}
	at := targetOf(h)
	f := p.Found(&h.Part, at, "%s for the return of eclipses is the round of the Moon's node, %s yr; eclipses return after %s yr (Saros: 223 synodic months)", at.Text(), inYears(r.Wanted), inYears(entryDays("Saros")))
	if marker != nil {
		f.See(marker.Event.Place(), "%s foretells a %s", marker.Title(), marker.Event.Text)
	}
	showTarget(f, h, at, "Saros")
	p.Report(f)
	return true
}

// showTarget adds the remedy that makes a hand show an entry.
func showTarget(f *Finding, h *spec.Hand, at text.Place, entry string) {
	for _, target := range [...]spec.Period{h.Shows, h.Period} {
		if target.Set() && target.Place() == at {
			show(f, target.At, entry)
		}
	}
}

// nodes reports whether a period is within a hundredth of the node's round,
// against the stars or the equinox; the Saros is three hundredths shorter.
func nodes(days exact.Rat) bool {
	return isNear(days, entryDays("lunar node"), exact.Int(10_000))
}
