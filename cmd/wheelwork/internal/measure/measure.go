// Package measure writes the meshes and chains of a design as numbers.
package measure

import (
	"encoding/json"
	"io"
	"math"

	"wheelwork/rules"
)

// Measure is a design's meshes, chains and the play of its hands in mm and
// degrees. What cannot be known from the spec is nil or empty, and left out of the
// JSON.
type Measure struct {
	Design string  `json:"design"` // its title
	Meshes []Mesh  `json:"meshes"`
	Chains []Chain `json:"chains"`
	Hands  []Hand  `json:"hands"` // those that meshes drive
}

// Mesh is what can be measured of a mesh. Pairs are of its two wheels, in the
// order of the mesh.
type Mesh struct {
	Name  string `json:"name"`
	Train string `json:"train,omitempty"`
	// Kind is spur, helical, ring, cycloidal, bevel, crown or worm.
	Kind           string    `json:"kind,omitempty"`
	Wheels         []string  `json:"wheels"`
	Teeth          []int64   `json:"teeth"`
	Modules        []float64 `json:"modules,omitempty"`
	Centre         *float64  `json:"centre_distance,omitempty"`
	Wanted         *float64  `json:"wanted_centre_distance,omitempty"`
	WorkingAngle   *float64  `json:"working_pressure_angle,omitempty"`
	ContactRatio   *float64  `json:"contact_ratio,omitempty"`
	Backlash       *float64  `json:"backlash,omitempty"`
	Play           []float64 `json:"play_deg,omitempty"` // of either wheel, the other held
	References     []float64 `json:"reference_diameters,omitempty"`
	Tips           []float64 `json:"tip_diameters,omitempty"`
	Roots          []float64 `json:"root_diameters,omitempty"`
	TopLands       []float64 `json:"top_lands,omitempty"`
	Cones          []float64 `json:"cone_angles,omitempty"` // half angles
	ConeDistance   *float64  `json:"cone_distance,omitempty"`
	LeadAngle      *float64  `json:"lead_angle,omitempty"`
	Hunting        *Hunting  `json:"hunting,omitempty"`
	CannotMeasured string    `json:"unmeasured,omitempty"` // why the teeth could not be
}

// Hunting is how the teeth of a mesh meet again.
type Hunting struct {
	GCD int `json:"gcd"`
	// Turns of the first wheel and of the second until the same two teeth meet.
	Turns       int `json:"turns"`
	TurnsSecond int `json:"turns_second"`
}

// Hand is the play of a hand's whole train.
type Hand struct {
	Name string  `json:"name"`
	Play float64 `json:"play_deg"`
	// Without names the meshes whose play is not known and not in the sum.
	Without []string `json:"without,omitempty"`
}

// Of measures a design.
func Of(f *rules.Facts) *Measure {
	m := &Measure{Design: f.Design.Head.Title.Text, Meshes: []Mesh{}, Chains: []Chain{}, Hands: []Hand{}}
	list := rules.Gearings(f)
	for i := range list {
		m.Meshes = append(m.Meshes, mesh(&list[i]))
	}
	chains := rules.Chainings(f)
	for i := range chains {
		m.Chains = append(m.Chains, chainOf(&chains[i]))
	}
	plays := rules.HandPlays(f)
	for i := range plays {
		p := &plays[i]
		one := Hand{Name: p.Hand.Name.Text, Play: rounded(p.Degrees)}
		for _, j := range p.Unknown {
			one.Without = append(one.Without, j.Mesh.Label())
		}
		m.Hands = append(m.Hands, one)
	}
	return m
}

func mesh(g *rules.Gearing) Mesh {
	x := g.Measure()
	a, b := g.Mesh.A, g.Mesh.B
	one := Mesh{
		Name: g.Mesh.Label(), Train: g.Mesh.Train.Text, Kind: kind(g),
		Wheels: []string{a.Name.Text, b.Name.Text}, Teeth: []int64{a.Teeth.N, b.Teeth.N},
		Centre: known(x.Centre), Wanted: known(x.Wanted), WorkingAngle: known(x.WorkingAngle),
		ContactRatio: known(x.ContactRatio), Backlash: known(x.Backlash), Play: pair(x.Play),
		References: pair(x.Diameter), Tips: pair(x.Tip), Roots: pair(x.Root), TopLands: pair(x.TopLand),
		Cones: pair(x.Cone), ConeDistance: known(x.ConeDistance), LeadAngle: known(x.LeadAngle),
	}
	moduleA, okA := rules.ModuleOf(a)
	moduleB, okB := rules.ModuleOf(b)
	if okA && okB {
		one.Modules = []float64{rounded(moduleA), rounded(moduleB)}
	}
	if x.Hunt.GCD > 0 {
		one.Hunting = &Hunting{x.Hunt.GCD, x.Hunt.TurnsA, x.Hunt.TurnsB}
	}
	switch {
	case g.Lacks != "":
		one.CannotMeasured = g.Lacks
	case g.Fault != nil:
		one.CannotMeasured = g.Fault.Error()
	}
	return one
}

func kind(g *rules.Gearing) string {
	switch g.Pairing {
	case rules.OutsidePair:
		if g.A.Helix.Set() || g.B.Helix.Set() {
			return "helical"
		}
		return "spur"
	case rules.RingPair:
		return "ring"
	case rules.ClockPair:
		return "cycloidal"
	case rules.BevelPair:
		return "bevel"
	case rules.CrownPair:
		return "crown"
	case rules.WormPair:
		return "worm"
	}
	return ""
}

// rounded is a figure to a billionth, the same on every machine.
func rounded(x float64) float64 { return math.Round(x*1e9) / 1e9 }

// known is a figure that may not be known.
func known(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	x = rounded(x)
	return &x
}

// pair is two figures, nothing where either is not known.
func pair(x [2]float64) []float64 { return all(x[:]) }

func all(list []float64) []float64 {
	var rest []float64
	for _, x := range list {
		f := known(x)
		if f == nil {
			return nil
		}
		rest = append(rest, *f)
	}
	return rest
}

// JSON writes the measures as one document.
func (m *Measure) JSON(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(m)
}
