// Package tooth holds the formulas of toothed parts: involute and cycloidal
// gears, bevels, crown wheels, worms, planets, the making of teeth, their
// strength, and the intermittent and uneven mechanisms that stand in for a
// pair of wheels.
//
// It knows nothing of specs and imports nothing of this project.
//
// Units, unless a name says otherwise: lengths in mm, angles in degrees,
// forces in N, torques in N mm, stresses in MPa (N/mm2), speeds in m/s. What is
// counted in modules (addendum, dedendum, profile shift) is a plain number.
// A helix angle is positive for a right-hand helix. Everything is a float64
// except counts of teeth and the rates of epicyclic trains, which are rational.
//
// Ranges, unless a function says otherwise: lengths above 0 and up to a
// kilometre, tooth counts from 1 to a million, pressure angles from 5 to 45
// degrees, addenda up to 5 modules.
//
// Every function refuses what it cannot compute: the error wraps [ErrRange]
// when an argument lies outside its range and [ErrNoMesh] when two sound parts
// cannot run together. No result is ever NaN or infinite, save where a
// function says that infinity means "without limit".
//
// Sources are named where a formula stands. "From memory" after a source says
// that the formula is believed to be printed there and was recomputed, but
// that the print was not at hand.
package tooth
