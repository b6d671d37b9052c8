package sky

import "math"

// Extremes of the Moon's horizontal parallax and of the Sun's semidiameter, in
// arcminutes, and the Moon's radius in parts of its parallax.
const (
	parallaxMin, parallaxMax = 53.90, 61.45
	sunSemiMin, sunSemiMax   = 15.73, 16.27
	moonInParallax           = 0.2725
	sunParallaxMean          = 8.794 / 60
)

// TrueLimit returns the limit for the true Sun and the true node, from the
// geometry of the shadow: tan(reach) = tan(inclination) sin(distance), with
// the Moon near and its orbit flat for the widest and the opposite for the
// narrowest. The Earth's shadow is enlarged by a fiftieth, as is customary.
// The narrowest limit of a central eclipse asks that the axis meets the Earth.
// An unknown event has the zero limit.
func TrueLimit(ev Event) Limit {
	return Limit{
		Certain:    nodeDistance(reach(ev, parallaxMin, false), MoonInclinationMax),
		Impossible: nodeDistance(reach(ev, parallaxMax, true), MoonInclinationMin),
	}
}

// reach is how far from the ecliptic the Moon still takes part, in arcminutes.
func reach(ev Event, parallax float64, widest bool) float64 {
	moon := moonInParallax * parallax
	small, large := sunSemiMin, sunSemiMax // what makes the reach small or large
	if ev == UmbralLunarEclipse || ev == TotalLunarEclipse || ev == CentralSolarEclipse {
		small, large = large, small
	}
	sun := small
	if widest {
		sun = large
	}
	switch ev {
	case SolarEclipse:
		return parallax - sunParallaxMean + sun + moon
	case CentralSolarEclipse:
		if !widest {
			return parallax - sunParallaxMean
		}
		return parallax - sunParallaxMean + moon - sun
	case LunarEclipse:
		return 1.02*(parallax+sunParallaxMean+sun) + moon
	case UmbralLunarEclipse:
		return 1.02*(parallax+sunParallaxMean-sun) + moon
	case TotalLunarEclipse:
		return 1.02*(parallax+sunParallaxMean-sun) - moon
	}
	return 0
}

func nodeDistance(reach, inclination float64) float64 {
	return math.Asin(math.Tan(reach/60*degree)/math.Tan(inclination*degree)) / degree
}
