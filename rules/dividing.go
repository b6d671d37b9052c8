package rules

import (
	"fmt"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
)

// Head is a dividing head as the spec gives it, its circles as ranges.
type Head struct {
	Ratio   int
	circles []spec.Range
}

// HeadOf is the design's dividing head; ok is false where it gives none, or one
// whose ratio is no whole number.
func HeadOf(d *spec.Design) (Head, bool) {
	if d.Dividing == nil {
		return Head{}, false
	}
	ratio, whole := d.Dividing.Ratio.Exact.Int64()
	return Head{int(ratio), d.Dividing.Circles.List}, whole && ratio > 0 && ratio <= spec.MostTeeth
}

// Index is how the head divides into so many parts, on the smallest circle that
// serves; ok is false where it cannot.
func (h Head) Index(parts int64) (tooth.Indexing, bool) {
	head := tooth.DividingHead{Ratio: h.Ratio}
	multiple := parts / gcd(parts, int64(h.Ratio))
	if multiple > 1 {
		circle := int64(0)
		for _, r := range h.circles {
			// The least multiple within the range.
			if c := (r.From + multiple - 1) / multiple * multiple; c <= r.To && (circle == 0 || c < circle) {
				circle = c
			}
		}
		if circle == 0 {
			return tooth.Indexing{}, false
		}
		head.Circles = []int{int(circle)}
	}
	ways, err := head.Indexings(int(parts))
	if err != nil || len(ways) == 0 {
		return tooth.Indexing{}, false
	}
	return ways[0], true
}

// Indexed says how the crank is turned from one tooth to the next.
func Indexed(x tooth.Indexing) string {
	switch {
	case x.Holes == 0:
		return plural(x.Turns, "turn", "turns")
	case x.Turns == 0:
		return fmt.Sprintf("%s in the %d circle", plural(x.Holes, "hole", "holes"), x.Circle)
	}
	return fmt.Sprintf("%s and %s in the %d circle", plural(x.Turns, "turn", "turns"), plural(x.Holes, "hole", "holes"), x.Circle)
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
