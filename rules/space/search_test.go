package space_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/space"
)

var free = space.Judge{
	Apart:   func(a, b int) bool { return true },
	Turning: func([]int) bool { return true },
}

// oddly lets some bodies turn and others not.
func oddly(plans []int) bool {
	sum := 0
	for _, p := range plans {
		sum += p
	}
	return sum%2 == 0
}

type two [2]int

func pairOf(m space.Meeting) two { return two{min(m.A, m.B), max(m.A, m.B)} }

// The tree finds what a comparison of all pairs finds, save that of a solid
// that meets many only some are told.
func TestMeetingsAgreeWithAllPairs(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	total, left := 0, 0
	for range 400 {
		l := random(rng, rng.IntN(6), 5+rng.IntN(60), 20+rng.Float64()*200)
		judge := free
		if rng.IntN(4) == 0 {
			judge.Turning = oddly
		}
		room := space.NewRoom(l.solids, 0.2)
		want := map[two]space.Meeting{}
		for _, m := range room.AllPairs(judge) {
			want[pairOf(m)] = m
		}
		total += len(want)
		told := map[int]int{}
		for _, m := range room.Meetings(judge) {
			w, ok := want[pairOf(m)]
			require.True(t, ok, "%v", m)
			assert.Equal(t, []any{w.Plan, w.Turning, w.Inside}, []any{m.Plan, m.Turning, m.Inside})
			assert.InDelta(t, w.Gap, m.Gap, 1e-9)
			assert.InDelta(t, w.Least, m.Least, 1e-9)
			delete(want, pairOf(m))
			told[m.A]++
			told[m.B]++
		}
		for p := range want {
			assert.True(t, told[p[0]] >= space.Few || told[p[1]] >= space.Few, "%v meet and are not told", p)
			left++
		}
	}
	assert.Greater(t, total, 2000)
	assert.Less(t, left, total/2)
}

// Turned to many positions, solids overlap where a meeting says so and nowhere
// else.
func TestMeetingsAgreeWithTurning(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	deepFound, deepWanted := 0, 0
	for range 60 {
		l := random(rng, 1+rng.IntN(3), 12, 30)
		room := space.NewRoom(l.solids, 0)
		met := map[two]space.Meeting{}
		for _, m := range room.AllPairs(free) {
			met[pairOf(m)] = m
		}
		deepest := map[two]float64{}
		for range 1500 {
			angles := make([]float64, len(l.parent))
			for b := range angles {
				angles[b] = rng.Float64() * 2 * math.Pi
			}
			list := l.turn(angles)
			for i := range list {
				for j := range i {
					if !level(&l.solids[i], &l.solids[j]) {
						continue
					}
					deep := l.deep(list, i, j)
					if deep > 0.01 {
						require.Contains(t, met, two{j, i}, "overlap by %v", deep)
						assert.LessOrEqual(t, deep, -met[two{j, i}].Gap+0.01)
					}
					deepest[two{j, i}] = max(deepest[two{j, i}], deep)
				}
			}
		}
		for p, m := range met {
			if m.Gap < -2 {
				deepWanted++
				if deepest[p] > 0 {
					deepFound++
				}
			}
		}
	}
	assert.Greater(t, deepWanted, 150)
	assert.GreaterOrEqual(t, float64(deepFound), 0.97*float64(deepWanted), "of %d", deepWanted)
}

// Where bodies keep their way to each other but it is not known, only what
// overlaps in every way meets.
func TestMeetingsOfBodiesThatKeepTheirWay(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	judge := free
	judge.Turning = func([]int) bool { return false }
	met := 0
	for range 200 {
		l := random(rng, 1+rng.IntN(3), 14, 25)
		list := space.NewRoom(l.solids, 0).AllPairs(judge)
		met += len(list)
		for range 30 {
			angles := make([]float64, len(l.parent))
			for b := range angles {
				angles[b] = rng.Float64() * 2 * math.Pi
			}
			placed := l.turn(angles)
			for _, m := range list {
				assert.Greater(t, l.deep(placed, m.A, m.B), -0.01)
			}
		}
	}
	assert.Greater(t, met, 60)
}

func level(a, b *space.Solid) bool { return min(a.To, b.To) > max(a.From, b.From) }

// Everything in one place is told in part, and soon.
func TestMeetingsOfAHeap(t *testing.T) {
	var l layout
	l.parent, l.x, l.y = []int{-1}, []float64{0}, []float64{0}
	for range 5_000 {
		l.add(0, 1, 1, space.Solid{Radius: 5, To: 2})
	}
	list := space.NewRoom(l.solids, 0.2).Meetings(free)
	assert.LessOrEqual(t, len(list), space.Few*5_000)
	assert.GreaterOrEqual(t, len(list), 4_999)
	none := space.Judge{Apart: func(a, b int) bool { return false }, Turning: free.Turning}
	assert.Empty(t, space.NewRoom(l.solids, 0.2).Meetings(none))
}

// A room of nothing, and solids that are asked after from outside.
func TestMeets(t *testing.T) {
	post := space.Solid{Loci: []space.Locus{{}}, Radius: 2, To: 10}
	_, ok := space.NewRoom(nil, 0.2).Meets(&post, free)
	assert.False(t, ok)
	assert.Empty(t, space.NewRoom(nil, 0.2).Meetings(free))

	room := space.NewRoom([]space.Solid{post}, 0.2)
	for _, row := range []struct {
		x, from float64
		meets   bool
	}{{4, 0, true}, {6.9, 0, true}, {7.1, 0, true}, {7.3, 0, false}, {4, 10, false}, {4, 9.9, true}} {
		s := space.Solid{Loci: []space.Locus{{X: row.x}}, Radius: 5, From: row.from, To: row.from + 1}
		m, ok := room.Meets(&s, free)
		assert.Equal(t, row.meets, ok, "%v", row)
		if ok {
			assert.Equal(t, 0, m.B)
			assert.InDelta(t, row.x-7, m.Gap, 1e-9)
		}
	}
}
