package quantity

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  Dimension
		want string
	}{
		{"0.25 in", Length, "127/20"}, // the inch is 25.4 mm by definition (1959 agreement)
		{"0.25in", Length, "127/20"},
		{"1/12", Plain, "1/12"},
		{"1 / 12 in", Length, "127/60"},
		{"125", Length, "125"},
		{"-5 deg", Angle, "-5"},
		{"730.5 s", Time, "487/57600"},
		{"18.61 yr", Time, "84964464547383/12500000000"},
		{"1d 0h 50m", Time, "149/144"},
		{"365 d 5 h 49 m", Time, "525949/1440"},
		{"29 d 12 h 44 min 3 s", Time, "850481/28800"}, // (29·86400 + 12·3600 + 44·60 + 3)/86400
		{"30 rpm", Speed, "30"},
		{"2e-3 m", Length, "2"},
		{"40 N mm", Torque, "40"},
		{"-1d 12h", Time, "-3/2"},
		{"+3", Plain, "3"},
		{" 12 mm ", Length, "12"},
		{"1 yr 1 d", Time, "45780273803/125000000"}, // 366.242190424
	} {
		got, err := Parse(c.text, c.dim)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.want, got.String(), c.text)
	}
}

func TestParseErrorsPointAtTheirPart(t *testing.T) {
	for _, c := range []struct {
		text  string
		dim   Dimension
		at    string
		words string
	}{
		{"12 furlong", Length, "furlong", "unknown unit"},
		{"12 rpm", Length, "rpm", "a speed, not a length"},
		{"1 d 5 hh", Time, "hh", "unknown unit"},
		{"a week", Time, "a", "is not a time"},
		{"3 mm", Plain, "mm", "bare number"},
		{"", Length, "", "empty"},
		{"1 2", Length, "1 2", ""},
		{"--5", Length, "-", "is not a length"},
		{"1e999999999", Length, "1e999999999", "is not a length"},
		{"é", Length, "é", "is not a length"},
		{"12é", Length, "é", "unknown unit"},
		{"1/0 mm", Length, "1/0", "is not a length"},
		{"1 5 mm", Length, "1 5 mm", "is not one length"},
		{"1 mm 5", Length, "5", "is not one length"},
		{"1 d 2 d 3 d 4 d 5 d 6 d 7 d 8 d 9 d", Time, "9 d", "is not one time"},
		{"-", Plain, "-", "is not a number"},
		{"3 -2 mm", Length, "3 -2 mm", "is not one length"},
	} {
		_, err := Parse(c.text, c.dim)
		require.Error(t, err, c.text)
		e := err.(*Error)
		assert.Contains(t, e.Message, c.words, c.text)
		if c.words != "" && c.at != "" {
			assert.Equal(t, c.at, c.text[e.Start:e.End], c.text)
		}
	}
}

// Each unit in the base unit of its dimension, by the SI brochure (9th edition,
// table 8 for minute, hour, day and the angles), the inch by the agreement of
// 1959; the year as in the comment of TropicalYear.
func TestUnits(t *testing.T) {
	want := map[string]string{
		"1 mm": "1", "1 um": "1/1000", "1 cm": "10", "1 in": "127/5",
		"1 deg": "1", "1 arcmin": "1/60", "1 arcsec": "1/3600", "1 turn": "360",
		"1 s": "1/86400", "1 min": "1/1440", "1 h": "1/24", "1 d": "1",
		"1 yr": "45655273803/125000000", "1 y": "45655273803/125000000",
		"1 rpm": "1", "1 rph": "1/60", "1 rps": "60",
		"1 N mm": "1", "1 N cm": "10", "1 N m": "1000", "1 mN m": "1",
	}
	for d := Length; d <= Torque; d++ {
		for _, u := range Units(d) {
			text := "1 " + u.Name
			got, err := Parse(text, d)
			require.NoError(t, err)
			switch {
			case text == "1 m" && d == Length:
				assert.Equal(t, "1000", got.String())
			case text == "1 m":
				assert.Equal(t, "1/1440", got.String())
			default:
				assert.Equal(t, want[text], got.String(), text)
			}
			assert.NotEmpty(t, u.Meaning)
		}
		base, err := Parse("1 "+d.Base(), d)
		require.NoError(t, err)
		assert.Equal(t, "1", base.String(), d.Base())
	}
	assert.Empty(t, Units(Plain))
}

func TestOtherSpellingsAreOffered(t *testing.T) {
	for _, c := range []struct {
		text  string
		dim   Dimension
		meant string
	}{
		{"12 µm", Length, "um"},
		{"3 inches", Length, "in"},
		{"5°", Angle, "deg"},
		{"18.6 years", Time, "yr"},
		{"2 Nmm", Torque, "N mm"},
		{"2 n mm", Torque, "N mm"},
		{"2 MM", Length, "mm"},
		{"30 r/min", Speed, "rpm"},
		{"3 parsec", Length, ""},
	} {
		_, err := Parse(c.text, c.dim)
		require.Error(t, err, c.text)
		e := err.(*Error)
		assert.Equal(t, c.meant, e.Meant, c.text)
		assert.NotEmpty(t, e.Units, c.text)
	}
	for from, to := range spellings {
		known := false
		for i := range units {
			known = known || units[i].Name == to
			assert.NotEqual(t, from, units[i].Name, "a unit is no other spelling of one")
		}
		assert.True(t, known, to)
	}
}

