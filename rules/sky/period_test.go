package sky

import (
	"math/big"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// days is a catalogue length as a float.
func days(t *testing.T, name string) float64 {
	t.Helper()
	p, ok := Lookup(name)
	require.True(t, ok, "no period %q", name)
	f, _ := p.Days.Float64()
	return f
}

func TestCatalogueIsSoundAndSorted(t *testing.T) {
	list := Periods()
	require.True(t, slices.IsSortedFunc(list, func(a, b Period) int { return strings.Compare(a.Name, b.Name) }))
	seen := map[string]string{}
	for _, p := range list {
		assert.Positive(t, p.Days.Sign(), p.Name)
		assert.NotEmpty(t, p.Source, p.Name)
		assert.NotEmpty(t, p.About, p.Name)
		for _, n := range append([]string{p.Name}, p.Also...) {
			assert.Empty(t, seen[n], "%q names two entries", n)
			seen[n] = p.Name
			found, ok := Lookup(n)
			require.True(t, ok, n)
			assert.Equal(t, p.Name, found.Name)
			assert.Zero(t, p.Days.Cmp(found.Days))
		}
	}
	_, ok := Lookup("synodic moon")
	assert.False(t, ok)
}

func TestLookupGivesAFreshLength(t *testing.T) {
	p, _ := Lookup("solar day")
	p.Days.SetInt64(7)
	assert.Equal(t, 1.0, days(t, "solar day"))
}

// The printed lengths are exact rationals.
func TestLengthsAreExact(t *testing.T) {
	for name, want := range map[string]*big.Rat{
		"synodic month":     big.NewRat(29530588858, 1000000000),
		"tropical year":     big.NewRat(365242190424, 1000000000),
		"half eclipse year": new(big.Rat).Quo(mustDays("eclipse year"), big.NewRat(2, 1)),
		"spring-neap cycle": new(big.Rat).Quo(SynodicMonth(), big.NewRat(2, 1)),
		"half lunar day":    new(big.Rat).Quo(mustDays("lunar day"), big.NewRat(2, 1)),
		"Saros":             new(big.Rat).Mul(SynodicMonth(), big.NewRat(223, 1)),
		"Exeligmos":         new(big.Rat).Mul(SynodicMonth(), big.NewRat(669, 1)),
		"Metonic":           new(big.Rat).Mul(SynodicMonth(), big.NewRat(235, 1)),
		"Callippic":         new(big.Rat).Mul(SynodicMonth(), big.NewRat(940, 1)),
		"Inex":              new(big.Rat).Mul(SynodicMonth(), big.NewRat(358, 1)),
		"Jupiter rotation":  big.NewRat(992492, 2400000),
		"Gregorian year":    big.NewRat(146097, 400),
	} {
		p, ok := Lookup(name)
		require.True(t, ok, name)
		assert.Zero(t, want.Cmp(p.Days), "%s is %s", name, p.Days.RatString())
	}
	assert.Equal(t, TropicalYearDays, days(t, "tropical year"))
	assert.Equal(t, SynodicMonthDays, days(t, "synodic month"))
}

func BenchmarkLookup(b *testing.B) {
	for i := 0; b.Loop(); i++ {
		if _, ok := Lookup("Jupiter sidereal"); !ok {
			b.Fatal(strconv.Itoa(i))
		}
	}
}

// BenchmarkFirstUse is the whole cost of a program's first look into the
// catalogue: index and every number.
func BenchmarkFirstUse(b *testing.B) {
	for b.Loop() {
		for _, table := range tables() {
			for i := range table {
				_ = table[i].period()
			}
		}
	}
}
