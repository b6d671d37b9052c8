package sky

import "math"

// Syzygy is a mean new or full moon: what a model driven by mean motions shows
// when its Sun and Moon pointers meet or stand opposite.
type Syzygy struct {
	K            float64 // lunations since the new moon of 2000-01-06; whole at new moon, half at full moon
	MeanTT       float64 // mean new or full moon, Julian day TT
	NodeDistance float64 // mean Sun (anti-Sun at full moon) from the nearest mean node, degrees, -90 to 90, positive past the node
	Ascending    bool    // that node is the ascending one
	Anomaly      float64 // mean anomaly of the Moon, degrees from 0 to 360
}

// Full tells a full moon from a new moon.
func (s Syzygy) Full() bool { return s.K != math.Floor(s.K) }

// SyzygyAt returns the mean syzygy number k, rounded to a half (Meeus,
// Astronomical Algorithms, chapter 49). Numbers outside the span are refused.
func SyzygyAt(k float64) (Syzygy, error) {
	a := lunationAt(math.Round(k*2) / 2)
	return a.syzygy(), checkSpan(a.mean)
}

func (a *lunationArgs) syzygy() Syzygy {
	f := turn360(a.f)
	d := turn180(2*f) / 2
	return Syzygy{
		K: a.k, MeanTT: a.mean, NodeDistance: d,
		Ascending: math.Cos(f*degree) > 0,
		Anomaly:   turn360(a.mm),
	}
}

// firstLunation returns the half-number of the first syzygy whose mean lies
// after a Julian day, less one lunation of margin.
func firstLunation(tt float64) float64 {
	return math.Floor((tt-2451550.1)/SynodicMonthDays) - 1.5
}

// Syzygies returns the mean new moons (full false) or full moons (full true)
// from one Julian day of Terrestrial Time up to another, the latter left out.
// Days outside the span are refused.
func Syzygies(full bool, fromTT, toTT float64) ([]Syzygy, error) {
	if err := checkSpan(fromTT, toTT); err != nil {
		return nil, err
	}
	k := firstLunation(fromTT)
	if !full {
		k += 0.5
	}
	var list []Syzygy
	for ; ; k++ {
		a := lunationAt(k)
		if a.mean >= toTT {
			return list, nil
		}
		if a.mean >= fromTT {
			list = append(list, a.syzygy())
		}
	}
}
