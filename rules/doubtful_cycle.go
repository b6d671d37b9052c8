package rules

import (
	"strings"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

// namedCycles are the returns after which hands are named, and the word in
// their names.
var namedCycles = [...]struct{ word, entry string }{
	{"saros", "Saros"}, {"exeligmos", "Exeligmos"}, {"inex", "Inex"},
	{"metonic", "Metonic cycle"}, {"callippic", "Callippic cycle"},
}

// mostTurns is how often a hand may go round in its cycle: dials wind the 223
// or 235 months up in a few turns.
const mostTurns = 12

// misnamed reports a hand that is named after a return of eclipses or phases
// and wants another period, or one that is named for eclipses and wants a
// return of the phases.
func misnamed(p *Pass, h *spec.Hand, near exact.Rat) bool {
	name := strings.ToLower(h.Name.Text)
	r := p.Train.Read(h)
	if !r.HasWanted || strings.Contains(name, "node") {
		return false
	}
	at := targetOf(h)
	for _, c := range namedCycles {
		if !holdsWord(name, c.word) {
			continue
		}
		cycle := entryDays(c.entry)
		if isCycle(h, r.Wanted, cycle, near) {
			return false
		}
		f := p.Found(&h.Part, at, "%s is named after the %s of %s yr, but is to go round in %s yr", h.Title(), c.entry, inYears(cycle), inYears(r.Wanted))
		showTarget(f, h, at, c.entry)
		p.Report(f)
		return true
	}
	if !strings.Contains(name, "eclipse") || h.Shows.Entry+h.Period.Entry != "" {
		return false
	}
	for _, entry := range [...]string{"Metonic cycle", "Callippic cycle"} {
		if isNear(r.Wanted, entryDays(entry), near) {
			f := p.Found(&h.Part, at, "%s for the return of eclipses is the %s of %s yr, after which phases return to their dates; eclipses return after %s yr (Saros: 223 synodic months)", at.Text(), entry, inYears(entryDays(entry)), inYears(entryDays("Saros")))
			showTarget(f, h, at, "Saros")
			p.Report(f)
			return true
		}
	}
	return false
}

// isCycle reports whether a hand goes round once in a cycle, to the digits it
// quotes, or a few times in it, or once in a few of it.
func isCycle(h *spec.Hand, wanted, cycle, near exact.Rat) bool {
	for _, quoted := range [...]spec.Period{h.Shows, h.Period} {
		if unit, ok := lastDigit(quoted); ok && says(quoted.Days, cycle, unit) {
			return true
		}
	}
	for n := int64(1); n <= mostTurns; n++ {
		if isNear(wanted.Mul(exact.Int(n)), cycle, near) || isNear(wanted, cycle.Mul(exact.Int(n)), near) {
			return true
		}
	}
	return false
}

// isNear reports whether two lengths differ by no more than so many ppm.
func isNear(a, b, ppm exact.Rat) bool {
	return a.Quo(b).Sub(exact.Int(1)).Abs().Mul(exact.Int(1_000_000)).Cmp(ppm) <= 0
}

// holdsWord reports whether a name holds a word that is no part of another.
func holdsWord(name, word string) bool {
	for _, part := range strings.FieldsFunc(name, func(r rune) bool { return r < 'a' || r > 'z' }) {
		if part == word {
			return true
		}
	}
	return false
}

func entryDays(name string) exact.Rat {
	entry, _ := sky.Lookup(name)
	return exact.FromBig(entry.Days)
}

func inYears(days exact.Rat) string {
	return figures(days.Quo(quantity.TropicalYear).Float(), 4)
}
