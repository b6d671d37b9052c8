package spec

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/agext/levenshtein"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNearest(t *testing.T) {
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
		{"größe", "grosse größen", "größen"},
		{"same", "same", ""}, // it is none of these here
		{"", "a b", ""},
		{strings.Repeat("a", 65), strings.Repeat("a", 64), ""},
	} {
		assert.Equal(t, c.want, Nearest(c.word, strings.Fields(c.candidates)), c.word)
	}
}

// The reference is a library's distance without a bound.
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
		want := levenshtein.Distance(a, b, nil)
		got := changes(a, b, most)
		if want > most {
			require.Greater(t, got, most, "%q %q", a, b)
		} else {
			require.Equal(t, want, got, "%q %q", a, b)
		}
	}
}
