package tooth

// Hunt says how the teeth of a pair meet again. Source: Foiles.
type Hunt struct {
	GCD    int // common factor of the counts, and the number of ways to assemble them
	Teeth  int // teeth that pass until the same two meet again: the least common multiple
	TurnsA int // turns of the first wheel until then
	TurnsB int // turns of the second
}

// Hunting reports whether every tooth meets every tooth.
func (h Hunt) Hunting() bool { return h.GCD == 1 }

// NewHunt returns how the teeth of two wheels, 1 or more each, meet again.
func NewHunt(a, b int) (Hunt, error) {
	if err := first(count("tooth count", a, 1), count("tooth count", b, 1)); err != nil {
		return Hunt{}, err
	}
	g := gcd(a, b)
	return Hunt{GCD: g, Teeth: a / g * b, TurnsA: b / g, TurnsB: a / g}, nil
}

// Frequencies returns at which rate in Hz teeth mesh and at which the same two
// meet, where the first wheel turns at so many rpm, 0 or more: n z/60, and that
// over the least common multiple. Source: handbooks of vibration (from memory).
func (h Hunt) Frequencies(rpm float64) (mesh, hunting float64, err error) {
	err = first(within("rpm", rpm, 0, 1e9), count("common factor", h.GCD, 1), count("teeth to the next meeting", h.Teeth, 1))
	if err != nil {
		return 0, 0, err
	}
	mesh = rpm * float64(h.TurnsB*h.GCD) / 60
	return mesh, mesh / float64(h.Teeth), nil
}

// gcd is the greatest common divisor of two positive numbers.
func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
