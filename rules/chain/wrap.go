package chain

import (
	"fmt"
	"math"
)

// Wrap is the angle in degrees over which an open chain lies on each of two
// sprockets at the centre distance c in pitches: 180 - 2b on the smaller and
// 180 + 2b on the larger, sin b = (R2-R1)/c. Source: computed from the formula.
func Wrap(z1, z2 int, c float64) (wrap1, wrap2 float64, err error) {
	r1, r2, err := pair(z1, z2, c)
	if err != nil {
		return 0, 0, err
	}
	b := degrees(math.Asin((r2 - r1) / c))
	return 180 - 2*b, 180 + 2*b, nil
}

// CrossedWrap is the angle in degrees over which a crossed chain lies on both
// sprockets: 180 + 2b, sin b = (R1+R2)/c, c in pitches. Source: computed from
// the formula.
func CrossedWrap(z1, z2 int, c float64) (float64, error) {
	r1, r2, err := pair(z1, z2, c)
	if err != nil {
		return 0, err
	}
	return 180 + 2*degrees(math.Asin((r1+r2)/c)), nil
}

// CentreForWrap is the least centre distance in pitches at which an open chain
// lies over at least wrap degrees of the smaller sprocket: |R2-R1|/cos(wrap/2),
// never less than where the pitch circles touch. It fails unless wrap is above 0
// and below 180. Source: computed from the formula of [Wrap].
func CentreForWrap(z1, z2 int, wrap float64) (float64, error) {
	if err := checkTeeth(z1, z2); err != nil {
		return 0, err
	}
	if !(wrap > 0 && wrap < 180) {
		return 0, &RangeError{"angle of wrap", wrap, "above 0 and below 180 degrees"}
	}
	r1, r2 := pitchRadius(z1), pitchRadius(z2)
	return max(r1+r2, math.Abs(r2-r1)/math.Cos(radians(wrap/2))), nil
}

// Span is the free length in pitches of an open chain between two sprockets at
// the centre distance c in pitches: c cos b. Source: computed from the formula of
// [Length].
func Span(z1, z2 int, c float64) (float64, error) {
	r1, r2, err := pair(z1, z2, c)
	if err != nil {
		return 0, err
	}
	return tangent(c, r2-r1), nil
}

// CrossedSpan is [Span] for a crossed chain. Source: computed from the formula of
// [CrossedLength].
func CrossedSpan(z1, z2 int, c float64) (float64, error) {
	r1, r2, err := pair(z1, z2, c)
	if err != nil {
		return 0, err
	}
	return tangent(c, r1+r2), nil
}

// SagLength is by how much a sag at the middle of a span lengthens it, in the
// unit of the arguments: about 8 s^2/(3 S). It fails where the sag is more than a
// quarter of the span, where the formula no longer holds. Source: the flat
// parabola, computed from the formula.
func SagLength(span, sag float64) (float64, error) {
	if err := checkLength("span", span); err != nil {
		return 0, err
	}
	if !(sag >= 0 && sag <= span*flatSag) {
		return 0, &RangeError{"sag", sag, fmt.Sprintf("from 0 to %g, a quarter of the span", span*flatSag)}
	}
	return sag * (sag / span) * 8 / 3, nil
}

// flatSag is the greatest sag, as a part of the span, of a flat parabola.
const flatSag = 0.25

// Sag is the sag at the middle of a span when the chain is longer than the tight
// loop by extra and all of it hangs in that span: sqrt(3 S extra/8), in the unit
// of the arguments. It fails where the sag would be more than a quarter of the
// span. Source: the formula of [SagLength] turned round.
func Sag(span, extra float64) (float64, error) {
	if err := checkLength("span", span); err != nil {
		return 0, err
	}
	const most = flatSag * flatSag * 8 / 3
	if !(extra >= 0 && extra <= span*most) {
		return 0, &RangeError{"extra length", extra, fmt.Sprintf("from 0 to %g, a sag of a quarter of the span", span*most)}
	}
	return math.Sqrt(3*extra/8) * math.Sqrt(span), nil
}

// HuntingTurns tells after how many turns of a sprocket the same tooth meets the
// same link again, and the greatest common divisor of teeth and links; 1 wears
// all of them evenly. Source: links/gcd(teeth, links), computed from the formula.
func HuntingTurns(teeth, links int) (gcd, turns int, err error) {
	if err := checkTeeth(teeth); err != nil {
		return 0, 0, err
	}
	if links < 2 || links > mostLength {
		return 0, 0, &RangeError{"number of links", float64(links), fmt.Sprintf("from 2 to %d", int(mostLength))}
	}
	a, b := teeth, links
	for b != 0 {
		a, b = b, a%b
	}
	return a, links / a, nil
}
