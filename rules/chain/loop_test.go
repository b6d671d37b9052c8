package chain_test

import (
	"math"
	"math/rand"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/chain"
)

// Two sprockets as a loop are the pair of Length, wherever they lie.
func TestLoopOfTwo(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for range 500 {
		z1, z2 := 7+rng.Intn(60), 7+rng.Intn(60)
		p := []float64{3.7465, 6.35, 12.7}[rng.Intn(3)]
		r1, _ := chain.PitchRadius(z1)
		r2, _ := chain.PitchRadius(z2)
		c := (r1 + r2) * (1.001 + 5*rng.Float64())
		sin, cos := math.Sincos(2 * math.Pi * rng.Float64())
		places := []chain.Place{{X: 10, Y: -20, Teeth: z1}, {X: 10 + c*p*cos, Y: -20 + c*p*sin, Teeth: z2}}

		course, err := chain.Loop(p, places)
		require.NoError(t, err)
		want, err := chain.Length(z1, z2, c)
		require.NoError(t, err)
		assert.InDelta(t, want, course.Length, 1e-8*want)
		w1, w2, err := chain.Wrap(z1, z2, c)
		require.NoError(t, err)
		assert.InDelta(t, w1, course.Wrap[0], 1e-7)
		assert.InDelta(t, w2, course.Wrap[1], 1e-7)
		s, err := chain.Span(z1, z2, c)
		require.NoError(t, err)
		assert.InDelta(t, s*p, course.Span[0], 1e-7)
		assert.InDelta(t, s*p, course.Span[1], 1e-7)

		for outside := range 2 {
			crossed := append([]chain.Place(nil), places...)
			crossed[outside].Outside = true
			course, err = chain.Loop(p, crossed)
			require.NoError(t, err)
			want, err = chain.CrossedLength(z1, z2, c)
			require.NoError(t, err)
			assert.InDelta(t, want, course.Length, 1e-8*want)
			w, err := chain.CrossedWrap(z1, z2, c)
			require.NoError(t, err)
			assert.InDelta(t, w, course.Wrap[0], 1e-6)
			assert.InDelta(t, w, course.Wrap[1], 1e-6)
		}
	}
}

// Three equal sprockets in an equilateral triangle: three sides and one round of
// teeth, 120 degrees on each; the same in either order.
func TestLoopOfThree(t *testing.T) {
	places := []chain.Place{{Teeth: 18}, {X: 120, Teeth: 18}, {X: 60, Y: 60 * math.Sqrt(3), Teeth: 18}}
	for range 2 {
		course, err := chain.Loop(6.35, places)
		require.NoError(t, err)
		assert.InDelta(t, 360/6.35+18, course.Length, 1e-9)
		for i := range places {
			assert.InDelta(t, 120, course.Wrap[i], 1e-9)
			assert.InDelta(t, 120, course.Span[i], 1e-9)
		}
		places[0], places[2] = places[2], places[0]
	}
}

// An idler pressed from outside into the middle of the upper span of two equal
// sprockets, all of one size: by symmetry it lies on twice the angle by which a
// span leans, and each of the two loses as much as the span leans.
func TestLoopWithOutsideIdler(t *testing.T) {
	const p, z = 6.35, 17
	r, _ := chain.PitchRadius(z)
	r *= p
	depth := 5.0 // by which the idler pushes the span in
	places := []chain.Place{{Teeth: z}, {X: 200, Teeth: z}, {X: 100, Y: 2*r - depth, Teeth: z, Outside: true}}
	course, err := chain.Loop(p, places)
	require.NoError(t, err)
	gap := math.Hypot(100, 2*r-depth)
	span := math.Sqrt(gap*gap - 4*r*r)
	lean := math.Asin(2*r/gap) - math.Atan2(2*r-depth, 100)
	assert.InDelta(t, span, course.Span[1], 1e-9)
	assert.InDelta(t, 200, course.Span[0], 1e-9)
	assert.InDelta(t, 2*lean*180/math.Pi, course.Wrap[2], 1e-9)
	assert.InDelta(t, 180+lean*180/math.Pi, course.Wrap[0], 1e-9)
	assert.InDelta(t, (200+2*span)/p+z*(2*math.Pi+4*lean)/(2*math.Pi), course.Length, 1e-9)

	// Lifted clear of the span, the chain no longer reaches it.
	places[2].Y = 2*r + 1
	_, err = chain.Loop(p, places)
	assert.ErrorContains(t, err, "sprocket 3 of the loop")
}

