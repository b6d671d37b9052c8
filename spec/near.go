package spec

import (
	"strings"

	"github.com/agext/levenshtein"
)

// Nearest returns the candidate that a person most likely meant, "" if none
// is near: at most one change for every three letters.
func Nearest(word string, candidates []string) string {
	if len(word) == 0 || len(word) > 64 {
		return ""
	}
	best, least := "", 1+(len(word)+2)/3
	lower := strings.ToLower(word)
	for _, c := range candidates {
		if c == word || len(c) == 0 || len(c) > 3*len(word)+8 {
			continue
		}
		if d := levenshtein.Distance(lower, strings.ToLower(c), nil); d < least {
			best, least = c, d
		}
	}
	return best
}

// hint is `did you mean "x"?`, or what there is where the choice is short.
func hint(word string, candidates []string) string {
	if near := Nearest(word, candidates); near != "" {
		return "did you mean \"" + near + "\"?"
	}
	if n := len(candidates); n > 0 && n <= 6 {
		return "there is " + strings.Join(quoted(candidates), ", ")
	}
	return ""
}

func quoted(words []string) []string {
	q := make([]string, len(words))
	for i, w := range words {
		q[i] = "\"" + w + "\""
	}
	return q
}
