package foretell

import (
	"math"
	"strings"

	"wheelwork/rules/sky"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// angle is a sum of mean longitudes, each so many times.
type angle struct{ sun, moon, node, perigee int8 }

func (a angle) plus(b angle, sign int8) angle {
	return angle{a.sun + sign*b.sun, a.moon + sign*b.moon, a.node + sign*b.node, a.perigee + sign*b.perigee}
}

// The angles that eclipses hang on.
var (
	moonFromSun     = angle{sun: -1, moon: 1}
	sunFromNode     = angle{sun: 1, node: -1}
	moonFromPerigee = angle{moon: 1, perigee: -1}
)

// cycle is what a hand can show of Sun, Moon, node and perigee.
type cycle struct {
	angle angle
	turns int64 // of the hand while the angle goes round once
	names []string
	// window is how far a quoted period may be off and still be meant for it.
	window float64
}

// A quoted period is taken for the nearest of these: months and years lie 4000
// ppm apart or more, and the slow rounds far from all else. A hand that is
// named after the node or bears a marker is meant for the node's round even
// where it is the 19 years of old trains.
const (
	near = 0.0025
	far  = 0.01
	node = 0.03
)

// cycles lists them. A period is quoted against the equinox or the stars: as
// the hands of one model are read against one another, both are the same here.
var cycles = [...]cycle{
	{moonFromSun, 1, []string{"synodic month"}, near},
	{moonFromSun, 2, []string{"spring-neap cycle"}, near},
	{angle{moon: 1}, 1, []string{"tropical month", "sidereal month"}, near},
	{moonFromPerigee, 1, []string{"anomalistic month"}, near},
	{angle{moon: 1, node: -1}, 1, []string{"draconic month"}, near},
	{angle{sun: 1}, 1, []string{"tropical year", "sidereal year", "Gregorian year", "Julian year"}, near},
	{sunFromNode, 1, []string{"eclipse year"}, near},
	{sunFromNode, 2, []string{"half eclipse year"}, near},
	{angle{sun: 1, perigee: -1}, 1, []string{"full-moon cycle"}, near},
	{angle{node: 1}, 1, []string{"lunar node", "lunar node sidereal"}, far},
	{angle{perigee: 1}, 1, []string{"lunar apse", "lunar apse sidereal"}, far},
	{angle{perigee: 1, node: -1}, 1, []string{"apse to node"}, far},
}

// entry is the catalogue's entry of that name, which is one of those above.
func entry(name string) sky.Period {
	p, _ := sky.Lookup(name)
	return p
}

// shown is the cycle that a hand shows and the catalogue's name of it; nil
// where it shows none of these.
func shown(r train.Reading, marked bool) (*cycle, string) {
	name := r.Hand.Shows.Entry + r.Hand.Period.Entry
	if name == "" && !r.HasWanted {
		return nil, ""
	}
	var best *cycle
	least := math.Inf(1)
	for i := range cycles {
		c := &cycles[i]
		for _, n := range c.names {
			if n == name {
				return c, n
			}
		}
		if name == "" {
			days, _ := entry(c.names[0]).Days.Float64()
			window := c.window
			if c.angle == (angle{node: 1}) && (marked || strings.Contains(strings.ToLower(r.Hand.Name.Text), "node")) {
				window = node
			}
			if off := math.Abs(r.Wanted.Float()/days - 1); off <= window && off < least {
				best, least = c, off
			}
		}
	}
	if best == nil {
		return nil, ""
	}
	return best, best.names[0]
}

// skyRate is how fast the angle of a cycle goes round in the sky, in turns a
// day, against the equinox or against the stars.
func (c *cycle) skyRate(stars bool) exact.Rat {
	name := c.names[0]
	if stars && len(c.names) > 1 {
		name = c.names[1]
	}
	return exact.FromBig(entry(name).Rate()).Quo(exact.Int(c.turns))
}

// Shown is the catalogue's name of what a hand shows of Sun, Moon, node and
// perigee, by its name or by a period quoted near it; "" where it shows none of
// these.
func Shown(r train.Reading) string {
	_, name := shown(r, false)
	return name
}
