package terminal

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWidth(t *testing.T) {
	for text, want := range map[string]int{
		"":                0,
		"moon":            4,
		"\tz":             5,
		"Gezeitenuhr für": 15,
		"e\u0301":         1, // a combining accent
		"月":               2,
		"ｍｏｏｎ":            8,
		"\U0001F315 moon": 7,
		"a\u200bb":        2, // zero width space
		"a\x1bb":          3,
	} {
		assert.Equal(t, want, Width(text), "%q", text)
		assert.Equal(t, want, Width(Printable(text)), "%q as it is shown", text)
	}
}

func TestPrintable(t *testing.T) {
	for text, want := range map[string]string{
		"plain":                   "plain",
		"\x1b[31mred":             "�[31mred",
		"a\tb":                    "a    b",
		"bad \xff":                "bad �",
		"turned \u202eback\u202c": "turned back",
		"\u0085next":              "�next",
		"a\nb":                    "a�b",
	} {
		assert.Equal(t, want, Printable(text), "%q", text)
	}
}
