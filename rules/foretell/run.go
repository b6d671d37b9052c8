package foretell

import (
	"math"
	"time"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
)

// Run is a model that was set right on a day.
type Run struct {
	*Model
	SetUT float64 // Julian day of Universal Time
	// NodeOff is by how many degrees the Sun stands too far past the node,
	// where the node was not set quite right.
	NodeOff float64

	setTT float64
	sky   sky.MeanPlaces // at that moment
}

// DayOf is the Julian day of Universal Time of a date in a design.
func DayOf(d spec.Date) float64 {
	const unix = 2440587.5 // Julian day of 1970-01-01, 0 h
	midnight := time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC)
	return float64(midnight.Unix())/86400 + unix + d.DayFraction
}

// SetOn sets the model right on a Julian day of Universal Time: its hands to
// the mean longitudes of that moment. Days outside the years -1999 to 3000 are
// refused with a *sky.SpanError.
func (m *Model) SetOn(ut float64) (*Run, error) {
	tt, err := sky.ToTT(ut)
	if err != nil {
		return nil, err
	}
	places, err := sky.MeanAt(tt)
	return &Run{Model: m, SetUT: ut, setTT: tt, sky: places}, err
}

// Call is a new or full moon of the model at which a marker foretells.
type Call struct {
	TT, UT  float64 // when the model shows it, Julian days
	Node    float64 // degrees the Sun (at full moon the point opposite) is past the nearest node, as shown
	Anomaly float64 // degrees of the Moon from her perigee, as shown; NaN where no hands show it
}

// Kind is what the model tells of an eclipse of the Sun: sky.Total or
// sky.Annular, or sky.None where it has no hands for it.
func (c *Call) Kind() sky.Kind {
	if math.IsNaN(c.Anomaly) {
		return sky.None
	}
	return sky.KindByAnomaly(c.Anomaly)
}

// calls lists the new moons, or full moons, at which one of the markers calls,
// from one day of Terrestrial Time up to another.
func (r *Run) calls(markers []*Marker, full bool, made Made, fromTT, toTT float64) []Call {
	phase := r.Phase.Rate(made)
	month := phase.Inv().Float()
	// turns of the phase since the setting, whole at new moon
	past := r.sky.Elongation / 360
	if full {
		past -= 0.5
	}
	// degrees that each marker's Sun moves against the node from one to the next
	step := make([]float64, len(markers))
	for i, m := range markers {
		step[i] = 360 * m.Node.Rate(made).Quo(phase).Float()
	}
	anomaly := math.NaN()
	if r.Anomaly != nil {
		anomaly = 360 * r.Anomaly.Rate(made).Quo(phase).Float()
	}
	var list []Call
	for n := math.Ceil((fromTT-r.setTT)/month + past); ; n++ {
		tt := r.setTT + (n-past)*month
		if tt >= toTT {
			return list
		}
		for i, m := range markers {
			node := fromNode(r.sky.Sun - r.sky.Node + r.NodeOff + (n-past)*step[i])
			if math.Abs(node) < m.Arc {
				ut, err := sky.ToUT(tt)
				if err != nil {
					return list // past the end of the span
				}
				list = append(list, Call{tt, ut, node, reduced(r.sky.MoonAnomaly + (n-past)*anomaly)})
				break
			}
		}
	}
}

// fromNode is the way to the nearest of the two nodes, -90 to 90 degrees.
func fromNode(x float64) float64 { return x - 180*math.Floor(x/180+0.5) }

// reduced is an angle from 0 to 360 degrees.
func reduced(x float64) float64 {
	if x = math.Mod(x, 360); x < 0 {
		x += 360
	}
	return x
}

// Drift is by how many degrees the Sun runs ahead against the node in a
// tropical year.
func (m *Marker) Drift() float64 {
	gain := m.Node.Rate(nil).Sub(m.Node.Rate(Exact))
	return gain.Mul(exact.Int(360)).Mul(exact.FromBig(sky.TropicalYear())).Float()
}
