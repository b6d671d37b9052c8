package tooth

import "math"

// Cycloidal is a clock wheel driving a pinion of fewer or as many leaves, with
// radial leaf flanks: the circle that generates the wheel's tips has half the
// pinion's pitch radius. Module is in mm.
type Cycloidal struct {
	Teeth, Leaves int
	Module        float64
}

// practice is the part of the pointed addendum that is cut. Source: BS 978-2
// (from memory).
const practice = 0.95

// CycloidalSizes is what is turned and cut: mm.
type CycloidalSizes struct {
	Centre float64

	WheelPitch, WheelTip, WheelRoot float64 // diameters
	FlankArc                        float64 // radius of the arc that stands for the wheel's tip curve

	PinionPitch, PinionTip, PinionRoot float64 // diameters
	LeafWidth                          float64 // at the pitch circle
	LeafTipRadius                      float64 // radius that rounds the leaf; 0 where the standard, as remembered, gives none

	// Backlash is the play of the form itself at the pitch circle. Limits made
	// for involute teeth do not apply to it.
	Backlash float64
}

// Check refuses counts and modules outside the form's range: 5 leaves or more,
// and no fewer teeth than leaves.
func (c Cycloidal) Check() error {
	return first(count("pinion leaves", c.Leaves, 5), count("wheel teeth", c.Teeth, c.Leaves), length("module", c.Module))
}

// AddendumFactor returns the theoretical addendum of the wheel in modules, at
// which its teeth come to a point. With R = N/n, k = 1 + 2R and t the turn of
// the generating circle to the point,
//
//	t = pi/n + 2R atan2(sin t, k - cos t), f = (n/4)(1 - k + sqrt(1 + k^2 - 2 k cos t))
//
// Computed from the geometry of radial flanks, the basis of BS 978-2.
func (c Cycloidal) AddendumFactor() (float64, error) {
	if err := c.Check(); err != nil {
		return 0, err
	}
	g := c.generating()
	return g.addendum(g.pointed()), nil
}

// PracticalFactor returns the addendum of the wheel as cut, in modules: 0.95 of
// [Cycloidal.AddendumFactor]. Source: BS 978-2 (from memory).
func (c Cycloidal) PracticalFactor() (float64, error) {
	f, err := c.AddendumFactor()
	return practice * f, err
}

// RecessAction returns how many leaves on the mean are driven at once after the
// line of centres, the useful contact ratio of clock teeth, with the wheel's
// teeth pointed and as cut: t n/(4 pi). Below 1 a tooth begins its push before
// the centres, which is usual under 11 leaves. Computed from the geometry of
// radial flanks; the least of 10 leaves agrees with Goodrich.
func (c Cycloidal) RecessAction() (pointed, cut float64, err error) {
	if err := c.Check(); err != nil {
		return 0, 0, err
	}
	g := c.generating()
	full := g.pointed()
	wanted := practice * g.addendum(full)
	turn := bisect(func(t float64) float64 { return g.addendum(t) - wanted }, 0, full)
	perTurn := g.leaves / (4 * math.Pi)
	return full * perTurn, turn * perTurn, nil
}

// leaf is the form of the pinion's leaves by their number.
type leaf struct {
	most     int
	addendum float64 // modules, as all of these
	rounding float64
	width    float64
}

// leaves is BS 978-2 (from memory).
var leaves = []leaf{
	{7, 0.855, 1.05, 1.05},
	{9, 0.67, 0.7, 1.05},
	{10, 0.525, 0, 1.05},
	{mostTeeth, 0.625, 0, 1.25},
}

// leaf returns the form for the pinion's leaves; five are cut as six.
func (c Cycloidal) leaf() leaf {
	i := 0
	for c.Leaves > leaves[i].most {
		i++
	}
	return leaves[i]
}

// Sizes returns diameters and leaf sizes. Source: BS 978-2 (from memory), with
// the wheel's addendum by [Cycloidal.PracticalFactor]; a pinion below six
// leaves takes the leaf of six.
//
//	a = m (N + n)/2, wheel da = m (N + 2 * 0.95 f), wheel dedendum pi/2 m
//	pinion dedendum m (0.95 f + 0.4), flank arc 1.40 f m
func (c Cycloidal) Sizes() (CycloidalSizes, error) {
	f, err := c.AddendumFactor()
	if err != nil {
		return CycloidalSizes{}, err
	}
	m, l := c.Module, c.leaf()
	wheel, pinion := m*float64(c.Teeth), m*float64(c.Leaves)
	return CycloidalSizes{
		Centre:        (wheel + pinion) / 2,
		WheelPitch:    wheel,
		WheelTip:      wheel + 2*practice*f*m,
		WheelRoot:     wheel - math.Pi*m,
		FlankArc:      1.40 * f * m,
		PinionPitch:   pinion,
		PinionTip:     pinion + 2*l.addendum*m,
		PinionRoot:    pinion - 2*(practice*f+0.4)*m,
		LeafWidth:     l.width * m,
		LeafTipRadius: l.rounding * m,
		Backlash:      (math.Pi/2 - l.width) * m,
	}, nil
}

// LeafUse says what a count of pinion leaves is fit for.
type LeafUse int

// The uses of leaf counts, poorest first. Common practice; that 10 is the
// fewest that can avoid friction before the centres is Goodrich's.
const (
	TooFewLeaves    LeafUse = iota // below 6: watches alone go so low
	ClockLeaves                    // 6 to 9: ordinary clocks, pushes before the centres
	GoodLeaves                     // 10 to 13
	RegulatorLeaves                // 14 and more
)

// UseOfLeaves returns what a pinion of so many leaves, 1 or more, is fit for.
func UseOfLeaves(n int) (LeafUse, error) {
	if err := count("pinion leaves", n, 1); err != nil {
		return 0, err
	}
	switch {
	case n < 6:
		return TooFewLeaves, nil
	case n < 10:
		return ClockLeaves, nil
	case n < 14:
		return GoodLeaves, nil
	}
	return RegulatorLeaves, nil
}
