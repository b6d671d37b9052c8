package rules

import (
	"fmt"
	"math"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "planets-assemble",
		Group:    Teeth,
		Severity: Error,
		Checks:   "planets between the same two wheels stand where their teeth can be put in with both",
		Why:      "once the first planet is in, sun and ring stand fast against each other; the next goes in only at certain places, and anywhere else tooth meets tooth",
		Formula:  "angles between planets are multiples of 360/(zs + zr); n planets stand evenly where (zs + zr)/n is whole; stepped planets of zb and zc: 360 g/(zs zc + zr zb), g the greatest common divisor of zb and zc; between two suns the difference in place of the sum",
		Source:   "SDP/SI D785 eq 13-7 and 13-8; stepped planets and two suns computed from the same condition",
		Thresholds: []Threshold{
			{Name: "misfit", Dimension: quantity.Plain, Default: "0.05", Doc: "by how many modules of arc the teeth of a planet may miss: play takes it up"},
		},
		Breaks: func() string { return planetsExample(3) },
		Keeps:  func() string { return planetsExample(4) },
		Run:    planetsAssemble,
	})
}

// planetsExample is a set of 16, 16 and 48 teeth with so many planets.
func planetsExample(n int) string {
	s := `
design { title = "Planetary set" }
arbor "sun" { at = [0, 0] }
arbor "carrier" { at = [0, 0] }
arm "carrier" { on = "carrier" }
stud "case" { at = [0, 0] }
wheel "sun" {
  on     = "sun"
  teeth  = 16
  module = 1
}
wheel "ring" {
  on     = "case"
  kind   = "ring"
  teeth  = 48
  module = 1
}
`
	for i := 1; i <= n; i++ {
		s += fmt.Sprintf(`arbor "planet_%d" {
  carried_by = "carrier"
  radius     = 16
  bearing    = %s
}
wheel "planet_%d" {
  on     = "planet_%d"
  teeth  = 16
  module = 1
}
mesh { wheels = ["sun", "planet_%d"] }
mesh { wheels = ["planet_%d", "ring"] }
`, i, fig(360/float64(n)*float64(i-1)), i, i, i, i)
	}
	return s
}

func planetsAssemble(p *Pass) {
	misfit := p.Limit("misfit")
	sets := planetSets(p.Facts)
	for i := range sets {
		s := &sets[i]
		if s.second == nil {
			continue
		}
		places, g := s.places()
		if places == 0 {
			continue // anywhere goes
		}
		if s.evenly {
			// On the frame they may stand anywhere; on an arm they are taken to balance.
			if s.planets[0].arbor.Carrier != nil && places%int64(len(s.planets)) != 0 {
				p.Report(p.notEven(s, places))
			}
			continue
		}
		// What a part of a place is worth at the planet's teeth, in modules.
		worth := math.Pi * float64(g) / float64(s.planets[0].second.Teeth.N)
		first := &s.planets[0]
		for j := 1; j < len(s.planets); j++ {
			q := &s.planets[j]
			turn := (q.bearing - first.bearing) * float64(places) / 360
			if off := math.Abs(turn-math.Round(turn)) * worth; off > misfit+1e-9 {
				p.Report(p.misfit(s, q, math.Round(turn)*360/float64(places)+first.bearing, places, off))
			}
		}
	}
}

// places is at how many places round the sun a planet can go in once the first
// has, 0 for anywhere, and the common divisor of a planet's two counts.
func (s *planetSet) places() (places, g int64) {
	p := &s.planets[0]
	b, c := p.first.Teeth.N, p.second.Teeth.N
	for x, y := b, c; ; x, y = y, x%y {
		if y == 0 {
			g = x
			break
		}
	}
	z1, z2 := s.first.Teeth.N, s.second.Teeth.N
	if s.first.Is("ring") {
		z1 = -z1
	}
	if s.second.Is("ring") {
		z2 = -z2
	}
	// Counts are at most a million, so that the products stay far from overflow.
	places = (z1*c - z2*b) / g
	return max(places, -places), g
}

func (p *Pass) notEven(s *planetSet, places int64) *Finding {
	n := len(s.planets)
	f := p.Found(&s.first.Part, s.first.Teeth.Place(), "%d planets cannot stand evenly between %s and %s: the places for them are %s of a turn apart, and %d is no multiple of %d",
		n, s.first.Title(), s.second.Title(), exact.Frac(1, places), places, n).Weigh(Warning)
	f.See(s.second.Teeth.Place(), "teeth of %s", s.second.Title())
	for i := range s.planets {
		f.See(s.planets[i].first.Teeth.Place(), "teeth of %s", s.planets[i].first.Title())
	}
	return f
}

func (p *Pass) misfit(s *planetSet, q *planet, bearing float64, places int64, off float64) *Finding {
	a := q.arbor
	f := p.Found(&a.Part, bearingPlace(a), "%s does not go in at %s deg from %s: its teeth miss by %s modules; the places between %s and %s are %s of a turn apart, the nearest at %s deg",
		q.first.Title(), figures(q.bearing-s.planets[0].bearing, 6), s.planets[0].first.Title(), figures(off, 3), s.first.Title(), s.second.Title(), exact.Frac(1, places), figures(bearing-s.planets[0].bearing, 6))
	f.See(bearingPlace(s.planets[0].arbor), "the first of the planets")
	f.See(s.first.Teeth.Place(), "teeth of %s", s.first.Title())
	f.See(s.second.Teeth.Place(), "teeth of %s", s.second.Title())
	p.turnPlanet(f, a, bearing-q.bearing)
	return f
}

// bearingPlace is where an arbor says in which direction it stands.
func bearingPlace(a *spec.Arbor) text.Place {
	if a.Bear.Set() {
		return a.Bear.Place()
	}
	return placeOf(a)
}

// turnPlanet offers to move an arbor by so many degrees round the middle of its
// plan, if that is where the planets' common axis is.
func (p *Pass) turnPlanet(f *Finding, a *spec.Arbor, by float64) {
	title := "turn " + a.Title() + " by " + figures(by, 4) + " deg"
	if a.Radius.Set() && a.Bear.Set() {
		value, err := exact.Parse(figures(a.Bear.Exact.Float()+by, 8))
		if err != nil {
			return
		}
		if edit, ok := Figure(a.Bear.At, value, "deg"); ok {
			f.Mend(title, edit)
		}
		return
	}
	if !a.Position.Set() {
		return
	}
	sin, cos := math.Sincos(by * math.Pi / 180)
	x, y := a.Position.X.Exact.Float(), a.Position.Y.Exact.Float()
	toX, errX := exact.Parse(figures(math.Round((x*cos-y*sin)*1e5)/1e5, 10))
	toY, errY := exact.Parse(figures(math.Round((x*sin+y*cos)*1e5)/1e5, 10))
	if errX != nil || errY != nil {
		return
	}
	editX, okX := Figure(a.Position.X.At, toX, "mm")
	editY, okY := Figure(a.Position.Y.At, toY, "mm")
	if okX && okY {
		f.Mend(title, editX, editY)
	}
}
