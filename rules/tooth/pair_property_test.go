package tooth

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// somePairs returns sound pairs of every kind, the same on every run.
func somePairs(n int) []Pair {
	random := rand.New(rand.NewSource(1))
	var pairs []Pair
	for len(pairs) < n {
		angles := []float64{14.5, 20, 25}
		a := at(angles[random.Intn(3)], 6+random.Intn(60), 0.2+3*random.Float64())
		b := a
		b.Teeth = a.Teeth + 10 + random.Intn(100)
		a.Shift, b.Shift = random.Float64()-0.3, random.Float64()-0.3
		b.Ring = random.Intn(2) == 0
		if random.Intn(2) == 0 {
			a.Helix = 40 * random.Float64()
			b.Helix = -a.Helix
			if b.Ring {
				b.Helix = a.Helix
			}
		}
		p := Pair{a, b}
		if _, err := p.Fit(); err == nil {
			pairs = append(pairs, p)
		}
	}
	return pairs
}

func TestShiftSumRoundTrip(t *testing.T) {
	for _, p := range somePairs(500) {
		sum := p.A.Shift + p.B.Shift
		if p.B.Ring {
			sum = p.B.Shift - p.A.Shift
		}
		assert.InDelta(t, sum, must(p.ShiftSum(must(p.NominalCentre()))), 1e-8, "%+v", p)
	}
}

func TestFitHoldsTogether(t *testing.T) {
	for _, p := range somePairs(500) {
		f := must(p.Fit())
		same(t, f.B.Working/f.A.Working, float64(p.B.Teeth)/float64(p.A.Teeth), "working circles roll")
		touching := (f.A.Working + f.B.Working) / 2
		if p.B.Ring {
			touching = (f.B.Working - f.A.Working) / 2
		}
		same(t, f.Centre, touching, "and touch")
		assert.InDelta(t, 0, f.Backlash, 1e-9)
		assert.LessOrEqual(t, f.ContactRatio, f.UnclampedRatio+1e-12)
		if f.ContactRatio < f.UnclampedRatio-1e-12 {
			assert.True(t, f.A.Interferes || f.B.Interferes, "clamped where a tip interferes")
		}
		wide := must(p.At(f.Centre + 0.01*p.A.Module))
		assert.Equal(t, !p.B.Ring, wide.Backlash > 0, "opening loosens outside, tightens a ring")
	}
}

func TestShorteningKeepsClearance(t *testing.T) {
	for _, p := range somePairs(500) {
		short, err := p.Shortened()
		require.NoError(t, err)
		f := must(short.Fit())
		if p.B.Ring {
			assert.Zero(t, short.A.Shortening)
			assert.GreaterOrEqual(t, f.A.Clearance, 0.25*p.A.Module-1e-9)
			continue
		}
		same(t, 0.25*p.A.Module, f.A.Clearance)
		same(t, 0.25*p.A.Module, f.B.Clearance)
		assert.GreaterOrEqual(t, short.A.Shortening, -1e-9)
	}
}

func TestWorkingThicknessesFillThePitch(t *testing.T) {
	// Backlash by another way: what the teeth leave of the pitch at the working
	// circles.
	for _, p := range somePairs(300) {
		if p.B.Ring {
			continue
		}
		p.A.Thinning, p.B.Thinning = 0.02*p.A.Module, 0.03*p.A.Module
		f := must(p.At(must(p.NominalCentre()) * 1.003))
		left := math.Pi * f.A.Working / float64(p.A.Teeth)
		for _, g := range []struct {
			Gear
			working float64
		}{{p.A, f.A.Working}, {p.B, f.B.Working}} {
			left -= g.working * (g.halfAngle(g.working/2) - g.Thinning/(2*g.reference()))
		}
		assert.InDelta(t, left, f.Backlash, 1e-9)
	}
}
