package text

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestProblemReadsAsOneLine(t *testing.T) {
	f := NewFile("moon.hcl", []byte("wheel \"a\" {\n  tooth = 3\n}\n"))
	p := Problem{Place: Place{f, Span{14, 19}}, Message: "wheel has no attribute \"tooth\""}
	assert.EqualError(t, p, `moon.hcl:2:3: wheel has no attribute "tooth"`)
	p.Hint = "did you mean \"teeth\"?"
	assert.EqualError(t, p, `moon.hcl:2:3: wheel has no attribute "tooth"; did you mean "teeth"?`)
	p.Place = Place{}
	assert.EqualError(t, p, `wheel has no attribute "tooth"; did you mean "teeth"?`)
}

func TestProblemsInTheOrderOfTheText(t *testing.T) {
	a, b := NewFile("a.hcl", []byte("0123456789")), NewFile("b.toml", []byte("0123456789"))
	list := []Problem{
		{Place: Place{b, Span{1, 2}}, Message: "6"},
		{Place: Place{a, Span{5, 9}}, Message: "4"},
		{Place: Place{a, Span{5, 6}}, Message: "2"},
		{Place: Place{a, Span{5, 6}}, Message: "3"}, // told later
		{Place: Place{b, Span{0, 2}}, Message: "5"},
		{Message: "1"},
	}
	SortProblems(list)
	var order string
	for _, p := range list {
		order += p.Message
	}
	assert.Equal(t, "123456", order)
}
