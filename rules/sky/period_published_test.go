package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Published or independent figures, each with its source.
func TestPeriodsAgainstPublishedFigures(t *testing.T) {
	for _, c := range []struct {
		name   string
		want   float64
		tol    float64
		source string
	}{
		{"synodic month", 29.530588853, 1e-8, "read in the documentation of a published ephemeris"},
		{"synodic month", 29.53058886, 1e-8, "fit to 2474 new moons 1900-2100, astronomy-engine 2.1.19"},
		{"tropical month", 27.321582241, 1e-8, "from memory"},
		{"sidereal month", 27.321661, 1e-6, "read in a published table"},
		{"sidereal month", 27.321661547, 1e-8, "from memory"},
		{"anomalistic month", 27.554553, 4e-6, "fit to 2651 perigees, astronomy-engine 2.1.19"},
		{"draconic month", 27.212224, 4e-6, "fit to 2684 ascending nodes, astronomy-engine 2.1.19"},
		{"tropical year", 365.242189, 2e-6, "read in a published table"},
		{"sidereal year", 365.25636, 5e-6, "read in a published table"},
		{"eclipse year", 346.62, 5e-3, "read in a published table"},
		{"half eclipse year", 173.3, 5e-2, "read in a published table"},
		{"Julian year", 365.25, 0, "definition"},
		{"Gregorian year", 365.2425, 0, "definition"},
		{"solar day", 1, 0, "definition"},
		{"sidereal day", 1 / 1.002737909350795, 3e-11, "1.002737909350795 turns a day, read in Numericana"},
		{"sidereal day", 86164.0905 / 86400, 1e-9, "computed from the formula"},
		{"stellar day", 86164.0989 / 86400, 1e-9, "IERS Earth rotation angle"},
		{"stellar day", 0.9972696720, 1e-8, "computed from the sidereal year, 0.8 ms away"},
		{"lunar day", 1.035050100, 1e-9, "computed from the formula"},
		{"half lunar day", 12.4206012 / 24, 1e-9, "half of 24.841202406 h"},
		{"lunar node", 18.6133575 * TropicalYearDays, 1e-4, "computed from the formula"},
		{"lunar node", 18.6129596 * 365.25, 1e-4, "computed from the formula"},
		{"lunar node sidereal", 18.5999241 * TropicalYearDays, 1e-4, "computed from the formula"},
		{"lunar node sidereal", 18.5995264 * 365.25, 1e-4, "computed from the formula"},
		{"lunar apse", 8.8475422 * TropicalYearDays, 1e-4, "computed from the formula"},
		{"lunar apse", 8.8473530 * 365.25, 1e-4, "computed from the formula"},
		{"lunar apse sidereal", 8.8505806 * TropicalYearDays, 1e-4, "computed from the formula"},
		{"lunar apse sidereal", 8.8503913 * 365.25, 1e-4, "computed from the formula"},
		{"apse to node", 5.99685 * 365.25, 2e-3, "computed from the formula"},
		{"precession", 25771.58 * 365.25, 2, "computed from the formula"},
		{"precession", 1296000 / 50.288 * 365.25, 20, "50.288 arcsec a year"},
		{"solar perigee", 20936.8 * 365.25, 20, "computed from the formula"},
		{"Saros", 18.030013 * TropicalYearDays, 4e-4, "computed from the formula"},
		{"Inex", 28.945043 * TropicalYearDays, 4e-4, "computed from the formula"},
		{"Carrington", 27.2753, 1e-4, "from memory"},
		{"Sun rotation", 360 / 14.1844, 1e-5, "IAU W' of 14.1844 degrees a day"},
	} {
		assert.InDelta(t, c.want, days(t, c.name), c.tol, "%s (%s)", c.name, c.source)
	}
}

// The cycles against one another, computed from the formula.
func TestCycles(t *testing.T) {
	d := func(n string) float64 { return days(t, n) }
	for _, c := range []struct {
		got, want, tol float64
	}{
		{d("Saros"), 6585.321315, 5e-7},
		{242 * d("draconic month"), 6585.357439, 5e-7},
		{239 * d("anomalistic month"), 6585.537422, 5e-7},
		{241 * d("sidereal month"), 6584.520434, 5e-7},
		{19 * d("eclipse year"), 6585.781442, 5e-7},
		{d("Saros")/d("draconic month")*360 - 242*360, -0.4779, 5e-5},
		{d("Exeligmos"), 19755.963946, 5e-7},
		{d("Exeligmos") - 54*TropicalYearDays, 33, 0.2},
		{d("Metonic"), 6939.688382, 5e-7},
		{19 * d("tropical year"), 6939.601618, 5e-7},
		{254 * d("tropical month"), 6939.681891, 1e-6},
		{255 * d("draconic month"), 6939.116309, 5e-7},
		{(d("Metonic") - 19*d("tropical year")) * 24, 2.08, 5e-3},
		{d("Callippic"), 27758.753526, 1e-6},
		{76 * d("tropical year"), 27758.406472, 5e-7},
		{d("Inex"), 10571.950811, 5e-7},
		{388.5 * d("draconic month"), 10571.947789, 5e-7},
		{math.Mod(d("Inex")/d("draconic month"), 1) * 360, 180.0400, 5e-5},
	} {
		assert.InDelta(t, c.want, c.got, c.tol)
	}
}
