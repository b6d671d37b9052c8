package quantity

import (
	"testing"

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

func TestParseTolerance(t *testing.T) {
	for text, want := range map[string]Tolerance{
		"30 ppm":         {Measure: PPM},
		"0.1 %":          {Measure: PPM},
		"1 deg in 10 yr": {Measure: AngleOver},
		"1 d in 100 yr":  {Measure: TimeOver},
		"12h in 1 yr":    {Measure: TimeOver},
	} {
		got, err := ParseTolerance(text)
		require.NoError(t, err, text)
		assert.Equal(t, want.Measure, got.Measure, text)
	}
	got, _ := ParseTolerance("0.1 %")
	assert.Equal(t, "1000", got.Amount.String())
	for _, text := range []string{"", "30", "ppm", "1 in 10 yr", "1 deg in 10", "-3 ppm", "0 ppm", "1 deg in", "1 mm in 3 d", "1 deg in 3 parsec"} {
		_, err := ParseTolerance(text)
		if text == "1 deg in 10" { // bare spans are days
			assert.NoError(t, err)
			continue
		}
		assert.Error(t, err, text)
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
		}
		if _, err := ParseTolerance(s); err != nil {
			e := err.(*Error)
			require.True(t, 0 <= e.Start && e.Start <= e.End && e.End <= len(s), "%q: %d..%d", s, e.Start, e.End)
		}
	})
}
