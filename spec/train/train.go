// Package train finds what a design's parts do together: which bodies turn,
// how the meshes and chains join them, and the exact rate of each, as a
// rational number of turns a day of model time.
package train

import (
	"sort"

	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// Train is a design's motion.
type Train struct {
	Design *spec.Design
	Joints []Joint
	// Locks are the joints that stop what should turn, each with its loop.
	Locks []Lock

	bodyOf    []int         // arbor index -> body
	arborOf   []*spec.Arbor // body -> the arbor that is it, nil for the frame
	axes      []axis        // arbor index -> its axis
	equations []equation
	drives    int // the first joint that is a drive

	sys   *system
	unit  int         // the pseudo-body whose rate is one rpm of the drives, -1 without
	value []exact.Rat // parameter -> its value, where settled
	fixed bool        // whether model time is settled
	real  bool        // whether model time is the watch's: a drive and no clock
	rates []settled   // body -> its rate
}

type settled struct {
	rate  exact.Rat
	known bool
}

// Lock is a joint that cannot turn, with the fewest joints that stop it, itself
// included. A joint that stops by itself joins an arbor to what its own carrier
// holds fast.
type Lock struct {
	Joint *Joint
	Loop  []*Joint

	equations []int // of the loop
}

// Solve finds the motion of a design.
func Solve(d *spec.Design) *Train {
	t := &Train{Design: d, unit: -1}
	t.bodies()
	t.findAxes()
	t.joints()
	t.driven()
	t.solve()
	t.settle()
	t.lock()
	return t
}

// bodies numbers what turns: the frame, then each arbor that is no stud; a
// stud is one body with what carries it.
func (t *Train) bodies() {
	d := t.Design
	t.bodyOf = make([]int, len(d.Arbors))
	t.arborOf = append(make([]*spec.Arbor, 0, len(d.Arbors)+2), nil)
	for i, a := range d.Arbors {
		if !a.Stud {
			t.bodyOf[i] = len(t.arborOf)
			t.arborOf = append(t.arborOf, a)
		}
	}
	for i, a := range d.Arbors {
		if a.Stud {
			t.bodyOf[i] = t.carrier(a)
		}
	}
}

// carrier is the body that carries the arbor.
func (t *Train) carrier(a *spec.Arbor) int {
	for a.Carrier != nil && a.Carrier.Arbor != nil {
		if a = a.Carrier.Arbor; !a.Stud {
			return t.bodyOf[a.Index]
		}
	}
	return frame
}

func (t *Train) body(b spec.Body) int {
	if b.Arbor == nil {
		return frame
	}
	return t.bodyOf[b.Arbor.Index]
}

// driven adds one equation a drive: its arbor turns against its carrier with
// so many times the unit of the drives.
func (t *Train) driven() {
	t.drives = len(t.Joints)
	for _, v := range t.Design.Drives {
		if v.Arbor == nil || !v.Speed.Set() {
			continue
		}
		if t.unit < 0 {
			t.unit = len(t.arborOf)
			t.arborOf = append(t.arborOf, nil)
		}
		j := Joint{Part: &v.Part, B: v.Arbor, Carrier: spec.Body{Arbor: t.arborOf[t.carrier(v.Arbor)]}, Ratio: v.Speed.Exact}
		one := exact.Int(1)
		t.equate(t.bodyOf[v.Arbor.Index], one, t.carrier(v.Arbor), one.Neg(), t.unit, v.Speed.Exact.Neg(), len(t.Joints))
		t.Joints = append(t.Joints, j)
	}
}

// solve finds every rate by free parameters.
func (t *Train) solve() {
	t.sys = newSystem(len(t.arborOf), t.equations)
	t.parametrize(t.sys)
}

// parametrize makes parameters in the order that leaves real ones: the drives,
// then without them the clock, then arms from the outside in, then what is left.
func (t *Train) parametrize(sys *system) {
	if t.unit >= 0 {
		sys.free(t.unit)
	} else if c := t.Design.Clock; c != nil && c.Arbor != nil {
		sys.free(t.bodyOf[c.Arbor.Index])
	}
	for _, body := range t.order(sys) {
		sys.free(body)
	}
}

func (t *Train) order(sys *system) []int {
	var arms, rest []int
	depth := make(map[int]int)
	for body, a := range t.arborOf {
		switch {
		case a == nil || sys.known[body]:
		case len(a.Arms) > 0:
			for up := a; up.Carrier != nil && up.Carrier.Arbor != nil; up = up.Carrier.Arbor {
				depth[body]++
			}
			arms = append(arms, body)
		default:
			rest = append(rest, body)
		}
	}
	sort.SliceStable(arms, func(i, j int) bool { return depth[arms[i]] < depth[arms[j]] })
	return append(arms, rest...)
}

// Rate is the body's rate against the frame in turns a day of model time,
// counter-clockwise positive; ok is false where nothing settles it.
func (t *Train) Rate(b spec.Body) (exact.Rat, bool) {
	s := t.rates[t.body(b)]
	return s.rate, s.known
}

// ArborRate is as Rate for an arbor or stud.
func (t *Train) ArborRate(a *spec.Arbor) (exact.Rat, bool) { return t.Rate(spec.Body{Arbor: a}) }

// Against is the arbor's rate against a body.
func (t *Train) Against(a *spec.Arbor, base spec.Body) (exact.Rat, bool) {
	if a == nil {
		return exact.Rat{}, false
	}
	x, y := t.rates[t.bodyOf[a.Index]], t.rates[t.body(base)]
	if !x.known || !y.known {
		return exact.Rat{}, false
	}
	return x.rate.Sub(y.rate), true
}

// Carrier is the body that carries the arbor.
func (t *Train) Carrier(a *spec.Arbor) spec.Body {
	return spec.Body{Arbor: t.arborOf[t.carrier(a)]}
}

// SameBody reports whether both arbors turn as one piece by construction.
func (t *Train) SameBody(a, b *spec.Arbor) bool {
	return t.bodyOf[a.Index] == t.bodyOf[b.Index]
}
