package sky

// Body is a planet's tilt and orbit at J2000.0.
type Body struct {
	Name         string
	Tilt         float64 // of the axis to the orbit's normal, degrees; above 90 the turning is retrograde
	Inclination  float64 // of the orbit to the ecliptic, degrees
	Eccentricity float64
}

// bodies: tilts from memory; inclinations and eccentricities from Meeus,
// Astronomical Algorithms, table 31.A (Pluto's from memory).
var bodies = [...]Body{
	{"Mercury", 0.034, 7.004986, 0.205632},
	{"Venus", 177.36, 3.394662, 0.006772},
	{"Earth", 23.4393, 0, 0.016709},
	{"Mars", 25.19, 1.849726, 0.093401},
	{"Jupiter", 3.13, 1.303267, 0.048498},
	{"Saturn", 26.73, 2.488879, 0.055548},
	{"Uranus", 97.77, 0.773197, 0.046381},
	{"Neptune", 28.32, 1.769953, 0.009456},
	{"Pluto", 119.6, 17.16, 0.2488},
}

// Bodies returns the planets from the Sun outwards, Pluto last.
func Bodies() []Body { return append([]Body(nil), bodies[:]...) }