// A tight loop round sprockets that all lie inside it is the edge of the convex
// hull of their pitch circles; the hull is found here from many points on them.
func TestLoopIsConvexHull(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	const p = 9.525
	for range 40 {
		n := 3 + rng.Intn(5)
		places := make([]chain.Place, n)
		var points [][2]float64
		for i := range places {
			a := 2 * math.Pi * (float64(i) + 0.3*rng.Float64()) / float64(n)
			places[i] = chain.Place{X: 400 * math.Cos(a), Y: 400 * math.Sin(a), Teeth: 9 + rng.Intn(20)}
			r, _ := chain.PitchRadius(places[i].Teeth)
			for k := range 2000 {
				s, c := math.Sincos(2 * math.Pi * float64(k) / 2000)
				points = append(points, [2]float64{places[i].X + p*r*c, places[i].Y + p*r*s})
			}
		}
		course, err := chain.Loop(p, places)
		require.NoError(t, err)
		edge, turned := 0.0, 0.0
		for i, q := range places {
			r, _ := chain.PitchRadius(q.Teeth)
			edge += course.Span[i] + p*r*course.Wrap[i]*math.Pi/180
			turned += course.Wrap[i]
		}
		assert.InDelta(t, 360, turned, 1e-6)
		want := hullEdge(points)
		assert.InDelta(t, want, edge, 1e-5*want)
	}
}

// hullEdge is the length round the convex hull, by the monotone chain.
func hullEdge(points [][2]float64) float64 {
	sort.Slice(points, func(i, j int) bool {
		return points[i][0] < points[j][0] || points[i][0] == points[j][0] && points[i][1] < points[j][1]
	})
	half := func(at func(int) [2]float64) float64 {
		var h [][2]float64
		for i := range points {
			q := at(i)
			for len(h) > 1 {
				a, b := h[len(h)-2], h[len(h)-1]
				if (b[0]-a[0])*(q[1]-a[1])-(b[1]-a[1])*(q[0]-a[0]) > 0 {
					break
				}
				h = h[:len(h)-1]
			}
			h = append(h, q)
		}
		sum := 0.0
		for i := 1; i < len(h); i++ {
			sum += math.Hypot(h[i][0]-h[i-1][0], h[i][1]-h[i-1][1])
		}
		return sum
	}
	return half(func(i int) [2]float64 { return points[i] }) +
		half(func(i int) [2]float64 { return points[len(points)-1-i] })
}

func TestLoopRefuses(t *testing.T) {
	for name, row := range map[string]struct {
		places []chain.Place
		want   string
	}{
		"one":         {[]chain.Place{{Teeth: 17}}, "number of sprockets"},
		"few teeth":   {[]chain.Place{{Teeth: 17}, {X: 100, Teeth: 2}}, "sprocket 2 of the loop"},
		"overlap":     {[]chain.Place{{Teeth: 17}, {X: 30, Teeth: 17}}, "sprockets 1 and 2"},
		"same place":  {[]chain.Place{{Teeth: 17}, {Teeth: 17}}, "sprockets 1 and 2"},
		"not a place": {[]chain.Place{{Teeth: 17}, {X: math.NaN(), Teeth: 17}}, "centre must lie within"},
		"all outside": {[]chain.Place{{Teeth: 17, Outside: true}, {X: 100, Teeth: 17, Outside: true}}, "every sprocket"},
		"passed by": {[]chain.Place{{Teeth: 30}, {X: 200, Teeth: 30}, {X: 200, Y: 200, Teeth: 30},
			{X: 120, Y: 100, Teeth: 9}}, "sprocket 4 of the loop"},
		"bow tie": {[]chain.Place{{Teeth: 9}, {X: 200, Y: 200, Teeth: 9}, {X: 200, Teeth: 9},
			{Y: 200, Teeth: 9}}, "does not lie on it"},
	} {
		_, err := chain.Loop(6.35, row.places)
		assert.ErrorContains(t, err, row.want, name)
	}
	_, err := chain.Loop(math.Inf(1), []chain.Place{{Teeth: 17}, {X: 100, Teeth: 17}})
	assert.ErrorContains(t, err, "chain pitch")
}
