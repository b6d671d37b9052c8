package tooth

import (
	"fmt"
	"math"
)

// errRing refuses a ring where the formula holds for teeth that point outward.
func errRing(what string) error {
	return fmt.Errorf("%s of a ring: %w, teeth outside only", what, ErrRange)
}

// Chord is how a tooth caliper is set: the straight thickness of a tooth at
// its reference circle and the height of the tip above that chord, in mm.
type Chord struct {
	Thickness float64
	Height    float64
	HalfAngle float64 // degrees subtended by half the tooth
}

// Chord returns the chordal check of a spur gear with teeth outside. Source:
// SDP/SI D785 Table 10-1: half angle = 90/z + 360 x tan(a)/(pi z),
// thickness = z m sin(half angle), height = (z m/2)(1 - cos(half angle)) + ha.
func (g Gear) Chord() (Chord, error) {
	if err := g.Check(); err != nil {
		return Chord{}, err
	}
	if g.Ring || g.Helix != 0 {
		return Chord{}, fmt.Errorf("chordal thickness: %w, spur teeth outside only", ErrRange)
	}
	r := g.reference()
	half := g.halfAngle(r) - g.Thinning/(2*r)
	return Chord{
		Thickness: 2 * r * math.Sin(half),
		Height:    r*(1-math.Cos(half)) + g.tip() - r,
		HalfAngle: half / degree,
	}, nil
}

// BaseTangent returns how many teeth a plate micrometer should span and what
// it should read over them in mm. Source: KHK Gear Technical Reference, span
// measurement, and ISO 21771 (from memory):
//
//	W = m cos(a) (pi (k - 0.5) + z inv at) + 2 x m sin(a)
//
// k is the count whose flanks are touched nearest the reference height.
func (g Gear) BaseTangent() (teeth int, span float64, err error) {
	if err := g.Check(); err != nil {
		return 0, 0, err
	}
	if g.Ring {
		return 0, 0, errRing("the base tangent length")
	}
	alpha := g.PressureAngle * degree
	// Teeth of the spur gear that the plates see, for the choice of k alone.
	seen := g.z() * inv(g.alphaT()) / inv(alpha)
	f := g.Shift / seen
	c := math.Cos(alpha)
	reach := math.Sqrt(math.Max(0, (1+2*f)*(1+2*f)-c*c)) / c
	best := math.Round(seen/math.Pi*(reach-inv(alpha)-2*f*math.Tan(alpha)) + 0.5)
	k := math.Min(math.Max(best, 1), g.z())
	span = g.Module*c*(math.Pi*(k-0.5)+g.z()*inv(g.alphaT())) +
		2*g.Shift*g.Module*math.Sin(alpha) - g.Thinning*g.cosHelix()*c
	return int(k), span, nil
}
