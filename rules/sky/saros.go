package sky

import "math"

// sarosNumber returns the number of the Saros series of the eclipse at
// lunation k. Series are numbered so that the next one is an Inex (358
// lunations) later and the same one a Saros (223 lunations) later; the
// constants put the solar series 145 at 1999-08-11 and the lunar series 129 at
// 2018-07-27 (G. van den Bergh 1955; numbering of the canons of Espenak and
// Meeus).
func sarosNumber(k float64) int {
	origin := 136
	if k != math.Floor(k) {
		k -= 0.5
		origin = 148
	}
	// lunations since the new moon of 1991-07-11, solar series 136
	nd := k + 105
	// the series goes on through so many Inex that the lunation stays in it
	nc := math.Floor(-61*nd/358 + 0.5 - nd/(12*358*358))
	n := int(float64(origin)+38*nd+nc*223-1) % 223
	if n < 0 {
		n += 223
	}
	return n + 1
}
