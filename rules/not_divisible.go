package rules

import (
	"fmt"

	"wheelwork/spec"
)

func init() {
	register(&Rule{
		Name:     "not-divisible",
		Group:    Making,
		Severity: Warning,
		Checks:   "the dividing head can index the tooth count of every wheel",
		Why:      "a count that no hole circle divides cannot be cut by plain indexing: it wants a plate with another circle, compound or differential indexing, or a blank thrown away when the last tooth comes out thin",
		Formula:  "with a worm of K to 1, z teeth take K/z turns of the crank each: some circle must have a multiple of z/gcd(z, K) holes",
		Source:   "plain indexing as in OD1644; computed from the counts. It is asked of wheels, pinions, rings, bevels and crown wheels, not of worms, nor of sprockets, which are bought",
		Breaks:   func() string { return dividedExample(53) },
		Keeps:    func() string { return dividedExample(54) },
		Run:      notDivisible,
	})
}

func dividedExample(teeth int) string {
	return fmt.Sprintf(`
design { title = "One wheel" }
dividing {
  ratio   = 40
  circles = ["15-20", 21, 23, 27, 29, 31, 33]
}
arbor "hand" {}
wheel "hand" {
  on    = "hand"
  teeth = %d
}
`, teeth)
}

func notDivisible(p *Pass) {
	d := p.Design.Dividing
	if d == nil {
		p.StandAside("the design gives no dividing head")
		return
	}
	head, ok := HeadOf(p.Design)
	if !ok {
		p.Report(p.Found(&d.Part, d.Ratio.Place(), "a dividing head makes a whole number of turns for one of the work, not %s", fig(d.Ratio.Exact.Float())))
		return
	}
	for _, w := range p.Design.Wheels {
		if w.Is("worm") {
			continue
		}
		if _, ok := head.Index(w.Teeth.N); ok {
			continue
		}
		z := w.Teeth.N
		f := p.Found(&w.Part, w.Teeth.Place(), "the dividing head of %d to 1 cannot index the %s of %s: that wants a circle of %d holes or a multiple", head.Ratio, teeth(z), w.Title(), z/gcd(z, int64(head.Ratio)))
		f.Message += head.nearest(z)
		if d.Circles.Set() {
			f.See(d.Circles.KeyPlace(), "the circles of its plates")
		} else {
			f.See(d.Ratio.Place(), "it has no circles")
		}
		p.Report(f)
	}
}

// nearest says which counts next to z on either side the head can index, of
// those that a wheel may have, and how.
func (h Head) nearest(z int64) string {
	const (
		far   = 200
		least = 6 // teeth of the smallest pinion
	)
	var list []string
	for _, step := range [...]int64{-1, 1} {
		for n := z + step; n >= least && n <= spec.MostTeeth && (n-z)*step <= far; n += step {
			if x, ok := h.Index(n); ok {
				list = append(list, fmt.Sprintf("%d (%s)", n, Indexed(x)))
				break
			}
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "; of the counts near it can do " + listed(list)
}
