package cutting

import (
	"math"
	"strconv"
)

func itoa(n int64) string { return strconv.FormatInt(n, 10) }

// figure is a module for people, exact to what cutters are named by.
func figure(x float64) string {
	return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64)
}

func join(a, b string) string {
	switch {
	case a == "":
		return b
	case b == "":
		return a
	}
	return a + "; " + b
}

// Cautions are the workshop's, common practice. The list of parts says nothing
// of whether cutting or running them is safe.
var Cautions = []string{
	"Wear eye protection and no gloves, loose sleeves or rings at lathe, mill and dividing head; tie back hair; clear brass swarf with a brush, never by hand.",
	"Clamp each blank before the cutter turns, check the indexing on scrap for one whole turn, and stop the machine before measuring.",
	"Break sharp edges of teeth and rims; wheels of thin sheet cut the hand.",
	"Chains, sprockets and arms pinch: guard them, and cut the power before reaching in.",
	"Mains adapters and lamps belong in closed, approved housings, installed by a licensed person where local rules say so; a lamp that stands for the Sun gets hot.",
	"Keep small parts, and the model while its parts lie open, from small children.",
	"These are the usual cautions and not all there are: local rules and licensed practice come first, and this list certifies no safety.",
}
