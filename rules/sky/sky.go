// Package sky holds what a geared model of the heavens is measured against:
// the catalogue of periods, the mean longitudes of Sun, Moon, node, perigee
// and planets, the phases of the Moon, eclipses of both kinds, and the dates
// they fall on.
//
// Catalogue periods are exact rationals of the printed decimals. Everything
// that is only read off the sky (longitudes, eclipses) is floating point.
// Days are days of 86400 s of Terrestrial Time, angles are degrees, unless a
// name says otherwise.
package sky
