package sky

import "math"

// Event is what a marker foretells.
type Event string

// The events by name. A central solar eclipse here is one that is total,
// annular or hybrid; an umbral lunar one is partial or total; the other two
// hold every eclipse, partial and penumbral ones included.
const (
	SolarEclipse        Event = "solar eclipse"
	CentralSolarEclipse Event = "central solar eclipse"
	LunarEclipse        Event = "lunar eclipse"
	UmbralLunarEclipse  Event = "umbral lunar eclipse"
	TotalLunarEclipse   Event = "total lunar eclipse"
)

// Events returns all events in a fixed order.
func Events() []Event {
	return []Event{SolarEclipse, CentralSolarEclipse, LunarEclipse, UmbralLunarEclipse, TotalLunarEclipse}
}

// Lunar tells whether the event falls at full moon.
func (ev Event) Lunar() bool {
	return ev == LunarEclipse || ev == UmbralLunarEclipse || ev == TotalLunarEclipse
}

// Is tells whether the eclipse is such an event.
func (e *Eclipse) Is(ev Event) bool {
	switch ev {
	case SolarEclipse:
		return e.Solar
	case CentralSolarEclipse:
		return e.Solar && e.Kind != Partial
	case LunarEclipse:
		return !e.Solar
	case UmbralLunarEclipse:
		return !e.Solar && e.Kind != Penumbral
	case TotalLunarEclipse:
		return !e.Solar && e.Kind == Total
	}
	return false
}

// Limit is the ecliptic limit of an event: how far the Sun (anti-Sun for the
// Moon's eclipses) may stand from the node at syzygy, in degrees.
type Limit struct {
	Certain    float64 // nearer than this the event always comes
	Impossible float64 // farther than this it never comes
}

// WithError returns the limit that a pointer can promise whose distance from
// the node is wrong by up to so many degrees. Certain falls to 0 where nothing
// is certain any more.
func (l Limit) WithError(degrees float64) Limit {
	d := math.Abs(degrees)
	return Limit{math.Max(0, l.Certain-d), l.Impossible + d}
}

// meanLimits: distances of mean Sun from mean node at the mean syzygy. The
// first of each pair is over all eclipses of the canons of Espenak and Meeus
// (11898 solar, 12064 lunar, -1999 to 3000), the second over those of 1950 to
// 2100; both computed from the canons' eclipses and the mean arguments.
var meanLimits = [...]struct {
	event       Event
	canon, near Limit
}{
	{SolarEclipse, Limit{13.99, 20.37}, Limit{15.78, 20.06}},
	{CentralSolarEclipse, Limit{7.84, 14.10}, Limit{8.73, 13.85}},
	{LunarEclipse, Limit{14.15, 20.61}, Limit{15.76, 20.60}},
	{UmbralLunarEclipse, Limit{7.99, 14.31}, Limit{8.54, 13.99}},
	{TotalLunarEclipse, Limit{1.94, 8.05}, Limit{2.58, 7.08}},
}

// MeanLimit returns the limit for a model driven by mean motions, whose
// pointers show mean Sun and mean node: over five thousand years. An unknown
// event has the zero limit.
func MeanLimit(ev Event) Limit {
	for _, l := range meanLimits {
		if l.event == ev {
			return l.canon
		}
	}
	return Limit{}
}

// MeanLimitNear is MeanLimit for the years 1950 to 2100 alone.
func MeanLimitNear(ev Event) Limit {
	for _, l := range meanLimits {
		if l.event == ev {
			return l.near
		}
	}
	return Limit{}
}

// BestArc is the half-angle in degrees of the arc that calls the event at the
// mean syzygies of 1950 to 2100 with the fewest wrong calls, missed and false
// together: 9 of 337 for the Sun, 33 of 222 for its central eclipses, 10 of 344
// for the Moon, 33 of 215 in her umbra, 16 of 129 for the total ones. An
// unknown event has 0. Computed from the canon's eclipses (Espenak and Meeus,
// NASA/TP-2006-214141 and NASA/TP-2009-214172).
func BestArc(ev Event) float64 {
	switch ev {
	case SolarEclipse, LunarEclipse:
		return 16.2
	case CentralSolarEclipse:
		return 9.5
	case UmbralLunarEclipse:
		return 9.1
	case TotalLunarEclipse:
		return 6.5
	}
	return 0
}

// Frequency is how many of the event come in a lunation, in the mean of five
// thousand years: 11898, 7698, 12064, 7686 and 3479 in the 61843 lunations of
// the canons of Espenak and Meeus (NASA/TP-2006-214141, NASA/TP-2009-214172;
// the kinds from memory). Syzygies fall evenly on all distances from the node,
// so that 90 degrees times the frequency is the half-angle that holds as many
// of them as there are events. An unknown event has 0.
func Frequency(ev Event) float64 {
	events := map[Event]float64{
		SolarEclipse: 11898, CentralSolarEclipse: 7698,
		LunarEclipse: 12064, UmbralLunarEclipse: 7686, TotalLunarEclipse: 3479,
	}
	return events[ev] * SynodicMonthDays / (EndDay - FirstDay)
}
