package chain_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/chain"
)

// near is the tolerance of figures that were computed from the formula apart
// from this project: 1e-4 of the value.
func near(t *testing.T, want, got float64, what ...any) {
	t.Helper()
	assert.InDelta(t, want, got, 1e-4*math.Abs(want), what...)
}

// half is the tolerance of a printed figure: half a unit of its last digit.
func half(digits int) float64 { return 0.5*math.Pow10(-digits) + 1e-12 }

// Standard rows: ISO 606, DIN 8187, ANSI B29.1, from memory; those marked
// confirmed agree with published dimension tables.
func TestSizes(t *testing.T) {
	for _, row := range []struct {
		iso, ansi         string
		pitch, width, pin float64
		bush, confirmed   bool
	}{
		{"04C", "25", 6.35, 3.10, 3.30, true, true},
		{"06C", "35", 9.525, 4.68, 5.08, true, false},
		{"085", "41", 12.70, 6.25, 7.77, false, false},
		{"08A", "40", 12.70, 7.85, 7.92, false, true},
		{"10A", "50", 15.875, 9.40, 10.16, false, true},
		{"12A", "60", 19.05, 12.57, 11.91, false, true},
		{"16A", "80", 25.40, 15.75, 15.88, false, true},
		{"20A", "100", 31.75, 18.90, 19.05, false, false},
		{"24A", "120", 38.10, 25.22, 22.23, false, false},
		{"03", "", 5.00, 2.50, 3.20, false, false},
		{"04", "", 6.00, 2.80, 4.00, false, false},
		{"05B", "", 8.00, 3.00, 5.00, false, true},
		{"06B", "", 9.525, 5.72, 6.35, false, false},
		{"081", "", 12.70, 3.30, 7.75, false, false},
		{"083", "", 12.70, 4.88, 7.75, false, false},
		{"084", "", 12.70, 4.88, 7.75, false, false},
		{"08B", "", 12.70, 7.75, 8.51, false, true},
		{"10B", "", 15.875, 9.65, 10.16, false, true},
		{"12B", "", 19.05, 11.68, 12.07, false, true},
		{"16B", "", 25.40, 17.02, 15.88, false, false},
		// Miniature chain catalogues, from memory.
		{"0.1475 in", "", 3.7465, 1.83, 2.29, false, false},
		{"3/16 in", "", 4.7625, 2.38, 2.48, false, false},
	} {
		s, ok := chain.Lookup(row.iso)
		require.True(t, ok, row.iso)
		assert.Equal(t, row.iso, s.Name)
		assert.Equal(t, row.ansi, s.ANSI, row.iso)
		assert.Equal(t, row.pitch, s.Pitch, row.iso)
		assert.Equal(t, row.width, s.InnerWidth, row.iso)
		assert.Equal(t, row.pin, s.Roller, row.iso)
		assert.Equal(t, row.bush, s.Bush, row.iso)
		if row.confirmed {
			assert.Contains(t, s.Source, "confirmed", row.iso)
		} else {
			assert.NotContains(t, s.Source, "confirmed", row.iso)
		}
		if row.ansi != "" {
			byANSI, ok := chain.Lookup(row.ansi)
			require.True(t, ok, row.ansi)
			assert.Equal(t, s, byANSI)
		}
	}
	assert.Len(t, chain.Sizes(), 22)
}

// Inch dimensions as published. No. 25: Jeffrey, ANSI table, read. The others:
// cross-reference from the US Tsubaki catalogue, read; there A series widths are
// nominal, above the least width of ISO 606, and are not compared.
func TestSizesInInches(t *testing.T) {
	for _, row := range []struct {
		name                 string
		pitch, width, roller float64
	}{
		{"04C", .250, .122, .130},
		{"40", .500, 0, .312},
		{"08B", .500, .305, .335},
		{"50", .625, 0, .400},
		{"10B", .625, .380, .400},
	} {
		s, ok := chain.Lookup(row.name)
		require.True(t, ok)
		const unit = half3 * 25.4
		assert.InDelta(t, row.pitch*25.4, s.Pitch, unit, row.name)
		if row.width > 0 {
			assert.InDelta(t, row.width*25.4, s.InnerWidth, unit, row.name)
		}
		assert.InDelta(t, row.roller*25.4, s.Roller, unit, row.name)
	}
	for name, nominal := range map[string]float64{"40": .312, "50": .375} {
		s, _ := chain.Lookup(name)
		assert.Less(t, s.InnerWidth, nominal*25.4, name)
	}
}

const half3 = 0.0005

// The number is a code: A series pitch in sixteenths of an inch, ANSI tens digits
// in eighths, final 0 standard, 1 light, 5 without rollers. Source: a published
// account of roller chain numbers, read.
func TestSizeNumbers(t *testing.T) {
	for _, s := range chain.Sizes() {
		if s.ANSI == "" {
			continue
		}
		number := 0
		for _, c := range s.ANSI {
			number = 10*number + int(c-'0')
		}
		assert.InDelta(t, float64(number/10)*25.4/8, s.Pitch, 1e-9, s.Name)
		assert.Equal(t, s.Bush, number%10 == 5, s.Name)
		if s.Name[2] == 'A' || s.Name[2] == 'C' {
			sixteenths := float64(s.Name[0]-'0')*10 + float64(s.Name[1]-'0')
			assert.InDelta(t, sixteenths*25.4/16, s.Pitch, 1e-9, s.Name)
		}
	}
}

func TestLookup(t *testing.T) {
	for _, name := range []string{" 04c ", "04C", "25"} {
		s, ok := chain.Lookup(name)
		require.True(t, ok, name)
		assert.Equal(t, "04C", s.Name)
	}
	for _, name := range []string{"", "  ", "07A", "25.0"} {
		_, ok := chain.Lookup(name)
		assert.False(t, ok, name)
	}
	chain.Sizes()[0].Pitch = 1
	s, _ := chain.Lookup("04C")
	assert.Equal(t, 6.35, s.Pitch, "the table is nobody's to change")
}
