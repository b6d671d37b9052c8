package sky

// nodeAndApse: the slow motions of the Moon's orbit and of the equinox.
var nodeAndApse = []entry{
	{"lunar node", []string{"node", "node regression", "node regression tropical", "node tropical", "tropical node", "lunar node tropical"},
		"6798.383474", true, "tropical", srcIERS,
		"the round of the Moon's node against the equinox, backwards"},
	{"lunar node sidereal", []string{"node regression sidereal", "node sidereal", "sidereal node"},
		"6793.477033", true, "sidereal", srcIERS,
		"the round of the Moon's node against the stars, backwards"},
	{"lunar apse", []string{"apse", "perigee", "lunar perigee", "apse advance", "apse advance tropical", "apse tropical", "tropical apse", "lunar apse tropical"},
		"3231.495684", false, "tropical", srcIERS,
		"the round of the Moon's perigee against the equinox, forwards"},
	{"lunar apse sidereal", []string{"apse advance sidereal", "apse sidereal", "sidereal apse"},
		"3232.605434", false, "sidereal", srcIERS,
		"the round of the Moon's perigee against the stars, forwards"},
	{"apse to node", []string{"lunar apse draconic"}, "2190.350104", false, "draconic", srcIERS,
		"from one meeting of the Moon's perigee and ascending node to the next"},
	{"full-moon cycle", []string{"full moon cycle"}, "411.784430", false, "synodic", srcIERS,
		"from one meeting of the Sun with the Moon's perigee to the next"},
	{"precession", []string{"precession of the equinox", "Platonic year", "great year"}, "9413067.89", true, "sidereal", srcIERS + "; rate of IAU 2006 from memory",
		"the round of the equinox against the stars, backwards"},
	{"solar perigee", []string{"Sun perigee", "Sun perigee tropical", "perihelion"}, "7647178.7", false, "tropical", srcIERS,
		"the round of the Sun's perigee against the equinox"},
}

// cycles: whole numbers of synodic months after which phases, dates or
// eclipses come back. They are exact multiples of the synodic month printed.
var cycles = []entry{
	{"Saros", []string{"saros"}, "6585.321315334", false, "synodic", "223 synodic months, " + srcFormula,
		"the return of eclipses: 223 synodic, 242 draconic and 239 anomalistic months"},
	{"Exeligmos", []string{"exeligmos", "triple Saros"}, "19755.963946002", false, "synodic", "669 synodic months, " + srcFormula,
		"three Saros, after which eclipses come back at nearly the same hour"},
	{"Metonic cycle", []string{"Metonic", "metonic"}, "6939.68838163", false, "synodic", "235 synodic months, " + srcFormula,
		"the return of phases to the same date: 19 tropical years"},
	{"Callippic cycle", []string{"Callippic", "callippic"}, "27758.75352652", false, "synodic", "940 synodic months, " + srcFormula,
		"four Metonic cycles: 76 years less a day"},
	{"Inex", []string{"inex"}, "10571.950811164", false, "synodic", "358 synodic months, " + srcFormula,
		"the return of eclipses at the other node: 358 synodic and 388.5 draconic months"},
}
