package tooth

import "slices"

// DividingHead is a worm dividing head: Ratio turns of its crank to one of the
// work, and the hole circles of its plates.
type DividingHead struct {
	Ratio   int
	Circles []int
}

// Indexing is how the crank is turned from one tooth to the next: Turns whole
// turns and Holes holes in the circle of Circle holes. Where Holes is 0 any
// circle serves and Circle is 0.
type Indexing struct {
	Turns, Holes, Circle int
}

// Check refuses a ratio or a hole circle below 1.
func (d DividingHead) Check() error {
	err := count("dividing ratio", d.Ratio, 1)
	for _, c := range d.Circles {
		err = first(err, count("holes of a circle", c, 1))
	}
	return err
}

// Indexings returns every way to divide into so many parts by plain indexing,
// the smallest circle first, and none where the head cannot: Ratio/n turns of
// the crank are a whole number of holes only where n/gcd(n, Ratio) divides the
// circle. Computed from the ratio; examples in OD1644.
func (d DividingHead) Indexings(parts int) ([]Indexing, error) {
	if err := first(d.Check(), count("number of parts", parts, 1)); err != nil {
		return nil, err
	}
	turns, rest := d.Ratio/parts, d.Ratio%parts
	if rest == 0 {
		return []Indexing{{Turns: turns}}, nil
	}
	circles := slices.Clone(d.Circles)
	slices.Sort(circles)
	step := parts / gcd(parts, d.Ratio)
	var ways []Indexing
	for _, c := range slices.Compact(circles) {
		if c%step == 0 {
			ways = append(ways, Indexing{Turns: turns, Holes: rest * c / parts, Circle: c})
		}
	}
	return ways, nil
}

// Divides reports whether the head divides into so many parts.
func (d DividingHead) Divides(parts int) (bool, error) {
	ways, err := d.Indexings(parts)
	return len(ways) > 0, err
}

// Divisible returns, in order, the numbers from least to most into which the
// head divides; at most 100 000 are tried.
func (d DividingHead) Divisible(least, most int) ([]int, error) {
	err := first(d.Check(), count("number of parts", least, 1), within("number of parts", float64(most), float64(least), float64(least)+1e5))
	if err != nil {
		return nil, err
	}
	var numbers []int
	for n := least; n <= most; n++ {
		if ok, err := d.Divides(n); err != nil {
			return nil, err
		} else if ok {
			numbers = append(numbers, n)
		}
	}
	return numbers, nil
}
