package drift

import (
	"math"
	"strconv"
)

// scale is the height of a panel in degrees, to either side of nothing: so that
// the error fills a good part of it, and the tolerance as well where it is not
// far wider.
func (l *Line) scale() float64 {
	end := math.Abs(l.End)
	return math.Max(1.15*end, math.Min(1.1*l.Band, 4*end))
}

// unit is what a height in degrees is told in, and how many degrees that is.
func unit(high float64) (name string, degrees float64) {
	if math.Abs(high) > 3600 {
		return "turns", 360
	}
	return "deg", 1
}

// ticks are round figures from low to high, about so many.
func ticks(low, high float64, about int) []float64 {
	step := round((high - low) / float64(about))
	var list []float64
	for n := math.Ceil(low/step - 1e-9); n*step <= high+1e-9*step; n++ {
		list = append(list, n*step+0) // no -0
	}
	return list
}

// round is the least of 1, 2 and 5 with zeros that is not less than x.
func round(x float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(x)))
	for _, k := range [...]float64{1, 2, 5} {
		if x <= k*ten*(1+1e-9) {
			return k * ten
		}
	}
	return 10 * ten
}

// label writes a tick.
func label(x float64) string {
	if x == 0 {
		return "0"
	}
	return strconv.FormatFloat(x, 'g', 6, 64)
}
