package spec

import (
	"iter"
	"slices"
	"unicode"
	"unicode/utf8"
)

// mostWord bounds the bytes of a word that is compared with others.
const mostWord = 64

// Nearest returns the candidate that a person most likely meant, "" if none
// is near: at most one change for every three letters, and the first of equals.
func Nearest(word string, candidates []string) string {
	compared := 0
	return nearest(word, slices.Values(candidates), &compared)
}

// nearest is as Nearest, and counts the candidates.
func nearest(word string, candidates iter.Seq[string], compared *int) string {
	if len(word) == 0 || len(word) > mostWord {
		return ""
	}
	best, most := "", (len(word)+2)/3
	for c := range candidates {
		*compared++
		if c == word || len(c) == 0 || len(c) > 3*len(word)+8 {
			continue
		}
		d := changes(word, c, most)
		if d > most || d >= max(len(word), len(c)) { // something must be the same
			continue
		}
		if best = c; d == 0 {
			break
		}
		most = d - 1
	}
	return best
}

// changes is how many letters must be put in, taken out or replaced to make
// the word into the other (its Levenshtein distance), whatever their case; or
// some number above most if it is more than that.
func changes(word, other string, most int) int {
	var row [mostWord + 1]int // of the word's beginnings, against the other's so far
	var letters [mostWord]rune
	n := 0
	for _, u := range word {
		letters[n] = unicode.ToLower(u)
		n++
		row[n] = n
	}
	if m := utf8.RuneCountInString(other); m-n > most || n-m > most {
		return most + 1
	}
	for _, u := range other {
		u = unicode.ToLower(u)
		left, corner := row[0]+1, row[0]
		row[0] = left
		least := left
		for i := range n {
			d := corner
			if letters[i] != u {
				d = min(d, left, row[i+1]) + 1
			}
			corner, left, row[i+1] = row[i+1], d, d
			least = min(least, d)
		}
		if least > most {
			return least
		}
	}
	return row[n]
}
