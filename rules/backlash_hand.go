package rules

import (
	"fmt"
	"math"
	"slices"

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
		const few = 3
		for _, m := range h.greatest(few) {
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

	meshes []meshPlay
}

type meshPlay struct {
	joint   *train.Joint
	degrees float64 // at the hand
}

type handPlaysKey struct{}

// HandPlays returns the play of every hand that a train of meshes drives.
func HandPlays(f *Facts) []HandPlay { return Shared(f, handPlaysKey{}, handPlays) }

func handPlays(f *Facts) []HandPlay {
	list := Gearings(f)
	of := make(map[*spec.Mesh]*Gearing, len(list))
	for i := range list {
		of[list[i].Mesh] = &list[i]
	}
	slips := f.Train.NewSlips()
	var plays []HandPlay
	for _, h := range f.Design.Hands {
		if h.Arbor == nil {
			continue
		}
		play := HandPlay{Hand: h}
		for _, s := range slips.Of(h.Arbor, h.Base) {
			g := of[s.Joint.Mesh]
			if g == nil {
				continue // chains, couplings and steps are taken to have none
			}
			angle, ok := g.playOfB()
			if !ok {
				play.Unknown = append(play.Unknown, s.Joint)
				continue
			}
			play.Degrees += s.Weight * angle
			play.meshes = append(play.meshes, meshPlay{s.Joint, s.Weight * angle})
		}
		if len(play.meshes)+len(play.Unknown) > 0 {
			plays = append(plays, play)
		}
	}
	return plays
}

// greatest is the meshes that add most, the most first.
func (h *HandPlay) greatest(n int) []meshPlay {
	sorted := slices.Clone(h.meshes)
	slices.SortStableFunc(sorted, func(a, b meshPlay) int {
		switch {
		case a.degrees > b.degrees:
			return -1
		case a.degrees < b.degrees:
			return 1
		}
		return 0
	})
	return sorted[:min(n, len(sorted))]
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
