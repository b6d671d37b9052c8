package rules_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"wheelwork/rules"
)

// A thing of a random design, in the plan of an arm or of the frame (-1).
type thing struct {
	title            string
	on               int // the arm
	x, y, length     float64
	radius, from, to float64
	arbor            int // that it is, or is on
	carries          int // the arm that it is, else -1
}

// randomDesign writes arms, on arms, on the frame, each with arbors that bear a
// wheel.
func randomDesign(rng *rand.Rand) (text string, list []thing, arms []thing) {
	b := begun()
	n := 0
	post := func(on int) int {
		name, carrier := fmt.Sprintf("a%d", n), "frame"
		if on >= 0 {
			carrier = fmt.Sprintf("m%d", on)
		}
		t := thing{title: fmt.Sprintf("arbor %q", name), on: on, x: float64(rng.IntN(1200)-600) / 10, y: float64(rng.IntN(1200)-600) / 10,
			radius: 1.5, from: float64(rng.IntN(20)), arbor: n, carries: -1}
		t.to = t.from + 4 + float64(rng.IntN(10))
		b.post(name, carrier, t.x, t.y, t.from, t.to)
		list = append(list, t)
		n++
		return n - 1
	}
	wheel := func(arbor int) {
		p := list[0]
		for _, t := range list {
			if t.arbor == arbor {
				p = t
				break
			}
		}
		teeth, z := 10+rng.IntN(50), p.from+float64(rng.IntN(3))
		name := fmt.Sprintf("w%d_%d", arbor, len(list))
		b.wheel(name, fmt.Sprintf("a%d", arbor), teeth, z)
		t := p
		t.title, t.radius, t.from, t.to = fmt.Sprintf("wheel %q", name), 0.25*float64(teeth+2), z, z+2
		list = append(list, t)
	}
	for m := range 1 + rng.IntN(4) {
		on := rng.IntN(m+1) - 1
		arbor := post(on)
		p := list[len(list)-1]
		name, reach, z := fmt.Sprintf("m%d", m), float64(20+rng.IntN(40)), p.from+float64(rng.IntN(3))
		fmt.Fprintf(b, "arm %q {\n  on = \"a%d\"\n  reach = %v\n  z = %v\n  face = 2\n}\n", name, arbor, reach, z)
		arms = append(arms, p)
		list = append(list, thing{title: fmt.Sprintf("arm %q", name), on: m, length: reach - 0.5, radius: 0.5, from: z, to: z + 2, arbor: arbor, carries: m})
		for range rng.IntN(4) {
			wheel(post(m))
		}
	}
	for range rng.IntN(6) {
		wheel(post(-1))
	}
	return b.String(), list, arms
}

// together reports whether two things may touch: an arbor and what is on it, an
// arm and what it carries.
func together(s, t thing) bool {
	if s.arbor == t.arbor {
		return s.title[:5] == "arbor" || t.title[:5] == "arbor"
	}
	return s.carries >= 0 && t.title[:5] == "arbor" && t.on == s.carries || t.carries >= 0 && s.title[:5] == "arbor" && s.on == t.carries
}

// What designs say is turned to many positions: what overlaps then is found, and
// what is found to overlap far does so.
func TestClashesAgreeWithTurning(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 4))
	deep, seen := 0, 0
	for range 30 {
		text, list, arms := randomDesign(rng)
		found := map[[2]string]float64{}
		count := map[string]int{}
		for _, c := range rules.ComputeClashes(rules.NewFacts(loadText(t, "d.hcl", text)), 0) {
			found[[2]string{c.A, c.B}], found[[2]string{c.B, c.A}] = c.Gap, c.Gap
			count[c.A]++
			count[c.B]++
		}
		over := map[[2]string]bool{}
		for range 500 {
			angles := make([]float64, len(arms))
			for i := range angles {
				angles[i] = rng.Float64() * 2 * math.Pi
			}
			place := func(on int, x, y float64) (float64, float64) {
				for ; on >= 0; on = arms[on].on {
					sin, cos := math.Sincos(angles[on])
					x, y = arms[on].x+x*cos-y*sin, arms[on].y+x*sin+y*cos
				}
				return x, y
			}
			for i, s := range list {
				for _, o := range list[:i] {
					if min(s.to, o.to)-max(s.from, o.from) <= 0 || together(s, o) {
						continue
					}
					if apart := nearest(s, o, place); apart < s.radius+o.radius-0.01 {
						over[[2]string{s.title, o.title}] = true
						_, ok := found[[2]string{s.title, o.title}]
						assert.True(t, ok || count[s.title] >= 4 || count[o.title] >= 4, "%s and %s overlap\n%s", s.title, o.title, text)
					}
				}
			}
		}
		for pair, gap := range found {
			if gap < -6 && pair[0] < pair[1] {
				deep++
				if over[pair] || over[[2]string{pair[1], pair[0]}] {
					seen++
				}
			}
		}
	}
	assert.Greater(t, deep, 100)
	assert.GreaterOrEqual(t, float64(seen), 0.95*float64(deep), "of %d", deep)
}

// nearest is how near two placed things come, walking along their lengths.
func nearest(s, o thing, place func(on int, x, y float64) (float64, float64)) float64 {
	const step = 1.0
	least := math.Inf(1)
	for i := 0.0; i <= s.length; i += step {
		x, y := place(s.on, s.x+i, s.y)
		for k := 0.0; k <= o.length; k += step {
			u, v := place(o.on, o.x+k, o.y)
			least = min(least, math.Hypot(x-u, y-v))
		}
	}
	return least
}
