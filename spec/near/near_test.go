package near

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/agext/levenshtein"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWord(t *testing.T) {
	for _, c := range []struct {
		word       string
		candidates string
		want       string
	}{
		{"moduel", "module pitch face", "module"},
		{"Module", "module pitch face", "module"},
		{"tooth", "teeth on", "teeth"},
		{"idlr", "idler idle", "idler"}, // the first of equals
		{"wheels", "mesh chain", ""},
		{"q", "z x", ""}, // nothing of it is left
		{"Z", "z x", "z"},
		{"xy", "at on", ""},
		{"gone", "alone", ""}, // two changes in four letters
		{"tied", "tide", "tide"},
		{"größe", "grosse größen", "größen"},
		{"same", "same", ""}, // it is none of these here
		{"", "a b", ""},
		{strings.Repeat("a", 65), strings.Repeat("a", 64), ""},
	} {
		assert.Equal(t, c.want, Word(c.word, strings.Fields(c.candidates)), c.word)
	}
}

// Examples of the literature: Levenshtein's kitten, and the pair that tells
// optimal string alignment (3) from unrestricted swaps (2), from Boytsov,
// "Indexing methods for approximate dictionary searching" (2011), from memory.
func TestChangesOfKnownPairs(t *testing.T) {
	for pair, want := range map[[2]string]int{
		{"kitten", "sitting"}: 3, {"ca", "abc"}: 3, {"tied", "tide"}: 1, {"", "x"}: 1,
	} {
		assert.Equal(t, want, changes(pair[0], pair[1], 9), pair)
		assert.Equal(t, want, changes(pair[1], pair[0], 9), pair)
	}
}

// Words whose neighbours differ from the other's neighbours have no swaps: there
// the reference is a library's Levenshtein distance. Swaps make it no longer,
// and each saves one change at most.
func TestChangesAgreeWithALibrary(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	letters := []rune("abcö🌙")
	word := func() string {
		s := make([]rune, rng.IntN(13))
		for i := range s {
			s[i] = letters[rng.IntN(len(letters))]
		}
		return string(s)
	}
	for range 20_000 {
		a, b, most := word(), word(), rng.IntN(8)
		whole := changes(a, b, 99)
		want := levenshtein.Distance(a, b, nil)
		if !swapped(a, b) {
			require.Equal(t, want, whole, "%q %q", a, b)
		}
		require.True(t, whole <= want && want <= 2*whole, "%q %q", a, b)
		require.Equal(t, whole, changes(b, a, 99))
		if got := changes(a, b, most); whole > most {
			require.Greater(t, got, most, "%q %q", a, b)
		} else {
			require.Equal(t, whole, got, "%q %q", a, b)
		}
	}
}

// swapped reports whether two neighbours of a stand in b the other way round.
func swapped(a, b string) bool {
	letters := []rune(a)
	for i := 1; i < len(letters); i++ {
		if letters[i] != letters[i-1] && strings.Contains(b, string([]rune{letters[i], letters[i-1]})) {
			return true
		}
	}
	return false
}
