package sky

// Figures of the orbits and axes that rules need, in degrees unless said
// otherwise.
const (
	// TropicalYearDays is the tropical year in days as a float; TropicalYear
	// is the exact rational. IERS/Simon et al. 1994.
	TropicalYearDays = 365.242190424
	// SynodicMonthDays is the synodic month in days as a float; SynodicMonth
	// is the exact rational. IERS/Simon et al. 1994.
	SynodicMonthDays = 29.530588858

	// MoonInclination is the mean inclination of the Moon's orbit to the
	// ecliptic (from memory); the osculating one runs from
	// MoonInclinationMin to MoonInclinationMax (from memory).
	MoonInclination    = 5.1453964
	MoonInclinationMin = 4.98
	MoonInclinationMax = 5.30

	// Obliquity is the tilt of the Earth's axis at J2000.0: IAU 1980 as in
	// Meeus (from memory). ObliquityIAU2006 is the newer figure (from memory).
	Obliquity        = 23.4392911
	ObliquityIAU2006 = 23.4392794

	// MoonEccentricity is the mean eccentricity of the Moon's orbit
	// (read in eclipsewise.com's tables of the Moon).
	MoonEccentricity = 0.0549
	// SunEccentricity is the eccentricity of the Earth's orbit at J2000.0,
	// IERS/Simon et al. 1994.
	SunEccentricity = 0.01670862

	// MoonEquationOfCentre is the amplitude of the greatest term of the
	// Moon's longitude, in sin M' (Meeus, table 47.A, from memory): what a pin
	// and slot should give. MoonTwoBodyEquation is 2e in degrees, the same to
	// first order in a two-body orbit (computed from the formula).
	MoonEquationOfCentre = 6.288774
	MoonTwoBodyEquation  = 6.29
	// The next terms of the Moon's longitude (Meeus, table 47.A, from memory):
	// evection in sin(2D - M'), variation in sin 2D, the second term of the
	// centre in sin 2M', the annual equation in sin M.
	MoonEvection             = 1.274027
	MoonVariation            = 0.658314
	MoonSecondEquationCentre = 0.213618
	MoonAnnualEquation       = -0.185116
	// MoonLatitude is the amplitude of the greatest term of the Moon's
	// latitude, in sin F (Meeus, table 47.B, from memory).
	MoonLatitude = 5.128122
	// SunEquationOfCentre is 2e of the Earth's orbit (computed from the
	// formula).
	SunEquationOfCentre = 1.915

	// Mean perigee and apogee distances of the Moon's centre, km (read in
	// eclipsewise.com's tables), and the extremes of 1900-2100 (computed with
	// astronomy-engine 2.1.19).
	MoonPerigee    = 363396.0
	MoonApogee     = 405504.0
	MoonPerigeeMin = 356367.0
	MoonApogeeMax  = 406701.0
)
