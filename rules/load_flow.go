package rules

import (
	"math"
	"slices"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// flowing follows the power through the joints. A joint passes it on to one body
// as soon as the others it ties together are reached: of a planet's meshes the
// second turns the arm. Where nothing follows any more, the joint that was first
// touched passes it on from one of its wheels to the other.
type flowing struct {
	passing
	best    efficiency
	bodies  [][3]*spec.Arbor // joint -> those it ties together, but for the frame
	touch   touches
	missing []int8  // joint -> how many of them are not reached
	ready   []int32 // joints with one that is not
	touched []int32 // joints in the order in which power came to one of their ends
	carried []int32 // the same of those that it came to by what carries them
}

func follow(f *Facts) passing {
	joints := f.Train.Joints
	w := flowing{
		passing: passing{f: f, arbors: make([]float64, len(f.Design.Arbors)), joints: make([]passed, len(joints))},
		best:    efficiencies(f),
		bodies:  make([][3]*spec.Arbor, len(joints)),
		missing: make([]int8, len(joints)),
	}
	for i := range joints {
		if j := &joints[i]; j.A != nil && !j.Wanders {
			w.bodies[i] = w.tied(j)
			for _, b := range w.bodies[i] {
				if b != nil {
					w.missing[i]++
				}
			}
		}
	}
	w.touch = touching(w.bodies, len(f.Design.Arbors))
	driven := false
	for i := range joints {
		if j := &joints[i]; j.A == nil {
			driven = true
			w.reach(w.bodyOf(j.B), 1)
		}
	}
	if c := f.Design.Clock; c != nil && c.Arbor != nil && !driven {
		w.reach(w.bodyOf(c.Arbor), 1)
	}
	for w.settle(); len(w.touched)+len(w.carried) > 0; w.settle() {
		queue := &w.touched
		if len(*queue) == 0 {
			queue = &w.carried
		}
		i := (*queue)[0]
		*queue = (*queue)[1:]
		if w.missing[i] == 2 {
			w.pass(i)
		}
	}
	return w.passing
}

// tied is the bodies that a joint ties together, each once. One whose ratio is 1
// leaves out what carries it: both ends turn alike.
func (p passing) tied(j *train.Joint) (list [3]*spec.Arbor) {
	all := [3]*spec.Arbor{p.bodyOf(j.A), p.bodyOf(j.B), j.Carrier.Arbor}
	if j.Ratio.Equal(exact.Int(1)) {
		all[2] = nil
	}
	n := 0
	for _, b := range all {
		if b != nil && !slices.Contains(list[:n], b) {
			list[n] = b
			n++
		}
	}
	return list
}

// settle works off the joints that have one body not reached, or none.
func (w *flowing) settle() {
	for len(w.ready) > 0 {
		i := w.ready[0]
		w.ready = w.ready[1:]
		w.pass(i)
	}
}

// reach notes that a part of the power comes to a body.
func (w *flowing) reach(a *spec.Arbor, part float64) {
	if a == nil || w.arbors[a.Index] > 0 {
		return
	}
	w.arbors[a.Index] = part
	for _, i := range w.touch.of(a) {
		j := &w.f.Train.Joints[i]
		w.missing[i]--
		switch {
		case w.missing[i] < 2:
			w.ready = append(w.ready, i)
		case w.bodyOf(j.A) == a, w.bodyOf(j.B) == a:
			w.touched = append(w.touched, i)
		default:
			w.carried = append(w.carried, i)
		}
	}
}

// pass takes the power through a joint, to the body that it has not reached yet
// if there is one.
func (w *flowing) pass(i int32) {
	if w.joints[i].from != nil {
		return
	}
	j := &w.f.Train.Joints[i]
	a, b := w.bodyOf(j.A), w.bodyOf(j.B)
	var from, to *spec.Arbor
	for _, x := range [...]*spec.Arbor{a, b, j.Carrier.Arbor} {
		if x != nil && w.arbors[x.Index] > 0 && from == nil {
			from = x
		}
	}
	for _, x := range [...]*spec.Arbor{b, a, j.Carrier.Arbor} {
		if x != nil && slices.Contains(w.bodies[i][:], x) && w.arbors[x.Index] == 0 && to == nil {
			to = x
		}
	}
	share := w.best.of(int(i), j, from)
	rate, _ := w.f.Train.Against(j.B, j.Carrier)
	reached := w.arbors[from.Index]
	w.joints[i] = passed{reached, max(0, 1/max(share, 1e-3)-1), math.Abs(rate.Float()), from, to}
	w.order = append(w.order, i)
	w.reach(to, reached*share)
}

// touches is the joints of each body: those of the arbor with index i in
// list[from[i]:from[i+1]].
type touches struct{ from, list []int32 }

func (t touches) of(a *spec.Arbor) []int32 { return t.list[t.from[a.Index]:t.from[a.Index+1]] }

func touching(bodies [][3]*spec.Arbor, arbors int) touches {
	t := touches{from: make([]int32, arbors+2)}
	for _, list := range bodies {
		for _, b := range list {
			if b != nil {
				t.from[b.Index+2]++
			}
		}
	}
	for i := 2; i < len(t.from); i++ {
		t.from[i] += t.from[i-1]
	}
	t.list = make([]int32, t.from[len(t.from)-1])
	for i, list := range bodies {
		for _, b := range list {
			if b != nil {
				t.list[t.from[b.Index+1]] = int32(i)
				t.from[b.Index+1]++
			}
		}
	}
	return t
}
