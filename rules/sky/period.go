package sky

import (
	"math/big"
	"slices"
	"strings"
	"sync"
)

// Period is one catalogue entry: a cycle of the sky that a hand may show.
type Period struct {
	Name       string   // the name used in specs and messages
	Also       []string // other names under which it is found
	Days       *big.Rat // length in days of 86400 s, exactly the decimal printed
	Retrograde bool     // the motion is clockwise seen from the north
	Source     string   // where the figure comes from
	About      string   // its meaning in one line
	Relative   string   // what the motion is counted against: "tropical", "sidereal", "synodic", ... or ""
}

// entry is a catalogue line as written in the tables. It holds constants only,
// so that the tables cost nothing at start-up; numbers are read when asked for.
type entry struct {
	name     string
	also     []string
	days     string // decimal days, or hours when it ends in " h", or "1/decimal"
	retro    bool
	relative string
	source   string
	about    string
}

// The sources of the catalogue, repeated in each entry.
const (
	srcIERS    = "fundamental arguments of IERS Conventions 2003/2010 (Simon et al. 1994) as coded in ERFA 2.0.0"
	srcFormula = "computed from the formula, from the mean motions of Simon et al. 1994"
	srcDefined = "by definition"
	srcERA     = "Earth rotation angle of IERS Conventions 2003/2010 as coded in ERFA 2.0.0"
	srcPlanets = "mean longitudes of the planets in IERS Conventions 2003/2010 as coded in ERFA 2.0.0"
	srcPlanetC = "computed from the formula, from the planets' mean longitudes in ERFA 2.0.0"
	srcIAU     = "IAU rotation rates as read in astronomy-engine 2.1.19"
	srcMeeus   = "Meeus, Astronomical Algorithms, 2nd ed., mean motions of the satellites"
	srcMeeusC  = "computed from the formula, from Meeus's mean motions of the satellites"
	srcMemory  = "from memory"
)

// tables are the groups of the catalogue, each in a file of its own.
func tables() [][]entry {
	return [][]entry{earthAndMoon, nodeAndApse, cycles, planets, satellites}
}

// catalogue is the sorted list of entries and the index of all their names.
var catalogue = sync.OnceValue(func() (c struct {
	list  []*entry
	index map[string]*entry
}) {
	c.index = make(map[string]*entry, 320)
	for _, table := range tables() {
		for i := range table {
			e := &table[i]
			c.list = append(c.list, e)
			c.index[e.name] = e
			for _, a := range e.also {
				c.index[a] = e
			}
		}
	}
	slices.SortFunc(c.list, func(a, b *entry) int { return strings.Compare(a.name, b.name) })
	return c
})

var allPeriods = sync.OnceValue(func() []Period {
	list := catalogue().list
	out := make([]Period, len(list))
	for i, e := range list {
		out[i] = e.period()
	}
	return out
})

// Periods returns the whole catalogue sorted by name. The slice and what it
// points to are shared: callers must not modify them.
func Periods() []Period { return allPeriods() }

// Lookup finds an entry by its name or one of its other names, letter for
// letter. The returned Days is the caller's own.
func Lookup(name string) (Period, bool) {
	e, ok := catalogue().index[name]
	if !ok {
		return Period{}, false
	}
	return e.period(), true
}

func (e *entry) period() Period {
	return Period{
		Name: e.name, Also: e.also, Days: exactDays(e.days), Retrograde: e.retro,
		Source: e.source, About: e.about, Relative: e.relative,
	}
}

// exactDays reads the decimal of a table. The tables are constants of this
// package and every one is read by a test, so a bad one is a programming
// error.
func exactDays(s string) *big.Rat {
	text, hours := strings.CutSuffix(s, " h")
	text, inverse := strings.CutPrefix(text, "1/")
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic("sky: bad number in the catalogue: " + s)
	}
	if inverse {
		r.Inv(r)
	}
	if hours {
		r.Quo(r, big.NewRat(24, 1))
	}
	return r
}

// mustDays is the exact length of a period known to be in the catalogue.
func mustDays(name string) *big.Rat {
	p, ok := Lookup(name)
	if !ok {
		panic("sky: no period " + name)
	}
	return p.Days
}

// TropicalYear returns the tropical year in days, exact as printed
// (365.242190424 d; IERS/Simon et al. 1994).
func TropicalYear() *big.Rat { return mustDays("tropical year") }

// SynodicMonth returns the synodic month in days, exact as printed
// (29.530588858 d; IERS/Simon et al. 1994).
func SynodicMonth() *big.Rat { return mustDays("synodic month") }
