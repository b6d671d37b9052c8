package sky

import "math"

// Approximation is an eclipse by Meeus's chapter 54 alone, as one can work it
// out by hand: to 0.01 in gamma and two minutes.
type Approximation struct {
	Solar     bool
	Kind      Kind    // None where there is no eclipse
	Central   bool    // solar: the axis of the shadow meets the Earth
	TT        float64 // greatest eclipse, Julian day
	Gamma     float64 // as in Eclipse
	U         float64 // radius of the umbra in the fundamental plane, equatorial radii of the Earth
	Magnitude float64 // of a partial solar eclipse; of a lunar one in the umbra, or in the penumbra where it is penumbral

	// Lunar only: half the durations of the phases, minutes.
	SemiPenumbral, SemiPartial, SemiTotal float64
}

// Approximate returns what chapter 54 of Meeus's Astronomical Algorithms (2nd
// ed.) gives for the syzygy number k, rounded to a half. Numbers outside the
// span are refused.
func Approximate(k float64) (Approximation, error) {
	a := lunationAt(math.Round(k*2) / 2)
	if err := checkSpan(a.mean); err != nil {
		return Approximation{}, err
	}
	x := Approximation{Solar: a.k == math.Floor(a.k)}
	g, ok := a.guess()
	if !ok {
		return x, nil
	}
	x.TT, x.Gamma, x.U = g.tt, g.gamma, g.u
	if x.Solar {
		x.Kind, x.Central = solarKind(g.gamma, g.u)
		if x.Kind == Partial {
			x.Magnitude = (1.5433 + g.u - math.Abs(g.gamma)) / (0.5461 + 2*g.u)
		}
	} else {
		x.lunar(a.mm)
	}
	return x, nil
}

func (x *Approximation) lunar(anomaly float64) {
	gamma := math.Abs(x.Gamma)
	penumbral := (1.5573 + x.U - gamma) / 0.5450
	x.Magnitude = (1.0128 - x.U - gamma) / 0.5450
	switch {
	case penumbral <= 0:
		x.Magnitude = 0
		return
	case x.Magnitude <= 0:
		x.Kind, x.Magnitude = Penumbral, penumbral
	case x.Magnitude < 1:
		x.Kind = Partial
	default:
		x.Kind = Total
	}
	n := 0.5458 + 0.0400*math.Cos(anomaly*degree)
	semi := func(radius float64) float64 {
		return 60 / n * math.Sqrt(math.Max(0, radius*radius-gamma*gamma))
	}
	x.SemiPenumbral = semi(1.5573 + x.U)
	x.SemiPartial = semi(1.0128 - x.U)
	x.SemiTotal = semi(0.4678 - x.U)
}
