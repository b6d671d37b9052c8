package sky

import "math"

// turning is a unit vector e^(i*angle) as cosine and sine; products add
// angles, which is cheaper than taking sines anew for each term.
type turning struct{ c, s float64 }

func (a turning) times(b turning) turning {
	return turning{a.c*b.c - a.s*b.s, a.s*b.c + a.c*b.s}
}

// turningOf is that of an angle in degrees.
func turningOf(deg float64) (a turning) {
	a.s, a.c = math.Sincos(deg * degree)
	return a
}

// back is that of the angle taken backwards.
func (a turning) back() turning { return turning{a.c, -a.s} }

// multiples holds e^(i*n*angle) for n from -6 to 6.
type multiples [13]turning

func multiplesOf(deg float64) (m multiples) {
	one := turningOf(deg)
	m[6] = turning{1, 0}
	for n := 1; n <= 6; n++ {
		m[6+n] = m[5+n].times(one)
		m[6-n] = turning{m[6+n].c, -m[6+n].s}
	}
	return m
}

func (m *multiples) of(n int8) turning { return m[6+n] }
