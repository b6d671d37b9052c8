package rules

import (
	"strings"

	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// orbitOf is whose orbit a track is, and how far that leans, to a thousandth of a
// degree: the Moon's where
// her node is on it or she is read against it, or a planet's.
func orbitOf(p *Pass, t *spec.Track) (body string, lean exact.Rat) {
	if t.Body.Arbor == nil {
		return "", exact.Rat{}
	}
	for _, h := range p.Design.Hands {
		if h.Arbor == nil {
			continue
		}
		on := p.Train.SameBody(h.Arbor, t.Body.Arbor)
		against := h.Base.Arbor != nil && p.Train.SameBody(h.Base.Arbor, t.Body.Arbor)
		if !on && !against {
			continue
		}
		entry := foretell.Shown(p.Train.Read(h))
		switch {
		case on && (strings.HasPrefix(entry, "lunar node") || strings.HasSuffix(entry, "eclipse year")), against && entry == "draconic month":
			return "Moon", microns(sky.MoonInclination)
		}
		if planet, cycle, ok := strings.Cut(h.Shows.Entry+h.Period.Entry, " "); ok && cycle != "rotation" {
			for _, b := range sky.Bodies() {
				if b.Name == planet && b.Inclination > 0 {
					return b.Name, microns(b.Inclination)
				}
			}
		}
	}
	return "", exact.Rat{}
}

// axisOf is the body whose axis an arbor is: it bears a hand, or the clock, of
// its day or rotation; the lean to a hundredth of a degree.
func axisOf(d *spec.Design, a *spec.Arbor) (body string, lean exact.Rat) {
	for _, h := range d.Hands {
		if h.Arbor == a {
			if body, lean = spins(h.Shows); body == "" {
				body, lean = spins(h.Period)
			}
			if body != "" {
				return body, lean
			}
		}
	}
	if c := d.Clock; c != nil && c.Arbor == a {
		return spins(c.Period)
	}
	return "", exact.Rat{}
}

// spins is the body that turns about itself in a period.
func spins(period spec.Period) (body string, lean exact.Rat) {
	if !rotation(period) {
		return "", exact.Rat{}
	}
	planet, _, named := strings.Cut(period.Entry, " rotation")
	if !named {
		return "Earth", hundredths(sky.Obliquity)
	}
	for _, b := range sky.Bodies() {
		if b.Name == planet {
			return b.Name, hundredths(b.Tilt)
		}
	}
	return "", exact.Rat{}
}

// carriedLeaning reports whether anything that carries the arbor leans.
func carriedLeaning(a *spec.Arbor) bool {
	for a.Carrier != nil && a.Carrier.Arbor != nil {
		if a = a.Carrier.Arbor; a.Tilt.Set() && !a.Tilt.Exact.IsZero() {
			return true
		}
	}
	return false
}

// theBody is a body as one speaks of it.
func theBody(name string) string {
	if name == "Moon" || name == "Earth" {
		return "the " + name
	}
	return name
}
