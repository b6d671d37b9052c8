package chain

import (
	"errors"
	"fmt"
	"math"
)

// Place is a sprocket of a loop.
type Place struct {
	X, Y    float64 // its centre, mm
	Teeth   int
	Outside bool // the chain runs over it with its back: it turns the other way round
}

// Course is how a tight chain lies over the sprockets of a loop, in their order.
type Course struct {
	Length float64   // of the whole loop, pitches
	Wrap   []float64 // on each sprocket, degrees
	Span   []float64 // from each sprocket to the next, mm
}

// mostPlaces bounds the sprockets of one loop.
const mostPlaces = 10000

// Loop is the exact course of a chain of the given pitch over sprockets in the
// order in which it meets them. The loop runs round the polygon of their centres
// with the sprockets inside it, save those marked Outside; two sprockets of which
// one is Outside are a crossed chain. Spans are tangents to the pitch circles,
// wraps are counted in teeth, as in [Length]. It fails where two neighbours
// overlap or where the chain in that order does not reach a sprocket. Source:
// computed from the formula.
func Loop(pitch float64, places []Place) (Course, error) {
	if err := checkLoop(pitch, places); err != nil {
		return Course{}, err
	}
	n := len(places)
	round := sense(places)
	radius := signedRadii(pitch, places, round)
	course := Course{Wrap: make([]float64, n), Span: make([]float64, n)}
	heading := make([]float64, n) // of the span that leaves each sprocket
	for i, p := range places {
		j := (i + 1) % n
		q := places[j]
		gap := math.Hypot(q.X-p.X, q.Y-p.Y)
		if touch := math.Abs(radius[i]) + math.Abs(radius[j]); !(gap > touch) {
			return Course{}, fmt.Errorf("sprockets %d and %d of the loop: %w", i+1, j+1,
				&RangeError{"centre distance", gap, fmt.Sprintf("above %.4f mm, where the pitch circles touch", touch)})
		}
		lean := radius[i] - radius[j]
		heading[i] = math.Atan2(q.Y-p.Y, q.X-p.X) + math.Asin(lean/gap)
		course.Span[i] = tangent(gap, lean)
		course.Length += course.Span[i] / pitch
	}
	turned := 0.0
	for i, p := range places {
		way := math.Copysign(1, radius[i])
		turn := fullTurn(way * (heading[i] - heading[(i+n-1)%n]))
		turned += way * round * turn
		course.Wrap[i] = degrees(turn)
		course.Length += turn / (2 * math.Pi) * float64(p.Teeth)
	}
	if err := reaches(places, course.Wrap, turned); err != nil {
		return Course{}, err
	}
	return course, nil
}

// signedRadii are the pitch radii in mm, positive where the chain goes round the
// sprocket counter-clockwise.
func signedRadii(pitch float64, places []Place, round float64) []float64 {
	radius := make([]float64, len(places))
	for i, p := range places {
		radius[i] = round * pitch * pitchRadius(p.Teeth)
		if p.Outside {
			radius[i] = -radius[i]
		}
	}
	return radius
}

// fullTurn brings an angle into [0, 2 pi); a hair below a whole turn is none.
func fullTurn(a float64) float64 {
	const hair = 1e-9
	a = math.Mod(a, 2*math.Pi)
	if a < 0 {
		a += 2 * math.Pi
	}
	if a > 2*math.Pi-hair {
		return 0
	}
	return a
}

// sense is +1 when the polygon of centres is run through counter-clockwise, -1
// clockwise. Sprockets in one line make no polygon: either way round is the same.
func sense(places []Place) float64 {
	area := 0.0
	o := places[0]
	for i, p := range places {
		q := places[(i+1)%len(places)]
		area += (p.X-o.X)*(q.Y-o.Y) - (q.X-o.X)*(p.Y-o.Y)
	}
	if area < 0 {
		return -1
	}
	return 1
}

// reaches checks that the headings add up to one turn, or to none where the
// chain crosses itself: a sprocket that a tight chain would pass by comes out
// with nearly a whole turn of wrap too much.
func reaches(places []Place, wrap []float64, turned float64) error {
	want := 2 * math.Pi
	if crossed(places) {
		want = 0
	}
	if math.Abs(turned-want) < 1e-6 {
		return nil
	}
	worst := 0
	for i, w := range wrap {
		if w > wrap[worst] {
			worst = i
		}
	}
	return fmt.Errorf("sprocket %d of the loop: a tight chain in this order does not lie on it", worst+1)
}

// crossed tells whether the loop is two sprockets with the chain crossed.
func crossed(places []Place) bool {
	return len(places) == 2 && places[0].Outside != places[1].Outside
}

func checkLoop(pitch float64, places []Place) error {
	if err := checkPitch(pitch); err != nil {
		return err
	}
	if n := len(places); n < 2 || n > mostPlaces {
		return &RangeError{"number of sprockets in a loop", float64(n), fmt.Sprintf("from 2 to %d", mostPlaces)}
	}
	inside := 0
	for i, p := range places {
		if err := checkTeeth(p.Teeth); err != nil {
			return fmt.Errorf("sprocket %d of the loop: %w", i+1, err)
		}
		if !(math.Abs(p.X) <= mostLength && math.Abs(p.Y) <= mostLength) {
			return fmt.Errorf("sprocket %d of the loop: its centre must lie within %g mm", i+1, mostLength)
		}
		if !p.Outside {
			inside++
		}
	}
	if inside == 0 {
		return errors.New("every sprocket is outside the loop")
	}
	return nil
}
