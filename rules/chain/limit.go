package chain

// Limits of good practice. They differ between makers; each names its source.
const (
	// WrapLeast is the least wrap on the smaller sprocket, degrees.
	// Source: Diamond Chain, frequently asked questions.
	WrapLeast = 120.0
	// WrapTensioned is the least wrap where the tension is well kept, degrees.
	// Source: Diamond Chain, frequently asked questions.
	WrapTensioned = 90.0
	// RatioForWrap is the ratio up to which two sprockets that clear each other
	// always have a wrap of 120 degrees. Source: Diamond Chain, frequently asked
	// questions; agrees with the formula.
	RatioForWrap = 3.0

	// CentreLeast and CentreMost bound the preferred centre distance, pitches.
	// Source: HKK.
	CentreLeast = 30.0
	CentreMost  = 50.0
	// CentrePulsating is the preferred centre distance under a pulsating load,
	// pitches. Source: HKK.
	CentrePulsating = 20.0
	// CentreLimit is the longest centre distance, pitches. Source: from memory.
	CentreLimit = 80.0

	// SlackNormal is the sag at mid-span as a part of the span, and SlackTight
	// that of a vertical, shock-loaded, reversing or long drive. Source: HKK.
	SlackNormal = 0.04
	SlackTight  = 0.02
	// LongCentre is the centre distance above which a drive counts as long, mm
	// (3 ft). Source: HKK.
	LongCentre = 914.4
	// Movement is the total movement at mid-span, both ways together, as a part
	// of the span, and MovementTight that of a vertical, shock-loaded or
	// reversing drive. Not the sag. Source: Diamond Chain, frequently asked
	// questions.
	MovementLeast      = 0.04
	MovementMost       = 0.06
	MovementTightLeast = 0.02
	MovementTightMost  = 0.03

	// TeethPreferred is the preferred least number of teeth, TeethAllowed the
	// number that must be exceeded, TeethMost the most on the larger sprocket.
	// Source: Tsubaki.
	TeethPreferred = 15
	TeethAllowed   = 13
	TeethMost      = 120
	// TeethSlow, TeethMedium and TeethFast are the least numbers of teeth for
	// slow, medium and fast drives. Source: Diamond Chain, frequently asked
	// questions.
	TeethSlow   = 12
	TeethMedium = 17
	TeethFast   = 25
	// TeethSmooth is the preferred least number for smooth running, TeethFewest
	// the absolute minimum (9 to 11 by source). Source: Shigley, sec. 17-5, and
	// handbooks, from memory.
	TeethSmooth = 17
	TeethFewest = 9
	// RatioMost is the preferred greatest ratio, RatioSlowMost the greatest at
	// low speed. Source: Shigley, sec. 17-5, and handbooks, from memory.
	RatioMost     = 7.0
	RatioSlowMost = 10.0

	// InclinationMost is the steepest drive without a tensioner, degrees from
	// the level. Source: HKK.
	InclinationMost = 60.0
)
