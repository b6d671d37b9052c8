package rules

import (
	"fmt"
	"math"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

// handPlay judges the play of each hand's train.
func (p *Pass) handPlay(list []Gearing) {
	if len(p.Design.Hands) == 0 || len(list) == 0 {
		return
	}
	usual := p.Limit("hand")
	plays := HandPlays(p.Facts)
	var want lack
	for i := range plays {
		h := &plays[i]
		if len(h.Unknown) > 0 {
			want.of("the play of a hand's train is known in part: it lacks that of "+h.Unknown[0].Name(), h.Hand.Name.Text)
		}
		bound, said := p.handShows(h.Hand, usual)
		if h.Degrees <= bound {
			continue
		}
		at := h.Hand.Head
		if h.Hand.Within.Set() && bound != usual {
			at = h.Hand.Within.Place()
		}
		f := p.Found(&h.Hand.Part, at, "the train of %s has %s deg of play, more than %s", h.Hand.Title(), figures(h.Degrees, 4), said)
		for _, m := range h.most {
			if m.joint == nil {
				break
			}
			f.See(m.joint.Part.Head, "%s adds %s deg", m.joint.Name(), figures(m.degrees, 2))
		}
		p.Report(f)
	}
	want.tell(p)
}

// handShows is the angle in degrees that a hand must show, and how messages say
// it: that of its tolerance, or what it turns in the time of it.
func (p *Pass) handShows(h *spec.Hand, usual float64) (degrees float64, said string) {
	if h.Within.Set() {
		switch h.Within.Measure {
		case quantity.AngleOver:
			d := h.Within.Amount.Float()
			return d, "the " + fig(d) + " deg of its tolerance"
		case quantity.TimeOver:
			if rate, ok := p.Train.Against(h.Arbor, h.Base); ok && p.Train.Timed() && !rate.IsZero() {
				d := math.Abs(rate.Mul(h.Within.Amount).Float()) * 360
				return d, fmt.Sprintf("the %s deg that it turns in the %s of its tolerance", figures(d, 4), days(h.Within.Amount.Float()))
			}
		}
	}
	return usual, fig(usual) + " deg"
}

// HandPlay is the play of a hand's whole train, from the drive to the hand or
// where there is none from the clock's arbor.
type HandPlay struct {
	Hand    *spec.Hand
	Degrees float64        // of the meshes whose play is known
	Unknown []*train.Joint // meshes of the train whose play is not

	known bool
	most  [3]meshPlay // the meshes that add most, the most first
}

type meshPlay struct {
	joint   *train.Joint
	degrees float64 // at the hand
}

type handPlaysKey struct{}

// HandPlays returns the play of every hand that a train of meshes drives.
func HandPlays(f *Facts) []HandPlay { return Shared(f, handPlaysKey{}, handPlays) }

func handPlays(f *Facts) []HandPlay {
	angles := jointPlays(f)
	slips := handSlips(f)
	var plays []HandPlay
	for i, h := range f.Design.Hands {
		play := HandPlay{Hand: h}
		for _, s := range slips[i] {
			if s.Joint.Mesh == nil {
				continue // chains, couplings and steps are taken to have none
			}
			angle := angles[s.Index]
			if math.IsNaN(angle) {
				play.Unknown = append(play.Unknown, s.Joint)
				continue
			}
			play.add(s.Joint, s.Weight*angle)
		}
		if play.known || len(play.Unknown) > 0 {
			plays = append(plays, play)
		}
	}
	return plays
}

// jointPlays is by how many degrees the B of each joint can turn with its A
// held, NaN where that is not known; what is no mesh has none.
func jointPlays(f *Facts) []float64 {
	list := Gearings(f)
	angles := make([]float64, len(f.Train.Joints))
	next := 0
	for i := range f.Train.Joints {
		m := f.Train.Joints[i].Mesh
		if m == nil {
			continue
		}
		angles[i] = math.NaN()
		// Both lists are in the order of the text.
		for next < len(list) && list[next].Mesh != m {
			next++
		}
		if next == len(list) {
			next = 0
			continue
		}
		if angle, ok := list[next].playOfB(); ok {
			angles[i] = angle
		}
	}
	return angles
}

// add adds the play of one mesh, in degrees at the hand.
func (h *HandPlay) add(j *train.Joint, degrees float64) {
	h.Degrees += degrees
	h.known = true
	m := meshPlay{j, degrees}
	for i := range h.most {
		if h.most[i].joint == nil || h.most[i].degrees < m.degrees {
			h.most[i], m = m, h.most[i]
		}
	}
}

// playOfB is by how many degrees the mesh's second wheel can turn with the
// first held.
func (g *Gearing) playOfB() (degrees float64, ok bool) {
	play, ok := g.Backlash()
	if ok && play < 0 {
		return 0, true // jammed, as another rule says
	}
	if ok && g.HasFit {
		if g.Flipped {
			return g.Fit.A.Play, true
		}
		return g.Fit.B.Play, true
	}
	module, known := ModuleOf(g.Mesh.B)
	if !known || g.Fault != nil {
		return 0, false
	}
	if g.Pairing == ClockPair {
		s, err := g.Clock.Sizes()
		play, ok = s.Backlash, err == nil
	}
	// Of a worm, its starts times the module are its lead over pi.
	return 2 * play / (module * float64(g.Mesh.B.Teeth.N)) * 180 / math.Pi, ok
}