func TestParseTolerance(t *testing.T) {
	for _, c := range []struct {
		text         string
		measure      Measure
		amount, span string
	}{
		{"30 ppm", PPM, "30", "0"},
		{"30ppm", PPM, "30", "0"},
		{"0.1 %", PPM, "1000", "0"},
		{"1/3 ppm", PPM, "1/3", "0"},
		{"1 deg in 10 yr", AngleOver, "1", "45655273803/12500000"},
		{"30 arcmin in 10", AngleOver, "1/2", "10"}, // a bare span is in days
		{"1 d in 100 yr", TimeOver, "1", "45655273803/1250000"},
		{"12h in 1 yr", TimeOver, "1/2", "45655273803/125000000"},
		{"1 d 12 h in 400 d", TimeOver, "3/2", "400"},
	} {
		got, err := ParseTolerance(c.text)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.measure, got.Measure, c.text)
		assert.Equal(t, c.amount, got.Amount.String(), c.text)
		assert.Equal(t, c.span, got.Span.String(), c.text)
	}
	for _, c := range []struct{ text, at, words string }{
		{"", "", "a tolerance reads"},
		{"30", "30", "a tolerance reads"},
		{"ppm", "ppm", "a tolerance reads"},
		{"30 pmp", "pmp", "a tolerance reads"},
		{"-3 ppm", "-3 ppm", "more than zero"},
		{"0 ppm", "0 ppm", "more than zero"},
		{"1 in 10 yr", "1", "with its unit"},
		{"1 d 3 deg in 10 yr", "1 d 3 deg", "with its unit"},
		{"1 mm in 3 d", "mm", "a length, not an angle or a time"},
		{"1 degr in 3 d", "degr", "unknown unit"},
		{"1 deg in ", "", "empty"},
		{"1 deg in 3 parsec", "parsec", "unknown unit"},
		{"1 deg in 0 d", "1 deg in 0 d", "more than zero"},
		{"1 deg in -3 d", "1 deg in -3 d", "more than zero"},
	} {
		_, err := ParseTolerance(c.text)
		require.Error(t, err, c.text)
		e := err.(*Error)
		assert.Contains(t, e.Message, c.words, c.text)
		assert.Equal(t, c.at, c.text[e.Start:e.End], c.text)
	}
}

func TestEndlessTextIsRefusedAtOnce(t *testing.T) {
	for _, s := range []string{strings.Repeat("9", 2_000_000), strings.Repeat("1 d ", 500_000), strings.Repeat("é", 1_000_000)} {
		_, err := Parse(s, Time)
		require.Error(t, err)
		assert.Less(t, len(err.Error()), 200)
		_, err = ParseTolerance(s)
		require.Error(t, err)
		assert.Less(t, len(err.Error()), 200)
	}
}

// A figure written with any unit is that unit's scale times the figure.
func TestFiguresScaleWithTheirUnit(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for range 2000 {
		u := units[rng.IntN(len(units))]
		p, q := rng.Int64N(1000)-500, 1+rng.Int64N(60)
		got, err := Parse(fmt.Sprintf("%d/%d %s", p, q, u.Name), u.Dimension)
		require.NoError(t, err)
		want := new(big.Rat).Mul(big.NewRat(p, q), u.Scale.Big())
		require.Equal(t, want.RatString(), got.String())
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"0.25 in", "730.5 s", "18.61 yr", "1d 0h 50m", "1/12", "-3 deg", "1 / 2 mm", "40 N mm", "1 deg in 10 yr", "30 ppm"} {
		for d := Plain; d <= Torque; d++ {
			f.Add(s, uint8(d))
		}
	}
	f.Fuzz(func(t *testing.T, s string, dim uint8) {
		if dim > uint8(Torque) {
			return
		}
		if _, err := Parse(s, Dimension(dim)); err != nil {
			e := err.(*Error)
			require.True(t, 0 <= e.Start && e.Start <= e.End && e.End <= len(s), "%q: %d..%d", s, e.Start, e.End)
			require.Less(t, len(e.Message), 400)
			require.True(t, !utf8.ValidString(s) || utf8.ValidString(s[e.Start:e.End]), "%q: %d..%d", s, e.Start, e.End)
		}
		if _, err := ParseTolerance(s); err != nil {
			e := err.(*Error)
			require.True(t, 0 <= e.Start && e.Start <= e.End && e.End <= len(s), "%q: %d..%d", s, e.Start, e.End)
		}
	})
}
