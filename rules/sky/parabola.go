package sky

// parabola is a quantity as c0 + c1*t + c2*t*t over the hours around a moment.
type parabola struct{ c0, c1, c2 float64 }

// parabolaOf goes through the values at -h, 0 and h hours.
func parabolaOf(before, now, after, h float64) parabola {
	return parabola{now, (after - before) / (2 * h), (after + before - 2*now) / (2 * h * h)}
}

func (p parabola) at(t float64) float64   { return p.c0 + t*(p.c1+t*p.c2) }
func (p parabola) rate(t float64) float64 { return p.c1 + 2*t*p.c2 }

func (p parabola) scaled(k float64) parabola { return parabola{p.c0 * k, p.c1 * k, p.c2 * k} }

// addSine adds amplitude * sin(u + rate*t) to the second order.
func (p *parabola) addSine(amplitude, rate float64, u turning) {
	p.c0 += amplitude * u.s
	p.c1 += amplitude * rate * u.c
	p.c2 -= amplitude * rate * rate / 2 * u.s
}
