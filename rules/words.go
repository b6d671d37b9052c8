package rules

import (
	"fmt"
	"math"
	"strconv"

	"wheelwork/spec/quantity"
)

// counted is "1 arbor", "2 arbors".
func counted(n int, noun string) string { return plural(n, noun, noun+"s") }

// plural is "1 mesh", "2 meshes".
func plural(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

// fig is a figure for people: six significant digits, no exponent where it
// can be read without.
func fig(x float64) string {
	if a := math.Abs(x); a != 0 && (a < 1e-4 || a >= 1e9) {
		return strconv.FormatFloat(x, 'g', 4, 64)
	}
	return figures(x, 6)
}

// figures is a figure to so many significant digits, without exponent and
// trailing zeros.
func figures(x float64, n int) string {
	s := strconv.FormatFloat(x, 'g', n, 64)
	if f, err := strconv.ParseFloat(s, 64); err == nil {
		s = strconv.FormatFloat(f, 'f', -1, 64)
	}
	return s
}

// mm is a length for people, to a micrometre.
func mm(x float64) string {
	return strconv.FormatFloat(math.Round(x*1000)/1000, 'f', -1, 64) + " mm"
}

// ppm is a share for people.
func ppm(x float64) string {
	if math.Abs(x) >= 100 {
		return fmt.Sprintf("%+.0f ppm", x)
	}
	return fmt.Sprintf("%+.3g ppm", x)
}

// days is a time for people, in days or the unit that suits it.
func days(x float64) string {
	switch a := math.Abs(x); {
	case a == 0:
		return "0 d"
	case a < 1.0/24:
		return fig(x*1440) + " min"
	case a < 1:
		return fig(x*24) + " h"
	case a >= 3000:
		return fig(x/quantity.TropicalYear.Float()) + " yr"
	}
	return figures(x, 9) + " d"
}

// watch is a time by the watch for people, from a figure in days.
func watch(x float64) string {
	if s := x * 86400; math.Abs(s) < 120 {
		return figures(s, 4) + " s"
	}
	switch a := math.Abs(x); {
	case a < 2.0/24:
		return figures(x*1440, 4) + " min"
	case a < 2:
		return figures(x*24, 4) + " h"
	}
	return figures(x, 4) + " d"
}

// years is a span for people.
func years(x float64) string {
	if x < 366 {
		return days(x)
	}
	return fig(math.Round(x/quantity.TropicalYear.Float()*1000)/1000) + " yr"
}

// signed is a figure for people with its sign, to four digits.
func signed(x float64) string {
	if x > 0 {
		return "+" + figures(x, 4)
	}
	return figures(x, 4)
}
