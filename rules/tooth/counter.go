package tooth

// StarStep returns the degrees that a star of so many teeth, 3 or more, moves
// at each turn of its finger: 360/n. It needs a jumper (detent) to hold it
// between. Computed from the count.
func StarStep(teeth int) (float64, error) {
	if err := count("star teeth", teeth, 3); err != nil {
		return 0, err
	}
	return 360 / float64(teeth), nil
}

// Ratchet is a ratchet wheel with pawls staggered by equal parts of a tooth.
type Ratchet struct {
	Teeth, Pawls int
}

// Steps returns the degrees of one tooth, and the smallest turn that some pawl
// catches, which is also the most it can run back: 360/z and 360/(k z).
// Computed from the counts.
func (r Ratchet) Steps() (tooth, catch float64, err error) {
	if err := first(count("ratchet teeth", r.Teeth, 1), count("pawls", r.Pawls, 1)); err != nil {
		return 0, 0, err
	}
	tooth = 360 / float64(r.Teeth)
	return tooth, tooth / float64(r.Pawls), nil
}
