package train

import "wheelwork/spec/exact"

// A term is k times the rate of a body.
type term struct {
	body int
	k    exact.Rat
}

// An equation says that its terms add up to nothing.
type equation struct {
	terms []term
	joint int // which joint it comes from
}

// A form is a rate as a sum of multiples of free parameters, in their order.
type form []multiple

type multiple struct {
	param int
	k     exact.Rat
}

// plus is f + k·g.
func (f form) plus(k exact.Rat, g form) form {
	if len(g) == 0 || k.IsZero() {
		return f
	}
	sum := make(form, 0, max(len(f), len(g)))
	i, j := 0, 0
	for i < len(f) || j < len(g) {
		switch {
		case j == len(g) || i < len(f) && f[i].param < g[j].param:
			sum = append(sum, f[i])
			i++
		case i == len(f) || g[j].param < f[i].param:
			sum = append(sum, multiple{g[j].param, g[j].k.Mul(k)})
			j++
		default:
			if s := f[i].k.Add(g[j].k.Mul(k)); !s.IsZero() {
				sum = append(sum, multiple{f[i].param, s})
			}
			i, j = i+1, j+1
		}
	}
	return sum
}

// system is a set of homogeneous linear equations in the rates of bodies,
// solved sparsely: a rate is found from an equation as soon as all its other
// rates are, so that a train costs a step a mesh. Where nothing more follows, a
// rate is made a parameter; an equation whose rates are all known then ties
// parameters together or stops one.
type system struct {
	equations []equation
	touching  [][]int32 // body -> equations
	unknown   []int8    // equation -> how many of its rates are not known yet
	rate      []form    // body -> its rate, once known
	known     []bool
	from      []int32 // body -> the equation that gave its rate, -1 for a parameter
	params    []param
	ready     []int32
	stops     []stop
}

type param struct {
	body  int
	gone  bool // expressed by others, or stopped
	value form
	by    int32 // the equation that did it
}

// A stop is an equation whose rates were all known: it ties its last parameter
// to others, or where there are none lets it only be nothing.
type stop struct {
	equation, param int
	dead            bool // whether the parameter is nothing
}

// frame is the body that stands still.
const frame = 0

// newSystem makes the system of the equations over bodies 0 to bodies-1, of
// which the frame stands still.
func newSystem(bodies int, equations []equation) *system {
	s := &system{
		equations: equations,
		touching:  make([][]int32, bodies),
		unknown:   make([]int8, len(equations)),
		rate:      make([]form, bodies),
		known:     make([]bool, bodies),
		from:      make([]int32, bodies),
	}
	count := make([]int32, bodies+1)
	total := 0
	for _, e := range equations {
		for _, t := range e.terms {
			count[t.body]++
			total++
		}
	}
	all := make([]int32, 0, total)
	for b := range s.touching {
		all = all[:len(all)+int(count[b])]
		s.touching[b] = all[len(all)-int(count[b]) : len(all)-int(count[b]) : len(all)]
	}
	for i, e := range equations {
		s.unknown[i] = int8(len(e.terms))
		for _, t := range e.terms {
			s.touching[t.body] = append(s.touching[t.body], int32(i))
		}
		if len(e.terms) == 1 {
			s.ready = append(s.ready, int32(i))
		}
	}
	s.learn(frame, nil, -1)
	s.follow()
	return s
}

// free makes the body's rate a parameter, unless it is known, and follows up.
func (s *system) free(body int) {
	if s.known[body] {
		return
	}
	s.params = append(s.params, param{body: body, by: -1})
	s.learn(body, form{{len(s.params) - 1, exact.Int(1)}}, -1)
	s.follow()
}

func (s *system) learn(body int, f form, by int32) {
	s.rate[body], s.known[body], s.from[body] = f, true, by
	for _, e := range s.touching[body] {
		if s.unknown[e]--; s.unknown[e] <= 1 {
			s.ready = append(s.ready, e)
		}
	}
}

// follow works off the equations that have at most one unknown rate.
func (s *system) follow() {
	for len(s.ready) > 0 {
		i := s.ready[len(s.ready)-1]
		s.ready = s.ready[:len(s.ready)-1]
		e := &s.equations[i]
		switch s.unknown[i] {
		case 1:
			s.solve(i, e)
		case 0:
			s.unknown[i] = -1 // once is enough
			s.tie(i, e)
		}
	}
}

// solve finds the one rate that the equation leaves open.
func (s *system) solve(i int32, e *equation) {
	var sum form
	var open term
	for _, t := range e.terms {
		if !s.known[t.body] {
			open = t
		} else {
			sum = sum.plus(t.k, s.rate[t.body])
		}
	}
	s.unknown[i] = -1
	k := open.k.Inv().Neg()
	f := make(form, len(sum))
	for j, m := range sum {
		f[j] = multiple{m.param, m.k.Mul(k)}
	}
	s.learn(open.body, f, i)
}

// tie uses an equation whose rates are all known.
func (s *system) tie(i int32, e *equation) {
	var sum form
	for _, t := range e.terms {
		sum = sum.plus(t.k, s.resolve(s.rate[t.body]))
	}
	if len(sum) == 0 {
		return
	}
	// The latest parameter gives way: the drive and the outer arms came first.
	last := sum[len(sum)-1]
	s.stops = append(s.stops, stop{int(i), last.param, len(sum) == 1})
	k := last.k.Inv().Neg()
	value := make(form, len(sum)-1)
	for j, m := range sum[:len(sum)-1] {
		value[j] = multiple{m.param, m.k.Mul(k)}
	}
	p := &s.params[last.param]
	p.gone, p.value, p.by = true, value, i
}

// resolve expresses a form by the parameters that are still free.
func (s *system) resolve(f form) form {
	for {
		at := -1
		for i, m := range f {
			if s.params[m.param].gone {
				at = i
			}
		}
		if at < 0 {
			return f
		}
		m := f[at]
		rest := append(append(make(form, 0, len(f)), f[:at]...), f[at+1:]...)
		f = rest.plus(m.k, s.params[m.param].value)
	}
}

// of is the body's rate by free parameters.
func (s *system) of(body int) form { return s.resolve(s.rate[body]) }

// grounds lists the equations from which the given one's rates follow, itself
// included, in the order of the equations.
func (s *system) grounds(i int) []int {
	used := map[int]bool{}
	seen := map[int]bool{}
	seenParam := map[int]bool{}
	var equation func(int)
	var body func(int)
	var byParam func(form)
	work := []func(){}
	equation = func(i int) {
		if i < 0 || used[i] {
			return
		}
		used[i] = true
		for _, t := range s.equations[i].terms {
			work = append(work, func() { body(t.body) })
		}
	}
	byParam = func(f form) {
		for _, m := range f {
			if p := s.params[m.param]; !seenParam[m.param] && p.gone {
				seenParam[m.param] = true
				equation(int(p.by))
			}
		}
	}
	body = func(b int) {
		if seen[b] {
			return
		}
		seen[b] = true
		equation(int(s.from[b]))
		byParam(s.rate[b])
	}
	equation(i)
	for len(work) > 0 {
		next := work[len(work)-1]
		work = work[:len(work)-1]
		next()
	}
	list := make([]int, 0, len(used))
	for i := range s.equations {
		if used[i] {
			list = append(list, i)
		}
	}
	return list
}
