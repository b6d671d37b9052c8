package train

import (
	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// minutesADay turns rpm into turns a day.
var minutesADay = exact.Int(1440)

// settle gives the parameters their values: model time comes from the clock,
// or where there is none the watch's from the drives.
func (t *Train) settle() {
	t.value = make([]exact.Rat, len(t.sys.params))
	has := make([]bool, len(t.sys.params))
	unit := -1
	if t.unit >= 0 {
		if f := t.sys.of(t.unit); len(f) == 1 {
			unit = f[0].param
		}
	}
	c := t.Design.Clock
	switch {
	case c != nil && c.Arbor != nil && c.Period.Set():
		f := t.sys.of(t.bodyOf[c.Arbor.Index]).plus(exact.Int(-1), t.sys.of(t.body(c.Base)))
		if len(f) == 1 && (unit < 0 || f[0].param == unit) {
			p := f[0].param
			rate := c.Period.Days.Inv().Quo(f[0].k)
			if unit >= 0 {
				// Time runs forward: the drives say which way the clock turns.
				rate = rate.Abs()
			}
			t.value[p], has[p], t.fixed = rate, true, true
		}
	case unit >= 0:
		t.value[unit], has[unit], t.fixed, t.real = minutesADay, true, true, true
	}
	if unit >= 0 && !has[unit] {
		// The clock does not turn with the drives, so there is no model time;
		// what the drives do turn is known all the same.
		t.value[unit], has[unit] = minutesADay, true
	}
	t.rates = make([]settled, len(t.arborOf))
	for body := range t.arborOf {
		t.rates[body] = t.evaluate(t.sys.of(body), has)
	}
}

func (t *Train) evaluate(f form, has []bool) settled {
	var sum exact.Rat
	for _, m := range f {
		if !has[m.param] {
			return settled{}
		}
		sum = sum.Add(m.k.Mul(t.value[m.param]))
	}
	return settled{rate: sum, known: true}
}

// Timed reports whether model time is settled, by a clock or by drives alone.
func (t *Train) Timed() bool { return t.fixed }

// RealTime reports whether model time is the watch's: drives and no clock.
func (t *Train) RealTime() bool { return t.real }

// Speed is how many days of model time pass in one day by the watch with the
// drives at full speed; ok is false without both a clock and a drive.
func (t *Train) Speed() (exact.Rat, bool) {
	if t.unit < 0 || !t.fixed {
		return exact.Rat{}, false
	}
	u := t.rates[t.unit]
	if !u.known || u.rate.IsZero() {
		return exact.Rat{}, false
	}
	return minutesADay.Quo(u.rate), true
}

// Group is bodies that no drive and no clock turns, joined to one another.
type Group struct {
	Arbors []*spec.Arbor // in the order of the text
}

// Undriven lists what is free to turn and that nothing turns.
func (t *Train) Undriven() []Group {
	var groups []Group
	of := map[int]int{} // free parameter -> group
	for body, a := range t.arborOf {
		if a == nil || t.rates[body].known {
			continue
		}
		f := t.sys.of(body)
		g := -1
		for _, m := range f {
			if i, ok := of[m.param]; ok {
				g = i
				break
			}
		}
		if g < 0 {
			g = len(groups)
			groups = append(groups, Group{})
		}
		for _, m := range f {
			if _, ok := of[m.param]; !ok {
				of[m.param] = g
			}
		}
		groups[g].Arbors = append(groups[g].Arbors, a)
	}
	return groups
}

// Ratio is the rate of a against its base for one turn of b against its own,
// which needs no clock; ok is false where b stands still or they are not tied.
func (t *Train) Ratio(a *spec.Arbor, aBase spec.Body, b *spec.Arbor, bBase spec.Body) (exact.Rat, bool) {
	f := t.sys.of(t.bodyOf[a.Index]).plus(exact.Int(-1), t.sys.of(t.body(aBase)))
	g := t.sys.of(t.bodyOf[b.Index]).plus(exact.Int(-1), t.sys.of(t.body(bBase)))
	return proportion(f, g)
}

// proportion is f as a multiple of g; ok is false where it is none, or g is
// nothing.
func proportion(f, g form) (exact.Rat, bool) {
	if len(g) == 0 {
		return exact.Rat{}, false
	}
	if len(f) == 0 {
		return exact.Rat{}, true
	}
	if len(f) != len(g) {
		return exact.Rat{}, false
	}
	k := f[0].k.Quo(g[0].k)
	for i := range f {
		if f[i].param != g[i].param || !f[i].k.Equal(g[i].k.Mul(k)) {
			return exact.Rat{}, false
		}
	}
	return k, true
}
