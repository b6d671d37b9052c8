package train

import (
	"math"

	"wheelwork/spec"
)

// Slip is what the play of one joint does to a hand.
type Slip struct {
	Joint *Joint
	Index int // the joint's place in Train.Joints
	// Weight is by how many degrees the hand moves against its base when the
	// joint's B slips by one against its A, the drives held. It is more than 0.
	Weight float64
}

// Slips finds how joints' play reaches the hands of a train.
//
// Each joint is an equation, sum of k w = -s, with s its slip. From the hand
// backwards, every rate is put down to those it follows from (the adjoint of the
// linear system); what an equation is used by is the weight of its slip.
type Slips struct {
	t      *Train
	body   []float64 // body -> what is still to be put down
	param  []float64 // parameter -> the same
	weight []float64 // equation -> by how much it is used
	seen   []bool    // body -> whether it is in order
	order  []int     // bodies, each before those it follows from, read backwards
	used   []int     // equations with a weight
	of     []int     // body -> its parameter, -1

	tieOf    []int     // parameter -> the tie that did away with it, past the last if none did
	multiple []float64 // tie -> by how much it is used
}

// NewSlips prepares to trace the hands of the train.
func (t *Train) NewSlips() *Slips {
	n := len(t.arborOf)
	s := &Slips{t: t, body: make([]float64, n), param: make([]float64, len(t.sys.params)),
		weight: make([]float64, len(t.sys.equations)), seen: make([]bool, n), of: make([]int, n)}
	for b := range s.of {
		s.of[b] = -1
	}
	s.tieOf = make([]int, len(t.sys.params))
	s.multiple = make([]float64, len(t.sys.stops))
	for p := range t.sys.params {
		s.of[t.sys.params[p].body] = p
		s.tieOf[p] = len(t.sys.stops)
	}
	for i, stop := range t.sys.stops {
		s.tieOf[stop.param] = i
	}
	return s
}

// Of lists the joints whose slip moves the arbor against its base, roughly from
// the hand backwards.
func (s *Slips) Of(a *spec.Arbor, base spec.Body) []Slip { return s.trace(a, base, false) }

// Bearing lists the joints and drives that bear a torque which acts on the arbor
// and, turned round, on its base: by virtual work a torque of 1 there puts the
// Weight of each on the joint's B against its carrier. It is exact, planets and
// differentials included, as long as nothing rubs.
func (s *Slips) Bearing(a *spec.Arbor, base spec.Body) []Slip { return s.trace(a, base, true) }

func (s *Slips) trace(a *spec.Arbor, base spec.Body, drives bool) []Slip {
	own, against := s.t.bodyOf[a.Index], s.t.body(base)
	if own == against {
		return nil
	}
	s.body[own]++
	s.body[against]--
	s.settle(own, against)
	s.tied()

	const nothing = 1e-12
	list := make([]Slip, 0, len(s.used))
	for _, e := range s.used {
		i := s.t.sys.equations[e].joint
		if w := math.Abs(s.weight[e]); w > nothing && (drives || s.t.Joints[i].A != nil) {
			list = append(list, Slip{&s.t.Joints[i], i, w})
		}
		s.weight[e] = 0
	}
	s.used = s.used[:0]
	clear(s.param)
	return list
}

// settle puts the bodies given down to parameters.
func (s *Slips) settle(bodies ...int) {
	s.order = s.order[:0]
	for _, b := range bodies {
		s.sort(b)
	}
	for i := len(s.order) - 1; i >= 0; i-- {
		b := s.order[i]
		s.seen[b] = false
		worth := s.body[b]
		s.body[b] = 0
		if b == frame || worth == 0 {
			continue
		}
		if e := s.t.sys.from[b]; e < 0 {
			s.param[s.of[b]] += worth
		} else {
			s.use(int(e), -worth/s.factor(int(e), b), b)
		}
	}
}

// use adds a multiple of an equation: its slip to the weights, its terms to the
// bodies, the one it is solved for left out.
func (s *Slips) use(e int, k float64, but int) {
	s.weight[e] += k
	s.used = append(s.used, e)
	for _, term := range s.t.sys.equations[e].terms {
		if term.body != but {
			s.body[term.body] += k * term.k.Float()
		}
	}
}

func (s *Slips) factor(e, body int) float64 {
	for _, term := range s.t.sys.equations[e].terms {
		if term.body == body {
			return term.k.Float()
		}
	}
	return math.NaN()
}

// sort puts the body into order behind all that it follows from.
func (s *Slips) sort(body int) {
	type step struct{ body, term int }
	if s.seen[body] {
		return
	}
	s.seen[body] = true
	stack := []step{{body, 0}}
	for len(stack) > 0 {
		top := &stack[len(stack)-1]
		e := s.t.sys.from[top.body]
		if top.body == frame || e < 0 || top.term == len(s.t.sys.equations[e].terms) {
			s.order = append(s.order, top.body)
			stack = stack[:len(stack)-1]
			continue
		}
		next := s.t.sys.equations[e].terms[top.term].body
		top.term++
		if !s.seen[next] {
			s.seen[next] = true
			stack = append(stack, step{next, 0})
		}
	}
}

// tied puts what hangs on tied parameters down to the equations that tied them.
func (s *Slips) tied() {
	sys := s.t.sys
	for i, stop := range sys.stops {
		worth := s.param[stop.param]
		if worth == 0 {
			continue
		}
		// The tie says parameter - value = 0.
		s.multiple[i] = worth
		s.param[stop.param] = 0
		for _, m := range sys.params[stop.param].value {
			s.param[m.param] += worth * m.k.Float()
		}
	}
	var touched []int
	for i := len(sys.stops) - 1; i >= 0; i-- {
		worth := s.multiple[i]
		if worth == 0 {
			continue
		}
		s.multiple[i] = 0
		e := sys.stops[i].equation
		earlier, k := s.solved(i)
		for _, x := range earlier {
			s.multiple[x.tie] -= worth / k * x.k
		}
		s.use(e, -worth/k, -1)
		for _, term := range sys.equations[e].terms {
			touched = append(touched, term.body)
		}
	}
	s.settle(touched...)
}

// earlierTie is a multiple of a tie.
type earlierTie struct {
	tie int
	k   float64
}

// solved writes the equation of a tie, a sum of parameters, as k times the tie
// and multiples of earlier ones.
func (s *Slips) solved(tie int) (earlier []earlierTie, k float64) {
	sys := s.t.sys
	sum := map[int]float64{}
	for _, term := range sys.equations[sys.stops[tie].equation].terms {
		for _, m := range sys.rate[term.body] {
			sum[m.param] += term.k.Float() * m.k.Float()
		}
	}
	for {
		next := tie
		for p, k := range sum {
			if k != 0 {
				next = min(next, s.tieOf[p])
			}
		}
		if next == tie {
			return earlier, sum[sys.stops[tie].param]
		}
		p := sys.stops[next].param
		k := sum[p]
		delete(sum, p)
		earlier = append(earlier, earlierTie{next, k})
		for _, m := range sys.params[p].value {
			sum[m.param] += k * m.k.Float()
		}
	}
}
