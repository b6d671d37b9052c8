package sky

import "math"

// KindByAnomaly is the kind of a central solar eclipse that a model can tell
// from the Moon's mean anomaly alone, in degrees from perigee: total within 75
// degrees, annular beyond. Of the total ones of 1950-2100 it misses four in a
// hundred, of the annular ones none; hybrids lie between 63 and 86 degrees.
// Computed from the eclipses of the canon (Espenak and Meeus,
// NASA/TP-2006-214141).
func KindByAnomaly(anomaly float64) Kind {
	if math.Abs(turn180(anomaly)) < 75 {
		return Total
	}
	return Annular
}

// Tally counts how a marker with one threshold fares over a span of time.
type Tally struct {
	Lunations int // syzygies looked at
	Events    int // what the sky showed
	False     int // foretold and did not come
	Missed    int // came and was not foretold
}

// OneThreshold foretells an event at every mean syzygy at which the distance
// of mean Sun from mean node is less than threshold, and counts what comes of
// it from one Julian day of Terrestrial Time up to another. The pointers'
// distance is wrong by offset. All angles in degrees. Days outside the span
// are refused.
func OneThreshold(ev Event, fromTT, toTT, threshold, offset float64) (Tally, error) {
	list, err := Syzygies(ev.Lunar(), fromTT, toTT)
	if err != nil {
		return Tally{}, err
	}
	t := Tally{Lunations: len(list)}
	for _, s := range list {
		a := lunationAt(s.K)
		e, ok := a.eclipse()
		came := ok && e.Is(ev)
		told := math.Abs(turn180(2*(s.NodeDistance+offset))/2) < threshold
		switch {
		case came && !told:
			t.Missed++
		case told && !came:
			t.False++
		}
		if came {
			t.Events++
		}
	}
	return t, nil
}
