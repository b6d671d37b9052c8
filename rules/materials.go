package rules

import (
	"strings"

	"wheelwork/spec/quantity"
)

// materialWords are how specs name what wheels are cut from, with the threshold
// that holds for it. What is named first wins: stainless steel is no plain steel.
var materialWords = []struct{ word, threshold string }{
	{"stainless", "stainless"},
	{"brass", "brass"},
	{"bronze", "bronze"},
	{"gunmetal", "bronze"},
	{"aluminium", "aluminium"},
	{"aluminum", "aluminium"},
	{"cast iron", "iron"},
	{"steel", "steel"},
	{"acetal", "acetal"},
	{"pom", "acetal"},
	{"nylon", "nylon"},
	{"polyamide", "nylon"},
}

// materialStresses are the thresholds of stress in MPa: a third of the tensile
// strength of usual grades.
var materialStresses = []Threshold{
	{Name: "brass", Dimension: quantity.Plain, Default: "120", Doc: "MPa that brass is to bear: a third of 360, free-cutting"},
	{Name: "bronze", Dimension: quantity.Plain, Default: "90", Doc: "MPa for bronze and gunmetal: a third of 270, cast"},
	{Name: "steel", Dimension: quantity.Plain, Default: "140", Doc: "MPa for steel: a third of 420, mild and not hardened"},
	{Name: "stainless", Dimension: quantity.Plain, Default: "170", Doc: "MPa for stainless steel: a third of 510"},
	{Name: "iron", Dimension: quantity.Plain, Default: "65", Doc: "MPa for cast iron: a third of 200, grey"},
	{Name: "aluminium", Dimension: quantity.Plain, Default: "95", Doc: "MPa for aluminium: a third of 290, heat-treated"},
	{Name: "acetal", Dimension: quantity.Plain, Default: "20", Doc: "MPa for acetal: a third of 65, rounded down"},
	{Name: "nylon", Dimension: quantity.Plain, Default: "20", Doc: "MPa for nylon: a third of 60, as it is in moist air"},
}

// materialOf is the threshold that holds for a material; ok is false where it is
// none of those known.
func materialOf(text string) (threshold string, ok bool) {
	text = strings.ToLower(text)
	for _, m := range materialWords {
		if containsWord(text, m.word) {
			return m.threshold, true
		}
	}
	return "", false
}

// containsWord reports whether a word stands in the text, not as part of another.
func containsWord(text, word string) bool {
	for from := 0; ; {
		i := strings.Index(text[from:], word)
		if i < 0 {
			return false
		}
		start, end := from+i, from+i+len(word)
		if (start == 0 || !isLetter(text[start-1])) && (end == len(text) || !isLetter(text[end])) {
			return true
		}
		from = end
	}
}

func isLetter(b byte) bool { return 'a' <= b && b <= 'z' }
