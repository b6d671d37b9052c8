package rules

import (
	"math"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

func standingOf(a *spec.Arbor) (standing, bool) {
	x, y, ok := train.Position(a)
	return standing{a.Carrier, int64(math.Round(x * 1000)), int64(math.Round(y * 1000))}, ok
}

func coaxialArbors(d *spec.Design) coaxial {
	c := make(coaxial, len(d.Arbors))
	for _, a := range d.Arbors {
		if s, ok := standingOf(a); ok {
			c[s]++
		}
	}
	return c
}

// move adds the remedy that moves an arbor along the line of centres until it
// stands so far from the other, to a micrometre. It changes only figures that
// are written as such, and reports whether it could.
func move(p *Pass, f *Finding, a, from *spec.Arbor, distance float64) bool {
	plan := p.Train.Carrier(a)
	x, y, ok := train.Position(a)
	u, v, stands := p.Train.Stands(a, plan)
	fromX, fromY, known := p.Train.Stands(from, plan)
	if !ok || !stands || !known || u != x || v != y {
		return false
	}
	apart := math.Hypot(x-fromX, y-fromY)
	if apart == 0 {
		return false
	}
	k := distance / apart
	toX, toY := microns(fromX+(x-fromX)*k), microns(fromY+(y-fromY)*k)
	var edits []Edit
	if a.Position.Set() {
		for _, c := range [...]struct {
			old spec.Number
			to  float64
		}{{a.Position.X, toX.Float()}, {a.Position.Y, toY.Float()}} {
			if math.Abs(c.old.Exact.Float()-c.to) < 0.0006 {
				continue
			}
			edit, ok := Figure(c.old.At, microns(c.to), "mm")
			if !ok {
				return false
			}
			edits = append(edits, edit)
		}
	} else {
		if fromX != 0 || fromY != 0 {
			return false
		}
		edit, ok := Figure(a.Radius.At, microns(distance), "mm")
		if !ok {
			return false
		}
		edits = append(edits, edit)
	}
	if len(edits) == 0 {
		return false
	}
	f.Mend("move "+a.Title()+" to "+mm(distance)+" from "+from.Title(), edits...)
	return true
}
