// Package near finds which of the words that could stand in a place was most
// likely meant by one that cannot.
package near

import (
	"iter"
	"slices"
	"unicode"
	"unicode/utf8"
)

// MaxWord bounds the bytes of a word that is compared with others.
const MaxWord = 64

// Word returns the candidate that a person most likely meant, "" if none is
// near: about one change for every three letters, and the first of equals.
func Word(word string, candidates []string) string {
	compared := 0
	return Among(word, slices.Values(candidates), &compared)
}

// Among is as Word, and counts the candidates.
func Among(word string, candidates iter.Seq[string], compared *int) string {
	if len(word) == 0 || len(word) > MaxWord {
		return ""
	}
	best, most := "", max(1, (len(word)+1)/3)
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

// changes is how many letters must be put in, taken out, replaced or swapped
// with their neighbour to make the word into the other, whatever their case (the
// optimal string alignment distance); or some number above most if it is more.
func changes(word, other string, most int) int {
	var letters [MaxWord]rune
	var rows [3][MaxWord + 1]int // of the word's beginnings: this row, the one above, and the one above that
	row, above, before := &rows[0], &rows[1], &rows[2]
	n := 0
	for _, u := range word {
		letters[n] = unicode.ToLower(u)
		n++
		row[n] = n
	}
	if m := utf8.RuneCountInString(other); m-n > most || n-m > most {
		return most + 1
	}
	j, last, least := 0, rune(0), 0
	for _, u := range other {
		u = unicode.ToLower(u)
		row, above, before = before, row, above
		j++
		row[0] = j
		leastAbove := least
		least = j
		for i := range n {
			d := above[i]
			if letters[i] != u {
				d = min(d, row[i], above[i+1]) + 1
			}
			if i > 0 && j > 1 && letters[i] == last && letters[i-1] == u {
				d = min(d, before[i-1]+1)
			}
			row[i+1] = d
			least = min(least, d)
		}
		if least > most && leastAbove > most {
			return least
		}
		last = u
	}
	return row[n]
}
