package chain

import "strings"

// Size is a standard chain, lengths in mm.
type Size struct {
	Name       string  // ISO 606 number, or the pitch of a miniature chain
	ANSI       string  // ANSI B29.1 number, empty where there is none
	Pitch      float64 // p, pin to pin
	InnerWidth float64 // b1, least width between the inner plates
	Roller     float64 // d1, greatest diameter of the roller or bush
	Bush       bool    // the sprocket meets bushes, there are no rollers
	Source     string
}

// The sources of the table.
const (
	srcStandard  = "ISO 606, DIN 8187 and ANSI B29.1, from memory"
	srcConfirmed = "ISO 606, DIN 8187 and ANSI B29.1, from memory; confirmed by published dimension tables"
	srcMiniature = "miniature chain catalogues, from memory"
)

var sizes = [...]Size{
	{"04C", "25", 6.35, 3.10, 3.30, true, srcConfirmed},
	{"06C", "35", 9.525, 4.68, 5.08, true, srcStandard},
	{"085", "41", 12.70, 6.25, 7.77, false, srcStandard},
	{"08A", "40", 12.70, 7.85, 7.92, false, srcConfirmed},
	{"10A", "50", 15.875, 9.40, 10.16, false, srcConfirmed},
	{"12A", "60", 19.05, 12.57, 11.91, false, srcConfirmed},
	{"16A", "80", 25.40, 15.75, 15.88, false, srcConfirmed},
	{"20A", "100", 31.75, 18.90, 19.05, false, srcStandard},
	{"24A", "120", 38.10, 25.22, 22.23, false, srcStandard},

	{"03", "", 5.00, 2.50, 3.20, false, srcStandard},
	{"04", "", 6.00, 2.80, 4.00, false, srcStandard},
	{"05B", "", 8.00, 3.00, 5.00, false, srcConfirmed},
	{"06B", "", 9.525, 5.72, 6.35, false, srcStandard},
	{"081", "", 12.70, 3.30, 7.75, false, srcStandard},
	{"083", "", 12.70, 4.88, 7.75, false, srcStandard},
	{"084", "", 12.70, 4.88, 7.75, false, srcStandard},
	{"08B", "", 12.70, 7.75, 8.51, false, srcConfirmed},
	{"10B", "", 15.875, 9.65, 10.16, false, srcConfirmed},
	{"12B", "", 19.05, 11.68, 12.07, false, srcConfirmed},
	{"16B", "", 25.40, 17.02, 15.88, false, srcStandard},

	{"0.1475 in", "", 3.7465, 1.83, 2.29, false, srcMiniature},
	{"3/16 in", "", 4.7625, 2.38, 2.48, false, srcMiniature},
}

// Sizes returns the standard chains: ISO 606 A series by pitch, then the others
// by pitch, then miniature chains.
func Sizes() []Size { return append([]Size(nil), sizes[:]...) }

// Lookup finds a standard chain by its ISO 606 number ("04C"), its ANSI number
// ("25") or, for a miniature chain, its pitch ("3/16 in"). Letter case and
// spaces around the name do not matter.
func Lookup(name string) (Size, bool) {
	name = strings.TrimSpace(name)
	if name == "" {
		return Size{}, false
	}
	for _, s := range sizes {
		if strings.EqualFold(s.Name, name) || s.ANSI == name {
			return s, true
		}
	}
	return Size{}, false
}
