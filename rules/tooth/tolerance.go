package tooth

import "math"

// leastGrade and mostGrade bound the grades of toleranceTable.
const (
	leastGrade = 5
	mostGrade  = 11
)

// toleranceTable is ISO 286-1 (from memory): microns for grades IT5 to IT11 by
// nominal size up to and including.
var toleranceTable = []struct {
	upTo    float64
	microns [mostGrade - leastGrade + 1]float64
}{
	{3, [...]float64{4, 6, 10, 14, 25, 40, 60}},
	{6, [...]float64{5, 8, 12, 18, 30, 48, 75}},
	{10, [...]float64{6, 9, 15, 22, 36, 58, 90}},
	{18, [...]float64{8, 11, 18, 27, 43, 70, 110}},
	{30, [...]float64{9, 13, 21, 33, 52, 84, 130}},
	{50, [...]float64{11, 16, 25, 39, 62, 100, 160}},
	{80, [...]float64{13, 19, 30, 46, 74, 120, 190}},
	{120, [...]float64{15, 22, 35, 54, 87, 140, 220}},
	{180, [...]float64{18, 25, 40, 63, 100, 160, 250}},
	{250, [...]float64{20, 29, 46, 72, 115, 185, 290}},
	{315, [...]float64{23, 32, 52, 81, 130, 210, 320}},
	{400, [...]float64{25, 36, 57, 89, 140, 230, 360}},
	{500, [...]float64{27, 40, 63, 97, 155, 250, 400}},
}

// Tolerance returns the width in mm of standard tolerance IT5 to IT11 for a
// size in mm up to 500. Source: ISO 286-1 (from memory).
func Tolerance(size float64, grade int) (float64, error) {
	err := first(
		between("size in mm", size, 0, 500.0000001),
		within("tolerance grade", float64(grade), leastGrade, mostGrade),
	)
	if err != nil {
		return 0, err
	}
	i := 0
	for i < len(toleranceTable)-1 && size > toleranceTable[i].upTo {
		i++
	}
	return toleranceTable[i].microns[grade-leastGrade] / 1000, nil
}

// CentreTolerance returns how far in mm a centre distance in mm may lie to
// either side in field js5 to js11, half of the standard tolerance, and by how
// much in mm that lets the backlash swing to either side at a pressure angle in
// degrees: 2 js tan(a). Source: DIN 3964's scheme (from memory); the swing is
// computed from [ApproxBacklash].
func CentreTolerance(centre float64, grade int, angle float64) (deviation, swing float64, err error) {
	tolerance, err := Tolerance(centre, grade)
	if err := first(err, pressureAngle(angle)); err != nil {
		return 0, 0, err
	}
	return tolerance / 2, tolerance * math.Tan(angle*degree), nil
}
