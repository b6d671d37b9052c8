// Package sample makes designs of any size for tests and benchmarks: a line
// shaft that turns once a day and drives many short trains laid out in rows,
// every fourth of them on an arm, each with a hand at its end.
package sample

import (
	"fmt"
	"strings"
)

// Notation is how a design is written.
type Notation string

// The notations, as the ends of file names.
const (
	HCL  Notation = "hcl"
	TOML Notation = "toml"
)

// pairs are the meshes that trains are made of: driver and driven, without a
// common factor and of 20 teeth at least; each driven one clears the next arbor.
var pairs = [...][2]int{{20, 87}, {23, 94}, {21, 104}, {20, 101}, {27, 100}, {25, 96}, {22, 93}, {24, 89}}

const (
	module = 0.5  // mm
	meshes = 5    // in a train
	play   = 0.04 // mm by which centres stand further apart than the pitch circles ask
	bottom = 10.0 // mm, height of the lowest mesh
	level  = 4.0  // mm from mesh to mesh
	pitch  = 400  // mm between trains in both ways
	inRow  = 50
)

// Design is a design of so many wheels, rounded up to whole meshes.
func Design(wheels int, n Notation) []byte {
	w := &writer{toml: n == TOML}
	w.block("design", "", "title", fmt.Sprintf("%q", fmt.Sprintf("Line shaft with trains, %d wheels", wheels)), "epoch", `"2027-01-01"`)
	w.block("arbor", "line", "at", "[0, -200]", "diameter", "8", "from", "0", "to", "8")
	w.block("clock", "", "on", `"line"`, "period", `"solar day"`)
	for train := 0; wheels > 0; train++ {
		count := min(meshes, (wheels+1)/2)
		w.train(train, count)
		wheels -= 2 * count
	}
	return []byte(w.String())
}

// train writes one train of so many meshes. On an arm it is an epicyclic one:
// its first wheel stands still on the frame.
func (w *writer) train(number, count int) {
	id := func(what string, i int) string { return fmt.Sprintf("t%d_%s_%d", number, what, i) }
	x, y := float64(number%inRow)*pitch, float64(number/inRow)*pitch
	top := bottom + level*float64(count) + 2
	first, base := id("arbor", 0), "frame"
	var carried []string
	if number%4 == 3 {
		base = fmt.Sprintf("t%d_arm", number)
		carried = []string{"carried_by", quote(base)}
		w.block("arbor", first, "at", point(x, y), "diameter", "3", "from", "0", "to", "5")
		w.block("arm", base, "on", quote(first), "reach", "190", "z", "2", "face", "3")
		w.block("coupling", first, "arbors", list("line", first), "kind", `"universal"`)
		first = id("stud", 0)
		w.block("stud", first, "at", point(x, y), "diameter", "3", "from", "6", "to", figure(top))
		x, y = 0, 0
	} else {
		w.block("arbor", first, "at", point(x, y), "diameter", "3", "from", "0", "to", figure(top))
		w.block("coupling", first, "arbors", list("line", first), "kind", `"universal"`)
	}
	for i := range count {
		driver, driven := pair(number, i)
		next := id("arbor", i+1)
		x += module*float64(driver+driven)/2 + play
		z := bottom + level*float64(i)
		foot := z - 2
		if carried != nil {
			foot = 3 // in the arm
		}
		w.block("arbor", next, append(carried, "at", point(x, y), "diameter", "3", "from", figure(foot), "to", figure(z+2*level))...)
		w.wheel(id("driver", i), first, driver, z, "steel")
		w.wheel(id("driven", i), next, driven, z, "brass")
		w.block("mesh", "", "wheels", list(id("driver", i), id("driven", i)), "train", quote(fmt.Sprintf("t%d", number)))
		first = next
	}
	w.block("hand", fmt.Sprintf("t%d", number), "on", quote(first), "against", quote(base), "period", quote(period(number, count)+" d"), "within", `"1 ppm"`)
}

func (w *writer) wheel(name, on string, teeth int, z float64, material string) {
	w.block("wheel", name, "on", quote(on), "teeth", fmt.Sprint(teeth), "module", figure(module), "z", figure(z), "face", "2", "bore", "3", "material", quote(material))
}

// pair is the teeth of a mesh of a train, driver and driven.
func pair(train, mesh int) (driver, driven int) {
	p := pairs[(train+mesh)%len(pairs)]
	return p[0], p[1]
}

// period is how many days the last arbor of a train takes, as a fraction.
func period(number, count int) string {
	num, den := 1, 1
	for i := range count {
		driver, driven := pair(number, i)
		num, den = num*driven, den*driver
	}
	return fmt.Sprintf("%d/%d", num, den)
}

func quote(s string) string { return `"` + s + `"` }

func list(a, b string) string { return "[" + quote(a) + ", " + quote(b) + "]" }

func figure(x float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.3f", x), "0"), ".")
}

func point(x, y float64) string { return "[" + figure(x) + ", " + figure(y) + "]" }
